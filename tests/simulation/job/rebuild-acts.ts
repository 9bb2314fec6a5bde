import type { State } from '../../../src/journal/state.ts'
import { balance } from '../../../src/ledger/ledger.ts'
import type { PieceId } from '../../../src/ledger/piece.ts'
import type { Machine, Thing } from '../machines/machine.ts'
import type { Act } from './act.ts'
import { extraBefore, stepBack } from './build-acts.ts'
import type { Known } from './known.ts'
import { act } from './strip-acts.ts'

/** What goes back once more after steps were taken apart, in the order of the hands. */
export function rebuildActs(machine: Machine, steps: readonly number[], known: Known, state: State): Act[] {
  const back = machine.steps.map((_, at) => at).reverse()
  return back.flatMap((at) => {
    const extra = extraBefore(machine, at).filter(({ step }) => steps.includes(step))
    if (!steps.includes(at + 1)) return extra
    const things = machine.steps[at]?.things ?? []
    const again = things.flatMap((thing) => usedAgain(thing, at + 1, known, state))
    // Its passes stand in the record, and what was put in for the work is out since the first time.
    const isToDo = ({ doing, thing }: Act) =>
      doing !== 'set passes' && (doing !== 'take out' || !thing || isIn(thing, known, state))
    return [...extra, ...again, ...stepBack(machine, at).filter(isToDo)]
  })
}

function isIn(thing: Thing, known: Known, { ledger }: State): boolean {
  return known.everyPiece(thing).some((id) => balance(ledger, id as PieceId, 'machine') > 0)
}

/** What is used once was clamped for minutes only. */
function usedAgain(thing: Thing, no: number, known: Known, state: State): Act[] {
  if (!('isSingleUse' in thing) || !thing.isSingleUse || known.everyPiece(thing).length === 0) return []
  const id = known.piece(thing)
  return state.used.has(id as `p${number}`)
    ? [act('supply', no, () => `use again ${id} because it was clamped for minutes only`, thing)]
    : []
}
