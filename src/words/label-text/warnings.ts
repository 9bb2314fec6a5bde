import type { State } from '../../journal/state.ts'
import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { joined } from '../grammar.ts'
import { differenceName } from '../names.ts'
import { countedPiece, pieceName } from '../pieces.ts'
import type { Lot } from './lots.ts'
import { noun } from './lots.ts'

/** What must be known of the pieces in lots: shortages, what is broken, cautions, marks; gravest first. */
export function warningsOf(state: State, lots: readonly Lot[]): string[] {
  const accounts = lots.flatMap(({ members }) => members.map(({ account }) => account))
  const pieces = new Set(accounts.map(({ piece }) => piece.id))
  const steps = new Set(accounts.filter((account) => !isAside(account)).map(({ piece }) => piece.step))
  return [
    ...[...new Set(accounts)].flatMap((account) => shortageOf(state, account)),
    ...[...new Set(accounts)].flatMap(surplusOf),
    ...brokenOf(state, pieces),
    ...state.notes
      .filter(({ kind, step }) => kind === 'caution' && step !== null && steps.has(step))
      .map(({ text }) => text),
    ...marksOf(state, pieces),
  ]
}

/** What is short of a piece, and where it went: `valve cover bolts M6x25 hex 8: 7 of 8, 1 was missing`. */
export function shortageOf(state: State, account: Account): string[] {
  const { piece, home, should, entered, at } = account
  // A used one is short by its nature, and its status says so.
  if (isAside(account) || state.used.has(piece.id)) return []
  const gone = (at.get('scrap') ?? 0) + (at.get('lost') ?? 0)
  const have = entered - gone
  if (have >= should) return []
  const short = should - have
  if (home.position !== undefined) return [`${pieceName(state, piece.id)} is missing`]
  const inScrap = Math.min(short, at.get('scrap') ?? 0)
  const lost = Math.min(short - inScrap, at.get('lost') ?? 0)
  const never = short - inScrap - lost
  const went = [
    ...(never > 0 ? [`${never} ${never === 1 ? 'was' : 'were'} missing`] : []),
    ...(inScrap > 0 ? [`${inScrap} in scrap`] : []),
    ...(lost > 0 ? [`${lost} lost`] : []),
  ]
  return [`${noun(account, should)}: ${have} of ${should}, ${went.join(', ')}`]
}

function surplusOf(account: Account): string[] {
  const { should, entered, at } = account
  if (should === 0 || isAside(account)) return []
  const here = entered - (at.get('scrap') ?? 0) - (at.get('lost') ?? 0) - (at.get('spare') ?? 0)
  return here > should ? [`${noun(account, should)}: ${here - should} too many, ${should} belong there`] : []
}

/** Faults that are not put right, and counts that do not agree. */
function brokenOf(state: State, pieces: ReadonlySet<PieceId>): string[] {
  const faults = [...state.faults.values()]
    .filter(({ settled, piece }) => settled === null && pieces.has(piece))
    .map(({ piece, count, kind }) => `${countedPiece(state, piece, count)} ${kind}, to be put right`)
  const counts = [...state.differences.values()]
    .filter(({ settled, piece }) => settled === null && piece !== null && pieces.has(piece))
    .map(({ id }) => `count not explained: ${differenceName(state, id)}`)
  return [...faults, ...counts]
}

/** Marks that the pieces carry, those that show the same in one line. */
function marksOf(state: State, pieces: ReadonlySet<PieceId>): string[] {
  const carriers = new Map<string, string[]>()
  for (const { piece, text } of state.marks.values()) {
    if (piece === undefined || !pieces.has(piece)) continue
    carriers.set(text, [...(carriers.get(text) ?? []), pieceName(state, piece)])
  }
  return [...carriers].map(([text, names]) => `mark on ${joined(names)}: ${text}`)
}

function isAside({ piece }: Account): boolean {
  return piece.kind === 'aid' || piece.kind === 'tool'
}
