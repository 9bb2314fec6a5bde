import { expect, test } from 'vitest'
import { boltStretch } from '../../../src/trade/measuring/bolt-stretch.ts'

test('the worked example of a textbook: 7/8-9, 10 000 lbf, 5 in, 30e6 psi, 0.46 in2 stretches by 0.0036 in', () => {
  // Printed as 0.0036 in; F L / (E A) = 0.003 623 in. Pound-force and inch: NIST SP 811, appendix B.8.
  const [lbf, inch] = [4.4482216152605, 25.4]
  const mm = boltStretch({
    newtons: 10_000 * lbf,
    lengthMm: 5 * inch,
    areaMm2: 0.46 * inch ** 2,
    modulusMPa: (30e6 * lbf) / inch ** 2,
  })
  expect(mm / inch).toBeCloseTo(0.003623, 6)
  expect((mm / inch).toFixed(4)).toBe('0.0036')
})
