import type { Move, Opening } from '../../ledger/account.ts'
import { balance, enter, openAccount, post } from '../../ledger/ledger.ts'
import type { Piece } from '../../ledger/piece.ts'
import { type ContainerPlace, containerOf, isPlace, type Place } from '../../ledger/place.ts'
import type { StepFacts } from '../../plan/facts.ts'
import type { State } from '../state.ts'

/** Pieces enter the ledger from outside. */
export function enterPieces(state: State, pieces: readonly Piece[], openings: readonly Opening[]): void {
  for (const piece of pieces) openAccount(state.ledger, piece)
  for (const opening of openings) enter(state.ledger, opening)
}

/** Pieces go from place to place. Throws where a move goes to no place, or to a container that was never opened. */
export function carry(state: State, moves: readonly Move[]): void {
  for (const { to } of moves) refuseNowhere(state, to)
  post(state.ledger, moves)
  for (const move of moves) {
    const { piece, from, count } = move
    noteTakenOut(state, move)
    if (from === 'out') noteBack(state, piece)
    if (from !== 'lost') continue
    // What turns up again is no longer given up: the next one lost needs a decision of its own.
    const accepted = (state.lostAccepted.get(piece) ?? 0) - count
    if (accepted > 0) state.lostAccepted.set(piece, accepted)
    else state.lostAccepted.delete(piece)
  }
}

/** Keeps what a container held once: an empty bag should be empty, and who finds something in it wants to know what it may be. */
function noteTakenOut(state: State, { piece, count, from, to }: Move): void {
  const [source, target] = [containerOf(from), containerOf(to)]
  if (source !== null) state.agreed.delete(source)
  if (target !== null) state.agreed.delete(target)
  if (source === target) return
  if (source !== null) {
    const taken = state.takenFrom.get(source) ?? new Map()
    const before = taken.get(piece)?.count ?? 0
    taken.delete(piece)
    state.takenFrom.set(
      source,
      taken.set(piece, { count: before + count, from: from as ContainerPlace, at: state.clock.at }),
    )
  }
  const back = target === null ? undefined : state.takenFrom.get(target)
  const out = back?.get(piece)
  if (target === null || !back || !out) return
  if (out.count > count) back.set(piece, { ...out, count: out.count - count })
  else back.delete(piece)
  if (back.size === 0) state.takenFrom.delete(target)
}

function refuseNowhere({ containers }: State, place: Place): void {
  const container = containerOf(place)
  if (!isPlace(place)) throw new Error(`no place ${place}`)
  if (container !== null && !containers.has(container)) throw new Error(`no container ${container}`)
}

/** What is back by a plain move is not away any more, of what went first: no more is away than is out. */
function noteBack({ ledger, outings }: State, piece: Move['piece']): void {
  const lines = [...outings.values()].flatMap(({ pieces }) => pieces.filter((each) => each.piece === piece))
  let over = lines.reduce((sum, { away }) => sum + away, 0) - balance(ledger, piece, 'out')
  for (const line of lines) {
    const part = Math.max(0, Math.min(over, line.away))
    line.away -= part
    over -= part
  }
}

/** The step of that number. Throws where there is none. */
export function stepOf(state: State, no: number): StepFacts {
  const step = state.steps.get(no)
  if (!step) throw new Error(`no step ${no}`)
  return step
}

/** Throws where a number was dealt before: what it stood for would be forgotten. */
export function newIn<Id extends string>(known: ReadonlyMap<Id, unknown>, id: Id): void {
  if (known.has(id)) throw new Error(`there is ${id} already`)
}
