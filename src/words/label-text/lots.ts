import type { State } from '../../journal/state.ts'
import type { Account } from '../../ledger/account.ts'
import { joined, singular } from '../grammar.ts'
import { type Lying, liesAt } from '../lookups.ts'
import { containerPlace, whereName } from '../places.ts'
import { rangesText, type Slotted, slottedText } from './position-ranges.ts'
import { type PieceStatus, statusOf } from './status.ts'

/** Pieces that are told in one go: a number of common ones, or those of a set that lie together. */
export interface Lot {
  members: { account: Account; lying: Lying }[]
  count: number
  status: PieceStatus
  /** A set of many sizes, as shims are: each has its own on it, and paper has no room for them all. */
  isOfManySizes: boolean
}

/** What lies somewhere, in lots; those that go back first, in the order of the record. */
export function lotsOf(state: State, lying: readonly Lying[]): Lot[] {
  const many = setsOfManySizes(state)
  const lots = new Map<string, Lot>()
  for (const each of lying) {
    const account = state.ledger.accounts.get(each.piece)
    if (!account) continue
    const status = statusOf(state, account, each.place)
    const isOfManySizes = many.has(setKey(account))
    const key = lotKey(account, status, isOfManySizes ? '' : (account.piece.size ?? ''))
    const lot = lots.get(key) ?? { members: [], count: 0, status, isOfManySizes }
    lots.set(key, lot)
    lot.members.push({ account, lying: each })
    lot.count += each.count
  }
  const found = [...lots.values()]
  for (const lot of found) inOrderOfSet(state, lot)
  return found.sort((a, b) => Number(a.status !== 'FIT AGAIN') - Number(b.status !== 'FIT AGAIN'))
}

/** A lot in one line: `8 × valve cover bolts M6x25 hex 8 @1..8`, `4 × cam caps I1–I4 in slots 1–4`. */
export function lotText(state: State, lot: Lot, container: number | null): string {
  const [first] = lot.members
  if (!first) return ''
  const { piece, home } = first.account
  if (home.position === undefined) {
    const at = home.alikeAt ? ` @${rangesText(home.alikeAt, '..', ',')}` : ''
    return `${countedNoun(first.account, lot.count)}${at}${elsewhere(state, first.account, lot.count, container)}`
  }
  if (piece.kind === 'connection') {
    const ends = lot.members.map(({ account }) => account.home.position ?? '')
    return connectionText(first.account, ends)
  }
  return setText(state, lot, container)
}

/** A count with its noun and size: `8 × valve cover bolts M6x25 hex 8`. */
export function countedNoun(account: Account, count: number): string {
  return `${count} × ${noun(account, count)}`
}

/** The noun with its size: `valve cover bolt M6x25 hex 8`. */
export function noun({ piece }: Account, count: number): string {
  const { name, size } = piece
  const word = count === 1 ? singular(name) : name
  return size === undefined || word.endsWith(size) ? word : `${word} ${size}`
}

/**
 * What stands before the positions that pieces have for their own: `cam caps I1–I4`, `shims 2.55 at E3`. A bare position
 * after a size, a number or a word would read as a part of it. Positions that alike pieces share follow an `@`: each of them fits each of those.
 */
export function beforePositions({ piece }: Account, positions: readonly string[]): ' ' | ' at ' {
  const isBare =
    piece.size === undefined && positions.every((each) => /^\p{L}{1,4}\d{1,4}\p{L}?$/u.test(each))
  return isBare ? ' ' : ' at '
}

function setText(state: State, lot: Lot, container: number | null): string {
  const [first] = lot.members
  if (!first) return ''
  const here = lot.members.map(({ account, lying }) => slotted(account, lying))
  const positions = here.map(({ position }) => position)
  const told = lot.isOfManySizes ? withoutSize(first.account) : first.account
  const text = countedNoun(told, lot.count)
  const before = beforePositions(told, positions)
  const whole = positionsOfSet(state, first.account)
  const missing =
    container === null ? [] : whole.filter((position) => !liesHere(state, lot, position, container))
  const without = missing.length > 0 && missing.length < positions.length
  const isRest = positions.length + missing.length === whole.length
  if (without && isRest && here.every(({ slot }) => slot === undefined)) {
    return `${text}${before}${rangesText(whole)} without ${rangesText(missing)}`
  }
  return `${text}${before}${slottedText(here)}${without ? `, without ${rangesText(missing)}` : ''}`
}

