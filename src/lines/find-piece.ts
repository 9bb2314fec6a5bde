import type { State } from '../journal/state.ts'
import type { Account } from '../ledger/account.ts'
import type { Home, Piece, PieceId } from '../ledger/piece.ts'
import { wordsOf } from '../trade/bag-line/name-words.ts'
import { nearestWord } from './nearest.ts'

/** Which of several pieces a verb rather means; applied in turn, each only where it leaves any. */
export type Prefer = (account: Account) => boolean

/** Rather one of which some lies off the machine. */
export function isOff({ at }: Account): boolean {
  return [...at.keys()].some((place) => place !== 'machine')
}

/**
 * The pieces that answer to words: an id (`p12`), a name, a position, a home or a size, in any order and number
 * (`cam cap I3`, `I3`, `M6x25 cover bolts`). The closest matches alone, and of these those still in use rather
 * than replaced ones. Empty when there is none.
 */
export function findPieces(words: string, state: State, ...prefer: Prefer[]): PieceId[] {
  return narrowed(closest(words, state), [...prefer, inUse])
}

/** The same with what was replaced or left off for good: `old head gasket` means only those. */
export function findPiecesEver(words: string, state: State, ...prefer: Prefer[]): PieceId[] {
  return narrowed(closest(words, state), prefer)
}

/** Up to five pieces that share a word, or nearly one, with words that no piece answers to. */
export function nearPieces(words: string, state: State): PieceId[] {
  const asked = wordsOf(words).filter((word) => /\p{L}{2}/u.test(word))
  const scored = [...state.ledger.accounts.values()].map((account) => {
    const own = wordsOf(account.piece.name)
    return { account, shared: asked.filter((word) => nearestWord(word, own) !== null).length }
  })
  return scored
    .filter(({ shared }) => shared > 0)
    .sort((a, b) => b.shared - a.shared)
    .slice(0, 5)
    .map(({ account }) => account.piece.id)
}

/** Whether words name the position of a piece, and not only the piece. */
export function namesPosition(words: string, { home }: Account): boolean {
  if (home.position === undefined) return false
  const asked = new Set(wordsOf(words))
  return wordsOf(home.position).every((word) => asked.has(word))
}

function closest(words: string, state: State): Account[] {
  const id = /^p[1-9]\d{0,8}$/i.exec(words.trim())?.[0].toLowerCase() as PieceId | undefined
  if (id) return [state.ledger.accounts.get(id)].filter((account) => account !== undefined)
  const asked = wordsOf(words, EMPTY_WORDS)
  const isOld = asked[0] === 'old'
  const found = nearest(isOld ? asked.slice(1) : asked, [...state.ledger.accounts.values()])
  return isOld ? found.filter((account) => !inUse(account) || state.used.has(account.piece.id)) : found
}

function nearest(asked: readonly string[], accounts: readonly Account[]): Account[] {
  let best: Account[] = []
  let shortest: number = FARTHEST
  for (const account of asked.length === 0 ? [] : accounts) {
    const distance = distanceOf(asked, account)
    if (distance > shortest) continue
    if (distance < shortest) best = []
    shortest = distance
    if (distance < FARTHEST) best.push(account)
  }
  return best
}

function narrowed(accounts: Account[], prefer: readonly Prefer[]): PieceId[] {
  let best = accounts
  for (const wanted of prefer) {
    const some = best.filter(wanted)
    if (some.length > 0) best = some
  }
  return best.map(({ piece }) => piece.id)
}

const FARTHEST = 5
const EMPTY_WORDS = new Set(['the', 'a', 'an', 'of', 'at', 'end', 'on', 'for'])

/**
 * 0: name and position, neither more nor less. 1: within these. 2: the whole name, with home or size. 3: with home or
 * size. 4: beginnings of words.
 */
function distanceOf(asked: readonly string[], account: Account): number {
  const { name, position, around } = wordsAbout(account)
  const has = (word: string) => name.includes(word) || position.includes(word)
  const isWhole = name.every((word) => asked.includes(word))
  if (asked.every(has)) {
    const isExact = isWhole && asked.every((word) => name.includes(word) || isPositionSaid(asked, position))
    return isExact ? 0 : 1
  }
  if (asked.every((word) => has(word) || around.includes(word))) return isWhole ? 2 : 3
  const starts = (word: string) =>
    word.length >= 3 && [...name, ...around].some((other) => other.startsWith(word))
  return asked.every((word) => has(word) || starts(word)) ? 4 : FARTHEST
}

interface WordsAbout {
  name: string[]
  position: string[]
  /** Of its home, its size and its set. */
  around: string[]
}

/** What a piece answers to. A line is looked for among all pieces, so their words are taken apart once. */
function wordsAbout({ piece, home }: Account): WordsAbout {
  const known = taken.get(piece)
  if (known && known.home === home) return known.words
  const words = {
    name: wordsOf(piece.name),
    position: wordsOf(home.position ?? ''),
    around: [...wordsOf(home.at), ...wordsOf(piece.size ?? ''), ...wordsOf(piece.set ?? '')],
  }
  taken.set(piece, { home, words })
  return words
}

/** A piece and a home are never changed but exchanged, so that what was taken apart stays true. */
const taken = new WeakMap<Piece, { home: Home; words: WordsAbout }>()

function isPositionSaid(asked: readonly string[], position: readonly string[]): boolean {
  return position.length > 0 && position.every((word) => asked.includes(word))
}

/** Not replaced by another, nor left off for good. Aids and tools are always in use. */
function inUse({ piece, should }: Account): boolean {
  return should > 0 || piece.kind === 'aid' || piece.kind === 'tool'
}
