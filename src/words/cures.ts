import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import type { DifferenceId, FaultId, FluidId, LeftOutId, LooseningId, TighteningId } from '../plan/facts.ts'
import type { Tightening } from '../plan/tightening.ts'
import { heirOf, isGone, liesAt, liesOn, nextFastener, openOrderFor } from './lookups.ts'
import { containerPlace, placeName } from './places.ts'
import { suspectsTold } from './suspects.ts'
import { backWords } from './waiting/out-words.ts'

/** Words to type, marked so that they stand out in a sentence. Nothing else is put in double quotes. */
export function say(words: string): string {
  return `"${words}"`
}

/** What puts a piece home: `"fit p5 at I3"`, with the number when it is not all that is owed. */
export function fitWords(state: State, id: PieceId, count?: number): string {
  const account = state.ledger.accounts.get(id)
  const position = account?.home.position
  if (position !== undefined) return say(`fit ${id} at ${position}`)
  const owed = (account?.should ?? 0) - (account?.at.get('machine') ?? 0)
  return say(count === undefined || count === owed ? `fit ${id}` : `fit ${count} ${id}`)
}

/** What brings a number of a piece home from where it is. */
export function homeWords(state: State, id: PieceId, count: number, place: Place): string {
  if (state.used.has(id)) return usedWords(state, id)
  const unjudged = acceptWords(state, id)
  if (unjudged !== null) return unjudged
  const { verdict } = state.comparisons.get(id) ?? {}
  if (verdict === 'wrong') return `${newWords(state, id, id)} when the right one is here`
  const first = verdict === 'due' ? `${say(`compare ${id}: alike`)}, then ` : ''
  const carrier = state.ledger.accounts.get(place as PieceId)
  if (carrier) return `${first}${carriedWords(state, id, carrier.piece.id, count)}`
  if (place === 'bench' || place === 'spare' || containerPlace(place))
    return `${first}${fitWords(state, id, count)}`
  const back = place === 'out' ? backWords(state, id) : null
  if (back !== null) return `once back, ${say(back)}`
  const order = place === 'supplier' ? openOrderFor(state, id) : undefined
  if (order !== undefined) return `${say(`arrived ${order}`)} when here`
  const when = place === 'out' ? 'once back, ' : place === 'supplier' ? 'once here, ' : ''
  return `${when}${sendWords(state, 'move', id, place, { count, to: 'bench' })}`
}

/** What comes before a piece that is not accepted goes home; null for one that is, or of which nobody asked. */
function acceptWords(state: State, id: PieceId): string | null {
  const verdict = state.verdicts.get(id)?.verdict
  const should = state.ledger.accounts.get(id)?.should ?? 1
  if (verdict === 'replace') return `${newWords(state, id, should > 1 ? `${should} ${id}` : id)} when here`
  if (verdict !== undefined && verdict !== 'fit-again')
    return `${say(`judge ${id} fit again because ...`)} when that is done`
  const isChecked = ![...state.checks.values()].some(({ piece, done }) => piece === id && done === null)
  return isChecked ? null : `${say('checks')} shows what is to be seen of it first`
}

/** What sits on another piece goes home with it; from an old one it goes over to the new one first. */
function carriedWords(state: State, id: PieceId, on: PieceId, count: number): string {
  const { should = 0, at } = state.ledger.accounts.get(on) ?? {}
  if (should === 0) return overWords(state, on, id)
  const isHere = [...(at?.keys() ?? [])].every(
    (place) => place === 'machine' || place === 'bench' || containerPlace(place) !== null,
  )
  if (!isHere) return `with what it sits on, or ${say(`move ${id} to bench`)} when it is off`
  if (at?.has('machine')) return fitWords(state, id, count)
  // It does not go home on something that does not go home itself.
  return (state.used.has(on) ? usedWords(state, on) : acceptWords(state, on)) ?? fitWords(state, on)
}

/** What goes from an old piece over to the one that has its home, as soon as that is here; off it where there is none. */
export function overWords(state: State, from: PieceId, rider: PieceId): string {
  const fresh = heirOf(state, from)?.piece.id
  if (fresh === undefined) return say(`move ${rider} to bench`)
  return isGone(state, fresh)
    ? 'over to the new one when that is here'
    : say(`move over from ${from} to ${fresh}`)
}

/** What sends a piece from a place; how many and from where only when it lies elsewhere too. */
export function sendWords(
  state: State,
  verb: 'move' | 'scrap' | 'spare',
  id: PieceId,
  place: Place,
  { count, to }: { count?: number; to?: 'bench' | 'PLACE' } = {},
): string {
  const lies = liesAt(state, id).filter((lying) => lying.place !== 'machine')
  const here = lies.find((lying) => lying.place === place)?.count
  const many = lies.length > 1 || (count !== undefined && count !== here) ? (count ?? here) : undefined
  const from = lies.length > 1 ? `from ${typedPlace(state, place)}` : ''
  return say([verb, many, id, from, to && `to ${to}`].filter(Boolean).join(' '))
}

/** What lifts a shortage: the lost ones when found, new ones, or a named decision to do without. */
export function shortageWords(state: State, id: PieceId, short: number): string {
  const isOnly = (state.ledger.accounts.get(id)?.should ?? 1) === 1
  const some = isOnly ? id : `${short} ${id}`
  const lost = state.ledger.accounts.get(id)?.at.get('lost') ?? 0
  const find =
    lost > 0
      ? `${sendWords(state, 'move', id, 'lost', { count: Math.min(lost, short), to: 'bench' })} when found, `
      : ''
  const when = neverThere(state, id, short) > 0 ? 'when found or here' : 'when here'
  return `${find}${newWords(state, id, some)} ${when}, or ${say(`leave off ${some} because ...`)}`
}

