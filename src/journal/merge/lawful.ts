import { buildOrder } from '../../plan/order.ts'
import type { Entry } from '../entry.ts'
import { fold, UnlawfulEntry } from '../fold.ts'
import type { State } from '../state.ts'

/**
 * The number of the first entry that does not follow from those before it; null where all do. Entries from `from` on are
 * held to what is otherwise held where a command is decided, for nobody decided them on this record.
 */
export function firstUnlawful(entries: readonly Entry[], from: number): number | null {
  try {
    fold(entries, {
      after: (state, entry) => {
        if (entry.n >= from) refuseCircle(state, entry)
      },
    })
    return null
  } catch (error) {
    if (error instanceof UnlawfulEntry) return error.n
    throw error
  }
}

/** What each way did alone may close a circle together. */
function refuseCircle({ steps }: State, entry: Entry): void {
  const isOrder = entry.type === 'step-added' || entry.type === 'step-changed'
  if (isOrder && 'cycle' in buildOrder(steps)) throw new UnlawfulEntry(entry, 'steps wait for each other')
}
