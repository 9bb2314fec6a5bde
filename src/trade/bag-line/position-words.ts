import { readPositions } from '../positions.ts'
import { type Fault, fault, isFault } from './outcome.ts'
import type { At, Saying } from './saying.ts'

const label = '[A-Za-z]{0,3}\\d{1,6}[A-Za-z]{0,2}'
const rangeOrLabel = `${label}(?:(?:\\.{2,3}|…|-)${label})?`
const list = new RegExp(`^${rangeOrLabel}(?:,${rangeOrLabel})*,?$`, 'u')
const one = new RegExp(`^${rangeOrLabel}$`, 'u')
const letterRange = /^([A-Za-z]{1,3})\d{1,3}-\1\d{1,3}$/i

/** What words say of positions: `@1..3,5`, `@ 4`, `at 4`, `I1..I4`. Undefined for other words. */
export function positionsFrom(words: readonly string[], from: number): Saying | Fault | undefined {
  const first = words[from] ?? ''
  if (first.startsWith('@') && first.length > 1) return alike(first.slice(1), words.slice(from + 1), 0)
  const next = words[from + 1]
  if (first === '@' && next === undefined) return fault('positions', '@', '@1..4')
  if (first === '@' && next !== undefined) return alike(next, words.slice(from + 2), 1)
  const isAtEnd = from + 2 === words.length
  if (/^at$/i.test(first) && next !== undefined && isAtEnd && isPositionWord(next)) return alike(next, [], 1)
  const positions = barePositions(first)
  if (positions === undefined || isFault(positions)) return positions
  return { says: 'positions', positions, isAlike: false, used: 1 }
}

function alike(first: string, rest: readonly string[], before: number): Saying | Fault {
  const place = positionsAt(first, rest)
  if (isFault(place)) return place
  return { says: 'positions', positions: place.positions, isAlike: true, used: before + place.used }
}

/** Positions in bare numbers behind a name: `1-4`. Undefined for other words. */
export function numbersFrom(words: readonly string[], { from, start }: At): Saying | undefined {
  const match = /^(\d{1,3})-(\d{1,3})$/.exec(words[from] ?? '')
  if (!match || from === start || Number(match[1]) >= Number(match[2])) return undefined
  const place = positionsAt(match[0], [])
  return isFault(place)
    ? undefined
    : { says: 'positions', positions: place.positions, isAlike: false, used: 1 }
}

/** Whether a word is a list of positions with commas in it: `A1,A2,B1`, `1..3,5`. */
export function isPositionList(word: string): boolean {
  if (!list.test(word)) return false
  const parts = word.split(',').filter((part) => part !== '')
  // `1,5` is a decimal number.
  return parts.length > 2 || (parts.length === 2 && /[A-Za-z]|\.\.|…/u.test(word))
}

/** Whether a word can be one position or one range of them: `4`, `I3`, `1..3`. */
export function isPositionWord(word: string): boolean {
  return one.test(word)
}

/**
 * The positions that a word is without an `@` before it: `I1..I4`, `E1-E4`, `A1,A2,B1`. Undefined for a word that may
 * be something else, such as `A2-70`, and for a lone `I3`.
 */
function barePositions(word: string): string[] | Fault | undefined {
  const isRange = /\d(?:\.{2,3}|…)|(?:\.{2,3}|…)\w{0,3}\d/u.test(word)
  if (!isRange && !isPositionList(word) && !letterRange.test(word)) return undefined
  const positions = readPositions(word)
  if (positions.understood) return positions.value
  return fault('positions', word, positions.nearest)
}

/**
 * The positions behind an `@` or `at`, which may be single: `@4`, `@1..3,5`, `@1L 2L`.
 * @param first the word with its `@` taken off
 * @param rest the words behind it, of which those of the same shape are taken along
 */
export function positionsAt(
  first: string,
  rest: readonly string[],
): { positions: string[]; used: number } | Fault {
  const shape = shapeOf(first)
  let used = 1
  // `@4 10 hex`: a bare number behind is no position.
  if (/[A-Za-z]/.test(shape)) while (used <= rest.length && shapeOf(rest[used - 1] ?? '') === shape) used++
  const text = [first, ...rest.slice(0, used - 1)].join(' ')
  const positions = readPositions(text)
  if (positions.understood) return { positions: positions.value, used }
  return fault('positions', `@${text}`, `@${positions.nearest}`)
}

/** Joins further positions to those read so far, where none is named twice. */
export function joinPositions(positions: readonly string[], more: string): string[] | Fault {
  const joined = readPositions([...positions, more].join(','))
  return joined.understood ? joined.value : fault('positions', more, '')
}

function shapeOf(word: string): string {
  return /^[A-Za-z0-9]{1,8}$/.test(word) && /\d/.test(word)
    ? word.replace(/[a-z]/gi, 'A').replace(/\d{1,8}/g, '9')
    : ''
}
