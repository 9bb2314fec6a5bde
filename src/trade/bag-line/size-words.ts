import { readDrive } from '../drive.ts'
import { readTorque } from '../quantity.ts'
import { readThread, type Thread } from '../thread.ts'
import { readFastenerClass } from '../torque/fastener-class.ts'
import { isMeasure } from './count.ts'
import { isFastener, singular } from './nouns.ts'
import { type Fault, fault } from './outcome.ts'
import type { Saying } from './saying.ts'

const threadStart = /^(?:m(?=\d|$)|#\d|no\.?\d{0,2}$|\d|[½¼¾⅛⅜⅝⅞])/iu
const threadLike =
  /^(?:m\d{1,3}(?:[.,]\d{1,4})?(?:[x×*/-].*)?|\d{1,2}\/\d{1,2}-\d{1,3}(?:x.*)?|#\d{1,2}-.*)$/iu
const driveStart =
  /^(?:hex|allen|socket|internal|int$|inhex|e?-?torx|external|hexalobular|bi-?hex|p[hz]\d?$|cross|jis|slot|square|sq$|[te]\d|\d|[½¼¾⅛⅜⅝⅞])/iu
const classStart =
  /^(?:\d{1,2}[.,]\d$|(?:property|class|cl\.?|grade|gr\.?|sae)$|(?:class|cl|grade|gr|sae)\.?\d)/i
const driveAlone = /^(?:hex|hexagon|allen|inhex|e?-?torx|hexalobular|bi-?hex|12-?p(?:oin)?t|jis)$/i
const headWords = new Set([
  'head',
  'flange',
  'socket',
  'cap',
  'key',
  'plug',
  'drive',
  'shank',
  'body',
  'insert',
  'bit',
])

/** The thread that words are: `M6 x 25`, `3/8-16x1`. Undefined for other words. */
export function threadFrom(words: readonly string[], from: number): Saying | Fault | undefined {
  const first = words[from] ?? ''
  if (!threadStart.test(first)) return undefined
  for (let used = Math.min(7, words.length - from); used > 0; used--) {
    const thread = readThread(words.slice(from, from + used).join(' '))
    if (!thread.understood || isRangeOfNumbers(thread.value)) continue
    const { typed } = thread.value
    const hasLooseSign = /^[x×*]$/i.test(words[from + used] ?? '')
    if (hasLooseSign) return fault('thread', `${typed} ${words[from + used]}`, nearestTo(`${typed}x`))
    return { says: 'thread', thread: thread.value, used }
  }
  return threadLike.test(first) ? fault('thread', first, nearestTo(first)) : undefined
}

/** `1-8` is a thread of one inch, but on a bag it is positions 1 to 8, unless a length or `UNC` says otherwise. */
function isRangeOfNumbers(thread: Thread): boolean {
  return thread.system === 'unified' && /^\d-\d{1,2}$/.test(thread.typed) && !thread.size.startsWith('#')
}

function nearestTo(thread: string): string {
  const reading = readThread(thread)
  return reading.understood ? thread : reading.nearest
}

/**
 * The class or grade that words are: `8.8`, `class 10.9`, `grade 5`. Undefined for other words, and for a number that is
 * a measure: `8.8 mm`. `class 10.8`, which no standard has, is a fault.
 */
export function classFrom(words: readonly string[], from: number): Saying | Fault | undefined {
  const first = words[from] ?? ''
  const next = words[from + 1] ?? ''
  // `4.8 x 13` is a size.
  if (!classStart.test(first) || isMeasure(next) || /^[x×*]$/i.test(next)) return undefined
  if (readTorque(`${first} ${next}`).understood) return undefined
  for (let used = Math.min(3, words.length - from); used > 0; used--) {
    const typed = words.slice(from, from + used).join(' ')
    const reading = readFastenerClass(typed)
    if (reading.understood) {
      return { says: 'class', fastenerClass: reading.value, isSure: !/^\d/.test(typed), used }
    }
    if (/^(?:class|cl\.?|grade|gr\.?) ?\d{1,2}[.,]\d$/i.test(typed))
      return fault('class', typed, reading.nearest)
  }
  return undefined
}

/** The drive that words are: `hex 10`, `10 mm hex`, `T30`. Undefined for other words. */
export function driveFrom(words: readonly string[], from: number): Saying | Fault | undefined {
  const first = words[from] ?? ''
  if (!driveStart.test(first)) return undefined
  for (let used = Math.min(5, words.length - from); used > 0; used--) {
    const typed = words.slice(from, from + used)
    const drive = readDrive(typed.join(' '))
    if (!drive.understood || isOtherwise(typed, words.slice(from + used - 1))) continue
    return {
      says: 'drive',
      drive: drive.value,
      isSure: !/^(?:[te]\d{1,3}|slot(?:ted)?)$/i.test(typed.join(' ')),
      used,
    }
  }
  const next = words[from + 1] ?? ''
  const isNumbered = /^\d/.test(next)
  if (!driveAlone.test(first) || (!isNumbered && isHeadWord(first, next))) return undefined
  const reading = readDrive(isNumbered ? `${first} ${next}` : first)
  return fault(
    'drive',
    isNumbered ? `${first} ${next}` : first,
    reading.understood ? 'hex 10' : reading.nearest,
  )
}

/**
 * `4 hex 10` is a 4 and a hex 10; `t 30` is no drive although `T30` is; a `10 mm socket` is a tool; `12 point` without
 * a size is a name.
 */
function isOtherwise(typed: readonly string[], fromLast: readonly string[]): boolean {
  const [first = ''] = typed
  if (typed.length > 1 && /^[te]$/i.test(first)) return true
  if (!/^[\d½¼¾⅛⅜⅝⅞]/u.test(first) || /^12-?p/i.test(first) || typed[1]?.startsWith('p')) return false
  if (/^socket$/i.test(typed.at(-1) ?? '')) return true
  return /^\d/.test(fromLast[1] ?? '') && readDrive(fromLast.slice(0, 2).join(' ')).understood
}

/** `hex nuts` and `hex head` name a shape and need no size. */
function isHeadWord(first: string, next: string): boolean {
  return !/torx/i.test(first) && (isFastener(next) || headWords.has(singular(next)))
}

/** A fault where words are a torque, which has no place on a bag. */
export function torqueFrom(words: readonly string[], from: number): Fault | undefined {
  if (!/^\d/.test(words[from] ?? '')) return undefined
  for (let used = Math.min(3, words.length - from); used > 0; used--) {
    const typed = words.slice(from, from + used).join(' ')
    if (readTorque(typed).understood) return fault('torque', typed, '')
  }
  return undefined
}
