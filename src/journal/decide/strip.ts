import type { Move, Opening } from '../../ledger/account.ts'
import type { Piece, PieceId } from '../../ledger/piece.ts'
import type { FaultId, FluidId } from '../../plan/facts.ts'
import { curing } from '../../plan/waiting/consumables.ts'
import { inSingular } from '../../trade/bag-line/name-words.ts'
import type { Command, TakenOff } from '../command.ts'
import type { EntryBodyOf, StripStep } from '../entry.ts'
import type { State } from '../state.ts'
import { destination } from './containers.ts'
import { given, knownPiece, refuse, unknown, wholeCount } from './refuse.ts'
import { stripFor } from './steps.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Pieces enter on the machine as found, and go at once to where they are put. */
export function takeOff(state: State, { item, into }: Of<'take-off'>): EntryBodyOf<'came-off'> {
  const name = given(item.name, 'name')
  checkCounts(item)
  const { no: step, began } = stripFor(state, name)
  const at = item.at ?? subject(began?.title ?? state.steps.get(step)?.title ?? name)
  const pieces = piecesOf(state, { ...item, name }, at, step)
  const found = pieces.map((piece) => foundOf(item, piece))
  const whole = found.filter((each) => each.whole > 0).length
  const target = whole > 0 ? destination(state, into, item.positions ? whole : null) : { places: [] }

  const places = [...target.places]
  const moves: Move[] = []
  for (const [index, { id }] of pieces.entries()) {
    const { whole = 0, broken = 0 } = found[index] ?? {}
    const to = whole > 0 ? places.shift() : undefined
    if (to && to !== 'machine') moves.push({ piece: id, count: whole, from: 'machine', to })
    // A broken piece can never go back: it leaves at once, and its home stays short.
    if (broken > 0) moves.push({ piece: id, count: broken, from: 'machine', to: 'scrap' })
  }
  const openings = pieces.map(({ id }, index): Opening => {
    const { whole = 0, broken = 0 } = found[index] ?? {}
    return { piece: id, count: whole + broken, at: 'machine' }
  })
  return {
    type: 'came-off',
    step,
    began,
    opened: target.opened,
    pieces,
    openings,
    moves,
    faults: faultsOf(state, item, pieces),
  }
}

/** A fluid came out, in litres: from now on a filling is owed. */
export function drain(state: State, { name, litres, typed }: Of<'drain'>): EntryBodyOf<'drained'> {
  const fluid = given(name, 'name')
  if (!(litres > 0 && litres < 10_000)) refuse({ code: 'count-wrong', count: litres })
  const { no: step, began } = stripFor(state, fluid)
  const id: FluidId = `f${state.dealt.fluid + 1}`
  return { type: 'drained', fluid: { id, name: fluid, litres, typed, step }, began }
}

/** A fluid went in, in litres, while its step is under way. */
export function fill(state: State, { fluid, litres, typed }: Of<'fill'>): EntryBodyOf<'filled'> {
  const known = state.fluids.get(fluid) ?? unknown('fluid', fluid)
  if (!(litres > 0 && litres < 10_000)) refuse({ code: 'count-wrong', count: litres })
  if (known.filledLitres !== null) refuse({ code: 'already', what: 'filled', id: fluid })
  const step = state.steps.get(known.step)
  if (step && step.built !== 'underway') refuse({ code: 'step-not-begun', step: step.no, built: step.built })
  const reasons = curing(state, fluid)
  if (reasons.length > 0) refuse({ code: 'not-to-be-filled', fluid, reasons })
  return { type: 'filled', fluid, litres, typed }
}

/** A witness mark or an orientation, on a piece or for the step: from now on a confirmation is owed. */
export function mark(state: State, { text, piece }: Of<'mark'>): EntryBodyOf<'marked'> {
  const words = given(text, 'text')
  const id = `m${state.dealt.mark + 1}` as const
  const own = piece && knownPiece(state, piece).piece.step
  // What came in a kit before anything was taken off is of no step yet.
  if (own !== undefined && state.steps.has(own))
    return { type: 'marked', mark: { id, text: words, piece, step: own } }
  const { no: step, began } = stripFor(state, 'marks')
  return { type: 'marked', mark: { id, text: words, piece, step }, began }
}

/** Aids and tools come out of the toolbox: an aid into the machine, a tool to the bench. */
export function putIn(state: State, command: Of<'put-in'>): EntryBodyOf<'put-in'> {
  const name = given(command.name, 'name')
  const count = wholeCount(command.count)
  const { no: step, began } =
    state.build !== null && state.strip === null ? stepUnderWay(state.build) : stripFor(state, name)
  const positions = command.positions ?? []
  const places = positions.length > 0 ? positions : command.where === undefined ? [] : [command.where]
  const each = positions.length > 0 ? 1 : count
  const homes = places.length === 0 ? [undefined] : places
  const pieces = homes.map(
    (at, index): Piece => ({
      id: pieceId(state, index),
      kind: command.kind,
      name,
      home: { at: at ?? 'toolbox' },
      should: 0,
      step,
    }),
  )
  const to = command.kind === 'aid' ? 'machine' : 'bench'
  return {
    type: 'put-in',
    step,
    began,
    pieces,
    openings: pieces.map(({ id }) => ({ piece: id, count: each, at: 'toolbox' })),
    moves: pieces.map(({ id }) => ({ piece: id, count: each, from: 'toolbox', to })),
  }
}

