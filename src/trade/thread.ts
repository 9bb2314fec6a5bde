import { readInchThread } from './inch-thread.ts'
import { readMetricThread } from './metric-thread.ts'
import { inchText, tidy } from './number.ts'
import { notUnderstood, type Reading } from './reading.ts'

export type ThreadSystem = 'metric' | 'unified' | 'npt'

/** A screw thread, with the length of the fastener where it was written. */
export interface Thread {
  system: ThreadSystem
  /** As the trade writes it: `M8`, `3/8`, `#10`; for a taper pipe thread the nominal pipe size, `1/4`. */
  size: string
  /** Nominal (major) diameter; for a taper pipe thread the outside diameter of the pipe. */
  diameterMm: number
  /** Absent where none was written and the standard knows no coarse one for the size. */
  pitchMm?: number
  /** The pitch was not written, and the coarse one was filled in. */
  pitchAssumed: boolean
  lengthMm?: number
  /** The text it was read from. */
  typed: string
}

/**
 * Why a thread was not understood: nothing there, no form of a thread, a size or a pitch that no standard has, a
 * length that cannot be.
 */
export type ThreadFault = 'empty' | 'form' | 'size' | 'pitch' | 'length'

/**
 * Reads a thread as a mechanic writes it: `M8`, `M8x45`, `M8x1`, `M8x1,25x45`, `3/8-16x1-1/2`, `#10-32`, `1/4 NPT`.
 * The second number of a metric thread is a pitch where ISO 261 has that pitch for the size, and a length
 * otherwise, unless it is too short for one. Inch lengths are in inches, metric ones in millimetres.
 */
export function readThread(text: string): Reading<Thread, ThreadFault> {
  const typed = text.trim()
  const form = tidy(text)
    .toLowerCase()
    .replace(/\*/g, 'x')
    .replace(/ ?([x-]) ?/g, '$1')
  if (form === '') return notUnderstood('empty', '', 'M8x45')
  if (form.startsWith('m')) return readMetricThread(form, typed)
  if (/^[#\dn]/.test(form)) return readInchThread(form, typed)
  return notUnderstood('form', typed, 'M8x45')
}

/** A thread as a mechanic writes it: `M6x25`, `M8x1x45`, `3/8-16x1-1/2`. A pitch that was assumed stays out. */
export function threadText(thread: Thread): string {
  if (thread.system === 'npt') return `${thread.size} NPT`
  if (thread.system === 'metric') {
    const pitch = thread.pitchAssumed || thread.pitchMm === undefined ? '' : `x${thread.pitchMm}`
    return `${thread.size}${pitch}${thread.lengthMm === undefined ? '' : `x${thread.lengthMm}`}`
  }
  const perInch = threadsPerInch(thread)
  const pitch = thread.pitchAssumed || perInch === undefined ? '' : `-${perInch}`
  return `${thread.size}${pitch}${thread.lengthMm === undefined ? '' : `x${inchText(thread.lengthMm)}`}`
}

/** Threads per inch of an inch thread; undefined for a metric one. */
export function threadsPerInch(thread: Thread): number | undefined {
  if (thread.system === 'metric' || thread.pitchMm === undefined) return undefined
  // Halves occur: 4-1/2 in the unified series, 11-1/2 in the taper pipe series.
  return Math.round((25.4 / thread.pitchMm) * 2) / 2
}
