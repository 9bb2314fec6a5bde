import type { Entry } from './entry.ts'
import { fold, UnlawfulEntry } from './fold.ts'
import type { State } from './state.ts'

/**
 * What follows from the entries of a journal as far as they are lawful, and the first that is not, null where all are. One
 * before it may have passed only because it was taken back further on: then that one is the first.
 */
export function lawfulPart(entries: readonly Entry[]): { state: State; unlawful: UnlawfulEntry | null } {
  let unlawful: UnlawfulEntry | null = null
  for (;;) {
    try {
      return { state: fold(unlawful === null ? entries : entries.slice(0, unlawful.n - 1)), unlawful }
    } catch (error) {
      if (!(error instanceof UnlawfulEntry)) throw error
      unlawful = error
    }
  }
}
