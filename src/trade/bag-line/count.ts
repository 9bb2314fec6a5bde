import { readDrive } from '../drive.ts'
import { readDecimal, readFraction, readWhole, tidy } from '../number.ts'
import { readThread } from '../thread.ts'
import { readFastenerClass } from '../torque/fastener-class.ts'
import { asOne, isFastener } from './nouns.ts'
import { type Fault, fault } from './outcome.ts'

/** The count with which an item begins. */
export interface Count {
  /** How many words it takes. */
  used: number
  /** How many are here. */
  found: number
  /** How many should be: the second number of `7 of 8`, else the same. */
  should: number
  /** Written as `7 of 8`. */
  isOf: boolean
  /** A count was written at all. */
  isStated: boolean
}

const mostPieces = 9999

const noCount: Count = { used: 0, found: 1, should: 1, isOf: false, isStated: false }

// `10 mm spacer` and `12 V relay` begin with a measure, not with a count.
const measures =
  /^(?:mm|cm|m|in|inch|"|°|deg|v|a|ah|w|k?ohm|Ω|bar|psi|kpa|l|ml|cc|nm|kg|g|way|stroke|tooth|teeth|pole)$/i

/**
 * Reads the count at the beginning of an item: `8`, `8x`, `8 x`, `8 pcs`, `7 of 8`, `two`. An item without a count is
 * one. Zero, less, more than 9999, a fraction and `7 of 5` are faults; the last `nearest` of each counts what is here.
 * @param words the words of the item
 * @param whole the item as typed, for the nearest form
 */
export function readCount(words: readonly string[]): Count | Fault {
  const [first = '', ...rest] = words
  const number = tidy(first)
  if (measures.test(rest[0] ?? '') || beginsWithSize(words)) return noCount
  const times = /^(\d{1,9})[x*]$/i.exec(number)
  const found = times ? Number(times[1]) : readWhole(number)
  if (found === undefined) return notWhole(first, number, rest)
  if (found > mostPieces) return fault('count', first, phrase(mostPieces, rest))
  if (rest[0]?.toLowerCase() === 'of') {
    const should = readWhole(rest[1] ?? '')
    if (should !== undefined) return readOf(found, should, words)
    if (rest.length === 1) return fault('count', words.join(' '), `${found} of ${found + 1} bolts`)
  }
  if (found === 0) return fault('count', first, `missing: ${phrase(1, rest)}`, phrase(1, rest))
  return { used: 1 + wordsAfter(rest), found, should: found, isOf: false, isStated: true }
}

function readOf(found: number, should: number, words: readonly string[]): Count | Fault {
  const part = words.slice(0, 3).join(' ')
  const rest = words.slice(3)
  if (should > mostPieces) return fault('count', part, `${found} of ${mostPieces} ${rest.join(' ')}`)
  if (should === 0) return fault('count', part, phrase(1, rest))
  if (found > should)
    return fault('count', part, `${should} of ${found} ${rest.join(' ')}`, phrase(found, rest))
  const used = 3 + (rest[0]?.toLowerCase() === 'x' ? 1 : 0)
  return { used, found, should, isOf: true, isStated: true }
}

/** Words that belong to a count: the `x` of `2 x M8`, the `pcs` of `2 pcs`, the `pcs of` of `2 pcs of hose`. */
function wordsAfter(rest: readonly string[]): number {
  const [next = '', second = ''] = rest.map((word) => word.toLowerCase())
  if (rest.length > 1 && /^[x×*]$/.test(next)) return 1
  if (/^(?:pcs?\.?|pieces?|off)$/.test(next) && rest.length > 1)
    return second === 'of' && rest.length > 2 ? 2 : 1
  return 0
}

function notWhole(typed: string, number: string, rest: readonly string[]): Count | Fault {
  if (/^\d{10,}$/.test(number)) return fault('count', typed, phrase(mostPieces, rest))
  const value = readDecimal(number) ?? readFraction(number)
  if (value === undefined) return noCount
  const inch = readThread(number)
  // `3/8 bolts` are bolts of 3/8 inch.
  if (number.includes('/') && !inch.understood && inch.code === 'pitch' && isFastener(rest.join(' '))) {
    return fault('thread', typed, `${inch.nearest} ${rest.join(' ')}`)
  }
  const near = Math.min(mostPieces, Math.max(1, Math.floor(Math.abs(value))))
  return fault('count', typed, phrase(near, rest))
}

/** Whether a word makes the number before it a measure: `mm`, `V`. */
export function isMeasure(word: string): boolean {
  return measures.test(word)
}

/** Whether words begin with a count that is no measure: `4 washers`, but not `10 mm long`. */
export function beginsWithCount(words: readonly string[]): boolean {
  return words.length > 1 && readWhole(words[0] ?? '') !== undefined && !measures.test(words[1] ?? '')
}

/** `10-32 screws`, `1/4 NPT plug` and `12 point 14 bolt` begin with a thread or a drive, not with a count. */
function beginsWithSize(words: readonly string[]): boolean {
  const [first = '', second = ''] = words
  if (first === '12' && readDrive(words.slice(0, 3).join(' ')).understood) return true
  // `2 1/2-13 bolts` are two half-inch bolts.
  if (readWhole(first) !== undefined) return false
  if (isClassOfBolt(first, words.slice(1))) return true
  return readThread(first).understood || readThread(`${first} ${second}`).understood
}

/** `10.9 bolts` are bolts of a class, not a count with a slip. */
function isClassOfBolt(first: string, rest: readonly string[]): boolean {
  return readFastenerClass(first).understood && isFastener(rest.join(' '))
}

function phrase(count: number, rest: readonly string[]): string {
  const name = rest.join(' ')
  return `${count} ${count === 1 ? asOne(name) : name}`.trim()
}
