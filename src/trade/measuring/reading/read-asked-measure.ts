import type { MeasuredLimits } from '../measurement.ts'
import { readLimits } from './read-limits.ts'
import { LIMITS_IN_LINE } from './read-measurement.ts'

export interface AskedMeasure {
  /** What is to be measured: `run-out`. */
  quantity: string
  /** What it is held against, where that was said. */
  limits?: MeasuredLimits | undefined
  /** Whether a limit was said without a unit. */
  isBare: boolean
}

/** What is to be measured, apart from the limit said with it: `run-out at most 0.05`, `oil clearance 0.03..0.08 mm`. */
export function readAskedMeasure(text: string): AskedMeasure {
  for (const { index } of text.matchAll(new RegExp(LIMITS_IN_LINE, 'giu'))) {
    const behind = text.slice(index).replace(/^[\s,;]+/u, '')
    const quantity = text.slice(0, index).trim()
    // `bore of cylinders 2 to 4` names what is measured: a limit is said in words, or in parts of a millimetre or an inch.
    if (quantity === '' || (/^\d/.test(behind) && !/\d[.,]\d/.test(behind))) continue
    const read = readLimits(behind, { bareIsMost: true })
    if (read.understood) return { quantity, limits: read.value.limits, isBare: read.value.isBare }
  }
  return { quantity: text, isBare: false }
}
