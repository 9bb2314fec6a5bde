import type { State } from '../../../src/journal/state.ts'
import { balance } from '../../../src/ledger/ledger.ts'
import type { Known } from '../job/known.ts'
import { type Machine, nameOf, type Thing } from '../machines/machine.ts'

/**
 * What of a machine is not home by the record at an open gate, counted from the machine as it was made up, thing by thing, and not
 * from what the program says is left over. `isExcused`: things that an unseen mistake kept out of the record.
 */
export function notHome(
  machine: Machine,
  state: State,
  known: Known,
  isExcused: (thing: Thing) => boolean,
): string[] {
  return machine.steps.flatMap(({ things }, at) =>
    things.flatMap((thing) => {
      const wanted = wantedOf(thing)
      const home = wanted === 0 ? 0 : homeOf(thing, state, known)
      return home === wanted || isExcused(thing)
        ? []
        : [`step ${at + 1}: ${home} of ${wanted} ${nameOf(thing)} home`]
    }),
  )
}

function homeOf(thing: Thing, { ledger }: State, known: Known): number {
  const ids = new Set(known.everyPiece(thing))
  return [...ledger.accounts.values()]
    .filter(({ piece }) => ids.has(piece.id))
    .reduce((sum, { piece }) => sum + balance(ledger, piece.id, 'machine'), 0)
}

/** How many belong on the machine. What is put in for the work belongs out of it. */
function wantedOf(thing: Thing): number {
  switch (thing.kind) {
    case 'lot':
      return thing.count
    case 'set':
      return thing.positions.length
    case 'hose':
      return thing.ends.length
    case 'part':
      return 1
    default:
      return 0
  }
}
