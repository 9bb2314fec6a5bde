import fc from 'fast-check'
import { labelCode } from '../../src/label/code.ts'

/** Any valid label code. */
export const anyCode = fc
  .tuple(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 9999 }))
  .map(([job, container]) => labelCode(job, container))

/** The same codes in every run, for tests that count. */
export function seededCodes(count: number): string[] {
  return [...new Set(fc.sample(anyCode, { numRuns: count * 2, seed: 7064 }))].slice(0, count)
}