function stepUnderWay(no: number): { no: number; began?: StripStep } {
  return { no }
}

/** The number of the next piece, or of one further on in the same entry. */
export function pieceId(state: State, index = 0): PieceId {
  return `p${state.dealt.piece + 1 + index}`
}

function checkCounts({
  name,
  found,
  should,
  broken,
  positions,
  alikeAt,
  missingAt = [],
  brokenAt = [],
}: TakenOff): void {
  wholeCount(should)
  if (!Number.isInteger(found) || found < 0 || found > should) refuse({ code: 'count-wrong', count: found })
  if (broken && (!Number.isInteger(broken.count) || broken.count < 1 || broken.count > found)) {
    refuse({ code: 'count-wrong', count: broken.count })
  }
  if (alikeAt && alikeAt.length > 200) refuse({ code: 'count-wrong', count: alikeAt.length })
  if (!positions) return
  // The same position twice would be one home for two pieces.
  if (new Set(positions).size !== should || positions.length !== should || should > 1000)
    refuse({ code: 'count-wrong', count: should })
  if (positions.length === 1) return
  // Which one of a matched set is missing or broken cannot be told from a number.
  const told = (at: string[], count: number) =>
    new Set(at).size === count && at.every((position) => positions.includes(position))
  const isTold = told(missingAt, should - found) && told(brokenAt, broken?.count ?? 0)
  if (!isTold || missingAt.some((position) => brokenAt.includes(position))) {
    refuse({ code: 'which-position', name, positions })
  }
}

/** How many of a piece came off whole and broken: of a matched one, the one at its position. */
function foundOf(item: TakenOff, { home: { position } }: Piece): { whole: number; broken: number } {
  const broken = item.broken?.count ?? 0
  if (position === undefined || item.positions?.length === 1) return { whole: item.found - broken, broken }
  if (item.missingAt?.includes(position)) return { whole: 0, broken: 0 }
  return item.brokenAt?.includes(position) ? { whole: 0, broken: 1 } : { whole: 1, broken: 0 }
}

/** What is snapped, cracked or stripped leaves work at its home; what is only broken needs a new one. */
function faultsOf(state: State, item: TakenOff, pieces: readonly Piece[]): EntryBodyOf<'came-off'>['faults'] {
  const { broken } = item
  if (!broken || broken.kind === 'broken') return undefined
  return pieces
    .map((piece) => ({ piece: piece.id, count: foundOf(item, piece).broken }))
    .filter(({ count }) => count > 0)
    .map(({ piece, count }, index) => ({
      id: `x${state.dealt.fault + 1 + index}` as FaultId,
      kind: broken.kind,
      piece,
      count,
    }))
}

function piecesOf(state: State, item: TakenOff, at: string, step: number): Piece[] {
  const { kind, name, size, singleUse, positions, alikeAt, should } = item
  const common = { kind, name, size, singleUse: singleUse || undefined, step }
  if (!positions) return [{ id: pieceId(state), ...common, home: { at, alikeAt }, should }]
  for (const position of positions) refuseTaken(state, at, name, position)
  const set = setName(name, positions)
  return positions.map((position, index) => ({
    id: pieceId(state, index),
    ...common,
    set,
    home: { at, position },
    should: 1,
  }))
}

/** What pieces that entered together with positions are called as a set; undefined for a single one. */
export function setName(name: string, positions: readonly string[]): string | undefined {
  return positions.length > 1 ? `${name} ${positions[0]}–${positions.at(-1)}` : undefined
}

/** Two pieces cannot have one home: at one place, of one name and at one position. */
export function refuseTaken(state: State, at: string, name: string, position: string): void {
  for (const { piece, home, should } of state.ledger.accounts.values()) {
    if (should > 0 && isSame(home.position, position) && home.at === at && isSame(piece.name, name)) {
      refuse({ code: 'home-exists', piece: piece.id, position })
    }
  }
}

/** `Cam cap` and `cam caps` are one name: a second line for the same position is a slip. */
function isSame(one: string | undefined, other: string): boolean {
  return one !== undefined && inSingular(one) === inSingular(other)
}

/** What a step works on: its title without the word that says it comes off. */
function subject(title: string): string {
  return title.replace(/\s+(off|out|away)$/i, '')
}
