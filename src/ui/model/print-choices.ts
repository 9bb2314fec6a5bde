import type { Errand, Printed } from '../../lines/errand.ts'
import { bearerOf } from '../../session/scan.ts'
import { containersOfStep } from '../../session/views.ts'
import { liesIn } from '../../words/lookups.ts'
import type { Choice } from '../page.ts'
import type { State } from './scene.ts'

/** Printing what bears a label of this job, with the usual stock; null where there is nothing to print. */
export function printChoice(state: State, no: number): Choice | null {
  const bearer = bearerOf(state, no)
  switch (bearer?.kind) {
    case 'container':
      return state.containers.get(no)?.voided
        ? null
        : printed('print this label', { print: 'containers', containers: [no] })
    case 'blank':
      return state.blanks.get(no)?.voided
        ? null
        : printed('print it once more', { print: 'blanks-again', from: no, to: no })
    case 'machine':
      return printed('print the tag of the machine', { print: 'machine' })
    case 'step': {
      const { length } = containersOfStep(state, bearer.step)
      return length === 0
        ? null
        : printed(`print the labels of what holds its pieces: ${length}`, {
            print: 'containers-of-step',
            step: bearer.step,
          })
    }
    default:
      return null
  }
}

/** A pair of flags for each hose, cable or wire of which an end lies in a container. */
export function flagChoices(state: State, container: number): Choice[] {
  const ends = new Map<string, { name: string; piece: string }>()
  for (const { piece } of liesIn(state, container)) {
    const account = state.ledger.accounts.get(piece)
    if (account?.piece.kind !== 'connection') continue
    const { set, name } = account.piece
    ends.set(set ?? piece, { name: set ?? name, piece })
  }
  return [...ends.values()].map(({ name, piece }) =>
    printed(`print flags for ${name}`, { print: 'flags', piece }),
  )
}

function printed(says: string, what: Printed): Choice {
  const errand: Errand = { errand: 'print', what, how: {} }
  return { says, act: { do: 'errand', errand } }
}
