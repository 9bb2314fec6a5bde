import type { Errand } from '../lines/errand.ts'
import type { Session } from './session.ts'
import type { Entry } from './stored-entry.ts'

/** What came of an errand, in words for a person and in facts for a program. */
export type ErrandOutcome =
  | {
      ok: true
      text: string[]
      entries: readonly Entry[]
      answer: unknown
      bytes?: Uint8Array | undefined
      /** It was answered, and what it was asked about is not as it should be. */
      isBadNews?: true
    }
  | {
      ok: false
      /** `refused`: it cannot be as asked. `not-recorded`: a disk, a device or the network would not. */
      exit: 'refused' | 'not-recorded'
      code: string
      told: { what: string; lines: string[]; cure: string }
      /** What was recorded before it went wrong, and the words for that. */
      entries: readonly Entry[]
      text?: string[] | undefined
      /** The facts, under their own name. */
      facts?: { doctor: unknown } | undefined
    }

/** Runs errands for an open job. `tell` hears how far it is; what it leaves last is the outcome. */
export interface Errands {
  run(errand: Errand, session: Session, tell: (progress: string) => void): Promise<ErrandOutcome>
}