/** A connection by the ports of those of its ends that are told of: `1 × hose, ends at tank and pump`. */
export function connectionText(account: Account, ends: readonly string[]): string {
  const name = noun(account, 1)
  if (ends.length > 1) return `1 × ${name}, ends at ${joined(ends)}`
  const isEnd = account.piece.set !== undefined && !/\bends?$/i.test(name)
  return `1 × ${name}${isEnd ? ' end' : ''} at ${ends[0]}`
}

/** The others of a lot that is spread, so that nobody takes a part for the whole. */
function elsewhere(state: State, account: Account, count: number, container: number | null): string {
  if (container === null || count >= account.should) return ''
  const others = liesAt(state, account.piece.id).filter(
    ({ place }) => containerPlace(place)?.container !== container && !GONE.has(place),
  )
  const sum = others.reduce((total, each) => total + each.count, count)
  // Of too many, nobody can say which belong together.
  if (others.length === 0 || sum > account.should) return ''
  const places = [...new Set(others.map(({ place }) => whereName(state, place)))]
  return ` (of ${account.should}, others ${joined(places)})`
}

const GONE = new Set<string>(['scrap', 'lost', 'spare'])

/** Everything of the same set and home that still belongs on the machine, by its positions as they came off. */
function positionsOfSet(state: State, { piece, home }: Account): string[] {
  if (piece.set === undefined) return home.position === undefined ? [] : [home.position]
  const found = new Set<string>()
  for (const other of state.ledger.accounts.values()) {
    const isMate =
      other.piece.set === piece.set && other.home.at === home.at && other.piece.name === piece.name
    if (isMate && other.piece.home.position !== undefined) found.add(other.piece.home.position)
  }
  return [...found]
}

function liesHere(state: State, lot: Lot, position: string, container: number): boolean {
  const [first] = lot.members
  if (!first) return false
  const { piece, home } = first.account
  return [...state.ledger.accounts.values()].some(
    (other) =>
      other.piece.set === piece.set &&
      other.piece.name === piece.name &&
      other.home.at === home.at &&
      other.home.position === position &&
      [...other.at.keys()].some((place) => containerPlace(place)?.container === container),
  )
}

function inOrderOfSet(state: State, lot: Lot): void {
  const [first] = lot.members
  if (first?.account.home.position === undefined) return
  const order = positionsOfSet(state, first.account)
  const rank = (account: Account) => order.indexOf(account.home.position ?? '')
  lot.members.sort((a, b) => rank(a.account) - rank(b.account))
}

function slotted({ home }: Account, { place }: Lying): Slotted {
  return { position: home.position ?? '', slot: containerPlace(place)?.slot }
}

const MOST_SIZES = 2

/** Matched sets whose members are of more sizes than paper has room for. */
function setsOfManySizes({ ledger }: State): Set<string> {
  const sizes = new Map<string, Set<string | undefined>>()
  for (const account of ledger.accounts.values()) {
    if (account.piece.set === undefined || account.home.position === undefined) continue
    const key = setKey(account)
    sizes.set(key, (sizes.get(key) ?? new Set()).add(account.piece.size))
  }
  return new Set([...sizes].flatMap(([key, found]) => (found.size > MOST_SIZES ? [key] : [])))
}

function setKey({ piece, home }: Account): string {
  return [piece.set ?? piece.id, piece.name, home.at].join('\n')
}

function withoutSize(account: Account): Account {
  const { size: _, ...piece } = account.piece
  return { ...account, piece }
}

function lotKey({ piece, home }: Account, status: PieceStatus, size: string): string {
  if (home.position === undefined) return `${piece.id}`
  return [piece.set ?? piece.id, piece.name, home.at, size, piece.step, status].join('\n')
}
