import fc from 'fast-check'
import type { ShimStock } from '../../../src/trade/shims/assign-shims.ts'
import type { MeasuredValve } from '../../../src/trade/shims/valve.ts'

/** Engines as they are measured: shims in steps of 0.025 mm, some worn, clearances of a feeler; with a bench and a shop. */
export function anyEngine(valves: {
  maxLength: number
  minLength?: number
}): fc.Arbitrary<{ valves: MeasuredValve[]; stock: ShimStock }> {
  const size = fc.oneof(
    { weight: 4, arbitrary: fc.integer({ min: 92, max: 104 }).map((count) => count / 40) },
    { weight: 1, arbitrary: fc.integer({ min: 460, max: 520 }).map((count) => count / 200) },
  )
  const wanted = fc
    .tuple(fc.constantFrom(0.1, 0.13, 0.22), fc.constantFrom(0, 0.02, 0.03, 0.04, 0.05, 0.06))
    .map(([least, width]) => ({ least, most: Math.round((least + width) * 1000) / 1000 }))
  const clearance = fc.oneof(
    { weight: 9, arbitrary: fc.integer({ min: 1, max: 80 }).map((count) => count / 200) },
    { weight: 1, arbitrary: fc.constant(0) },
  )
  return fc.record({
    valves: fc
      .array(fc.record({ clearance, fitted: size, wanted }), { minLength: 1, ...valves })
      .map((measured) => measured.map((valve, at) => ({ position: `V${at + 1}`, ...valve }))),
    stock: fc.record({
      bench: fc.array(size, { maxLength: 3 }),
      forSale: fc.constantFrom([], [2.45], steps(2.3, 2.7, 0.05), steps(2.3, 2.6, 0.025)),
    }),
  })
}

/** Sizes from one to another, in millimetres. */
export function steps(from: number, to: number, step: number): number[] {
  const count = Math.round((to - from) / step) + 1
  return Array.from({ length: count }, (_, at) => Math.round((from + at * step) * 1000) / 1000)
}

/** An engine of a size that is worn at random, always the same for the same seed. */
export function wornEngine(count: number, seed: number): { valves: MeasuredValve[]; stock: ShimStock } {
  let state = seed
  const random = () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648
    return state / 2_147_483_648
  }
  const size = () => Math.round((2.3 + 0.025 * Math.floor(random() * 28)) * 1000) / 1000
  const valves = Array.from({ length: count }, (_, at) => {
    const wanted = at % 2 === 0 ? { least: 0.13, most: 0.17 } : { least: 0.22, most: 0.28 }
    const clearance = Math.round((wanted.least - 0.06 + random() * 0.16) * 100) / 100
    return { position: `V${at + 1}`, clearance, fitted: size(), wanted }
  })
  const bench = Array.from({ length: Math.ceil(count / 10) }, size)
  return { valves, stock: { bench, forSale: steps(2.3, 3, 0.05) } }
}
