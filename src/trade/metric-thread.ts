import { readDecimal, readFraction } from './number.ts'
import { notUnderstood, type Reading, understood } from './reading.ts'
import type { Thread, ThreadFault } from './thread.ts'
import { metricSeries, pitchesOf } from './thread-series.ts'

const shortestMm = 0.5
const longestMm = 1000
// The coarsest pitch of ISO 261 up to M100 is 6 mm; a little beyond is still a pitch, if an odd one.
const coarsestMm = 8

/**
 * Reads a metric thread in its tidy form, such as `m8x1.25x45`. Called by `readThread`.
 * @param form lower case, with `x` or `-` between the numbers and no spaces around them
 */
export function readMetricThread(form: string, typed: string): Reading<Thread, ThreadFault> {
  const plain = form.replace(/ ?mm$/, '').replace(/^m ?([\d.,]+)-/, 'm$1x')
  const [sizeText = '', ...rest] = plain.slice(1).trim().split('x')
  const diameterMm = isNumber(sizeText) ? readDecimal(sizeText) : undefined
  if (diameterMm === undefined) return notUnderstood('form', typed, example(8))
  if (!metricSeries.has(diameterMm)) {
    const near = `M${nearestSize(diameterMm)}`
    const form = [near.toLowerCase(), ...rest].join('x')
    const isRest = rest.length > 0 && readMetricThread(form, form).understood
    return notUnderstood('size', typed, isRest ? [near, ...rest].join('x') : near)
  }
  if (rest.length > 2 || !rest.every(isNumber)) return faultyRest(rest, diameterMm, typed)
  const numbers = rest.map((number) => readFraction(number) ?? 0)
  const [first, second] = numbers
  const thread = (pitch: number | undefined, lengthMm: number | undefined) =>
    checked({ diameterMm, pitch, lengthMm, typed })
  if (first === undefined) return thread(undefined, undefined)
  if (second !== undefined) {
    if (!isPitch(first, diameterMm) && isPitch(second, diameterMm)) {
      return notUnderstood('pitch', typed, withLength(`M${diameterMm}x${second}`, first))
    }
    return thread(first, second)
  }
  return isPitch(first, diameterMm) || isTooShort(first, diameterMm)
    ? thread(first, undefined)
    : thread(undefined, first)
}

function checked(parts: {
  diameterMm: number
  pitch: number | undefined
  lengthMm: number | undefined
  typed: string
}): Reading<Thread, ThreadFault> {
  const { diameterMm, pitch, lengthMm, typed } = parts
  const coarse = metricSeries.get(diameterMm)?.coarseMm
  if (pitch !== undefined && (pitch < 0.1 || pitch > coarsestMm || pitch >= diameterMm)) {
    return notUnderstood('pitch', typed, withLength(`M${diameterMm}x${pitchesOf(diameterMm)[0]}`, lengthMm))
  }
  if (lengthMm !== undefined && (lengthMm < shortestMm || lengthMm > longestMm)) {
    return notUnderstood('length', typed, example(diameterMm))
  }
  const pitchMm = pitch ?? coarse
  return understood({
    system: 'metric',
    size: `M${diameterMm}`,
    diameterMm,
    ...(pitchMm !== undefined && { pitchMm }),
    pitchAssumed: pitch === undefined && pitchMm !== undefined,
    ...(lengthMm !== undefined && { lengthMm }),
    typed,
  })
}

function faultyRest(rest: string[], diameterMm: number, typed: string): Reading<Thread, ThreadFault> {
  const inches = rest.map((part) => (part.includes('/') ? readFraction(part) : undefined)).find(Boolean)
  if (inches !== undefined) {
    return notUnderstood(
      'length',
      typed,
      `M${diameterMm}x${Math.min(longestMm, Math.max(8, Math.round(inches * 25.4)))}`,
    )
  }
  return notUnderstood('form', typed, example(diameterMm))
}

function isNumber(text: string): boolean {
  return readDecimal(text) !== undefined && !/^[+-]/.test(text)
}

function isPitch(number: number, diameterMm: number): boolean {
  return pitchesOf(diameterMm).includes(number)
}

// No fastener is shorter than about two threads; `M8x1.5` is a slip for a pitch, or an odd pitch, not a length.
function isTooShort(number: number, diameterMm: number): boolean {
  return number < Math.max(2, 1.5 * Math.max(...pitchesOf(diameterMm)))
}

function withLength(thread: string, lengthMm: number | undefined): string {
  const usable = lengthMm !== undefined && lengthMm >= shortestMm && lengthMm <= longestMm
  return usable ? `${thread}x${lengthMm}` : thread
}

function nearestSize(diameterMm: number): number {
  let near = 8
  for (const size of metricSeries.keys()) {
    if (Math.abs(size - diameterMm) < Math.abs(near - diameterMm)) near = size
  }
  return near
}

/** The size with a length that is usual for it: about four diameters. */
function example(diameterMm: number): string {
  return `M${diameterMm}x${Math.max(5, 5 * Math.round(diameterMm * 0.8))}`
}
