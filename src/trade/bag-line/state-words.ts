import { readWhole } from '../number.ts'
import type { BrokenHow } from './bag-item.ts'
import { type Fault, isFault } from './outcome.ts'
import { isPositionWord, positionsAt } from './position-words.ts'
import type { At, Saying } from './saying.ts'

const brokenWords: Record<string, BrokenHow> = {
  snapped: 'snapped',
  sheared: 'snapped',
  broken: 'broken',
  cracked: 'cracked',
  stripped: 'stripped',
}

/** What a word says of a piece: that it was not there, or how it is broken. */
export type State = 'missing' | BrokenHow

/** What a word says of the state of a piece; undefined for any other word. */
export function stateOf(word: string): State | undefined {
  const plain = word.toLowerCase()
  if (plain === 'missing' || plain === 'lost') return 'missing'
  return Object.hasOwn(brokenWords, plain) ? brokenWords[plain] : undefined
}

/**
 * What words say of the state of some pieces: `1 missing`, `missing 1`, `snapped`, `I3 missing`, `1 snapped @4`,
 * `1 snapped in the head`. Undefined for other words.
 */
export function stateFrom(words: readonly string[], { clause, from, start }: At): Saying | Fault | undefined {
  const [first = '', second = ''] = words.slice(from, from + 2)
  const isFirst = from === start
  const own = stateOf(first)
  if (own) {
    const isAdjective = clause === 0 && isFirst && words.length > from + 1
    if (isAdjective) return { says: 'state', state: own, count: 'all', used: 1 }
    if (clause > 0 && !isFirst) return undefined
    const count = readWhole(second)
    return stated(own, count ?? 'lone', words, from, count === undefined ? 1 : 2)
  }
  const state = stateOf(second)
  if (!state || (clause === 0 && isFirst)) return undefined
  const count = first.toLowerCase() === 'all' ? 'all' : readWhole(first)
  if (count !== undefined) return stated(state, count, words, from, 2)
  const label = first.replace(/^[@#]/, '')
  if (!isFirst || !(isPositionWord(label) || first.startsWith('@'))) return undefined
  const place = positionsAt(label, [])
  if (isFault(place)) return place
  return { ...stated(state, place.positions.length, words, from, 2), at: place.positions }
}

function stated(
  state: State,
  count: number | 'all' | 'lone',
  words: readonly string[],
  from: number,
  used: number,
): Saying & { says: 'state' } {
  const rest = words.slice(from + used)
  const saying = { says: 'state', state, count, used: words.length - from } as const
  if (rest.length === 0) return saying
  const label = rest.join(' ').replace(/^(?:@ ?|(?:at|from|in) )/i, '')
  const place = isPositionWord(label) ? positionsAt(label, []) : undefined
  if (place && !isFault(place)) {
    return { ...saying, count: count === 'lone' ? place.positions.length : count, at: place.positions }
  }
  return { ...saying, detail: words.slice(from).join(' ') }
}
