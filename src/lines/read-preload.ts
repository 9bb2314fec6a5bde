import { readAmountOf } from '../trade/convert/read-amount.ts'
import { classInSize, threadInSize } from '../trade/size-text.ts'
import { readThread, type Thread } from '../trade/thread.ts'
import { classText, type FastenerClass, readFastenerClass } from '../trade/torque/fastener-class.ts'
import { type FrictionBy, readFriction, usualFriction } from '../trade/torque/friction.ts'
import type { Line } from './line.ts'
import type { PreloadSum } from './sum.ts'
import { lineAgain, takeAmount } from './take-wrench.ts'

/**
 * Reads what a preload is asked for: a thread, `M8 8.8 25 Nm`, or fasteners of the job that have one, `mount bolts 25 Nm`.
 * The friction is the user's, or that of dry or oiled threads, or spans both.
 */
export function readPreload(line: Line): PreloadSum {
  const [typedFriction] = line.take(/(?:^| )friction(?: (.*))?$/i) ?? []
  const [surface] = line.take(/(?:^|,? )(dry|oiled|lubricated|greased)$/i) ?? []
  const words = line.takeRest('THREAD').split(' ')
  const { thread, fastenerClass, rest } = takeThread(line, words) ?? takePiece(line, words)
  if (rest === '') line.missing('TORQUE')
  return {
    sum: 'preload',
    thread,
    ...(fastenerClass && { fastenerClass }),
    torque: takeAmount(line, 'torque', rest),
    ...frictionSaid(line, typedFriction, surface),
  }
}

interface Fastener {
  thread: Thread
  fastenerClass?: FastenerClass | undefined
  /** What is behind it: the torque. */
  rest: string
}

/** The longest run of words at the front that is a thread, `M8 x 1`, `1/4 NPT`; null where none begins there. */
function takeThread(line: Line, words: readonly string[]): Fastener | null {
  for (let used = Math.min(5, words.length); used > 0; used--) {
    const reading = readThread(words.slice(0, used).join(' '))
    if (reading.understood) return { thread: reading.value, ...takeClass(line, words.slice(used)) }
  }
  const [first = ''] = words
  const reading = readThread(first)
  if (reading.understood || !/^(?:m?\d|#)/i.test(first)) return null
  return line.notUnderstood(first, lineAgain(line, first, reading.nearest))
}

/** Words between thread and torque are the class; what is none is not passed over. */
function takeClass(line: Line, words: readonly string[]): Omit<Fastener, 'thread'> {
  for (let used = Math.min(3, words.length); used > 0; used--) {
    const rest = words.slice(used).join(' ')
    const reading = readFastenerClass(words.slice(0, used).join(' '))
    // `8.8 Nm` is a torque.
    if (reading.understood && !isUnit(rest)) return { fastenerClass: reading.value, rest }
  }
  const { before, rest } = splitTorque(line, words)
  if (before === '' || rest === '') return { rest: words.join(' ') }
  const reading = readFastenerClass(before)
  const nearest = reading.understood ? classText(reading.value) : reading.nearest
  return line.notUnderstood(before, lineAgain(line, before, nearest))
}

/** Fasteners of the job, by their name; their size says the thread, and the class where it was written down. */
function takePiece(line: Line, words: readonly string[]): Fastener {
  const { before, rest } = splitTorque(line, words)
  const name = before === '' ? words.join(' ') : before
  const pieces = line.pieces(name)
  const sizes = new Map(pieces.map((piece) => [line.account(piece)?.piece.size ?? '', piece]))
  // Matched fasteners of one size are one answer.
  if (sizes.size > 1) line.which(name, pieces)
  const [size = ''] = sizes.keys()
  const thread = threadInSize(size)
  if (thread === null) return line.notUnderstood(name, lineAgain(line, name, 'M8 8.8'))
  return { thread, fastenerClass: classInSize(size) ?? undefined, rest }
}

/** Words parted before the torque at their end; no torque is an empty rest. */
function splitTorque(line: Line, words: readonly string[]): { before: string; rest: string } {
  const units = { units: line.state.job.units }
  const from = words.findIndex((_, i) => readAmountOf('torque', words.slice(i).join(' '), units).understood)
  if (from < 0) return { before: '', rest: '' }
  return { before: words.slice(0, from).join(' '), rest: words.slice(from).join(' ') }
}

function isUnit(text: string): boolean {
  return text !== '' && !/\d/.test(text)
}

function frictionSaid(
  line: Line,
  typed: string | undefined,
  surface: string | undefined,
): Pick<PreloadSum, 'friction' | 'frictionBy'> {
  if (typed === undefined) {
    const by: Exclude<FrictionBy, 'typed'> =
      surface === undefined ? 'assumed' : /dry/i.test(surface) ? 'dry' : 'oiled'
    return { friction: usualFriction[by], frictionBy: by }
  }
  if (typed === '') line.missing('LEAST..MOST')
  const reading = readFriction(typed)
  if (reading.understood) return { friction: reading.value, frictionBy: 'typed' }
  return line.notUnderstood(typed, lineAgain(line, `friction ${typed}`, `friction ${reading.nearest}`))
}
