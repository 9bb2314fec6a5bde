import type { State } from '../journal/state.ts'
import type { Sum } from '../lines/sum.ts'

/** What a sum comes to, with what went into it: facts only, the words are made elsewhere. */
export type WorkedOut = { sum: 'convert'; typed: string; newtonMetres: number }

/** Works a sum out; the record is only looked at. */
export function workOut(_state: State, sum: Sum): WorkedOut {
  switch (sum.sum) {
    case 'convert':
      return { sum: 'convert', typed: sum.torque.typed, newtonMetres: sum.torque.newtonMetres }
    default:
      return sum.sum satisfies never
  }
}