/** Of those that are short: how many the record never had, because they were missing when the job began. */
export function neverThere(state: State, id: PieceId, short: number): number {
  const { should = 0, entered = 0 } = state.ledger.accounts.get(id) ?? {}
  return Math.min(short, Math.max(0, should - entered))
}

/** What puts a fault right: the work, told, or a named decision that it may stay so. */
export function faultWords(state: State, id: FaultId): string {
  const how = say(`settle ${id}: ...`)
  const kind = state.faults.get(id)?.kind
  const work =
    kind === 'snapped'
      ? `get out what is left of it, then ${how} with how`
      : kind === 'stripped'
        ? `${how} with how the thread was put right`
        : `${how} with how it was put right`
  return `${work}, or ${say(`override ${id} because ...`)} if it may stay so`
}

/** What answers for an entry of a copy that did not fit with the record. */
export function leftOutWords(id: LeftOutId): string {
  return `look at the machine and record here what holds, then ${say(`settle ${id}: ...`)} with how`
}

/** What records that new ones are here: by the line that they were ordered by, where there is one. */
export function newWords(state: State, id: PieceId, some: string): string {
  const order = openOrderFor(state, id)
  return say(order === undefined ? `new ${some}` : `arrived ${order}`)
}

/** What puts a used single-use piece right. */
export function usedWords(state: State, id: PieceId): string {
  const should = state.ledger.accounts.get(id)?.should ?? 1
  const some = should > 1 ? `${should} ${id}` : id
  return `${newWords(state, id, some)} when here, or ${say(`use again ${id} because ...`)}`
}

function typedPlace(state: State, place: Place): string {
  return placeName(state, place).replace(/^(the|a) /, '')
}

/** What gets rid of a piece that nothing waits for, from where it lies; what sits on it and goes back comes off first. */
export function asideWords(state: State, id: PieceId, place: Place, count?: number): string {
  const words = (verb: 'scrap' | 'spare') =>
    sendWords(state, verb, id, place, count === undefined ? {} : { count })
  const aside = `${words('scrap')} or ${words('spare')}`
  const rider = liesOn(state, id).find(({ piece }) => goesBack(state, piece))
  return rider ? `first ${overWords(state, rider.place as PieceId, rider.piece)}, then ${aside}` : aside
}

/** Whether a piece that is off is to go home itself: not replaced, used up or to be replaced. */
function goesBack(state: State, id: PieceId): boolean {
  const { should = 0, at } = state.ledger.accounts.get(id) ?? {}
  const isOwed = should > (at?.get('machine') ?? 0)
  return isOwed && !state.used.has(id) && state.verdicts.get(id)?.verdict !== 'replace'
}

/** What records that an aid is out of the machine, or a tool back in the toolbox. */
export function toolboxWords(
  state: State,
  id: PieceId,
  { place, count }: { place?: Place; count?: number } = {},
): string {
  const isTool = state.ledger.accounts.get(id)?.piece.kind === 'tool'
  const away = liesAt(state, id).filter((lying) => lying.place !== 'toolbox')
  if (place !== undefined && away.length > 1)
    return say(`move ${count ?? 1} ${id} from ${typedPlace(state, place)} to toolbox`)
  return say(isTool ? `return ${id}` : `take out ${id}`)
}

/** Of all that lay in one bin, the last taken out show how it is said. */
const MOST_KNOWN = 3

/** What explains a count that does not agree. */
export function explainWords(state: State, id: DifferenceId): string {
  const difference = state.differences.get(id)
  const { piece = null, expected = 0, counted = 0 } = difference ?? {}
  const elsewhere = `look where it came from: ${say(`explain ${id} ${piece ?? 'PIECE'} from PLACE because ...`)}, or ${say(`explain ${id} unknown NAME because ...`)}`
  const known = (difference ? suspectsTold(state, difference) : []).map(
    ({ text, typed }) => `${text}: ${say(`explain ${id} ${typed} because ...`)}`,
  )
  if (known.length > 0) return `it may be ${known.slice(0, MOST_KNOWN).join('; or ')}; else ${elsewhere}`
  return counted > expected
    ? elsewhere
    : `look for it: ${say(`explain ${id} ${piece ?? 'PIECE'} to PLACE because ...`)} when found, or ${say(`explain ${id} missing because ...`)}`
}

/** What records a fluid filled in, by its name where that is enough. */
export function fillWords(state: State, id: FluidId): string {
  const name = state.fluids.get(id)?.name ?? ''
  const says = (text: string) => text.toLowerCase().includes(name.toLowerCase())
  const isEnough =
    /^[\p{L} -]+$/u.test(name) && [...state.fluids.values()].filter((fluid) => says(fluid.name)).length === 1
  return `${say(`fill ${isEnough ? name : id} ...`)} with the amount`
}

/** What goes on with a tightening: by its id where it is not the one that is next in the step in hand. */
export function turnWords(state: State, id: TighteningId | LooseningId, fastener?: string): string {
  const isOpen = (each: Tightening & { step: number }) =>
    each.step === (state.build ?? state.strip) && nextFastener(each) !== null
  const next =
    [...state.tightenings.values()].find((each) => state.build !== null && isOpen(each)) ??
    [...state.loosenings.values()].find((each) => state.build === null && isOpen(each))
  return say(['turn', fastener, next?.id === id ? '' : `of ${id}`].filter(Boolean).join(' '))
}

/** How a step is closed: one that measures is not done without its reading. */
export function doneWords(state: State, no: number): string {
  const isMeasured = [...state.measures.values()].some(({ step }) => step === no)
  return say(state.steps.get(no)?.kind === 'measure' && !isMeasured ? `done ${no}: ...` : `done ${no}`)
}
