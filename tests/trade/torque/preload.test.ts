import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  impliedPreload,
  nutFactor,
  shareOfProof,
  shortFormTorque,
} from '../../../src/trade/torque/preload.ts'
import { fastenerClass, thread } from '../said-thread.ts'

const newtonsPerPound = 4.4482216152605
const newtonMetresPerPoundInch = 0.1129848290276167
const newtonMetresPerPoundFoot = 1.3558179483314

describe('the short form, T = K d F', () => {
  test.each([
    // Mechanical Fastening, Joining and Assembly, p. 85: d 0.190 in, F 1275 lbf.
    [0.3, 0.19, 1275, 72.7],
    [0.25, 0.19, 1275, 60.6],
    [0.2, 0.19, 1275, 48.5],
    [0.15, 0.19, 1275, 36.3],
    [0.1, 0.19, 1275, 24.2],
    // A machine elements textbook, example 19-1 (Mott, from memory): 3/8-16, F 4000 lbf.
    [0.15, 0.375, 4000, 225],
    // Shigley, Mechanical Engineering Design, 9th edition, example 8-3: 3/4-16, Fi 25 kip; the answer is from memory.
    [0.2, 0.75, 25000, 3750],
  ])('K %d, d %d in, F %d lbf: %d lbf·in', (factor, inches, pounds, published) => {
    const torque = shortFormTorque(factor, inches * 25.4, pounds * newtonsPerPound)
    expect(Math.abs(torque / newtonMetresPerPoundInch / published - 1)).toBeLessThan(0.005)
  })

  // Worked out from the proof loads: three quarters of them, for a joint that is opened again (Shigley).
  test.each([
    ['M8', '8.8', 0.2, 25.4, 1],
    ['M8', '8.8', 0.15, 19.1, 1],
    ['M10', '8.8', 0.2, 50.6, 1],
    ['M10', '8.8', 0.15, 37.9, 1],
    ['M12', '10.9', 0.2, 126, 1],
    ['M12', '10.9', 0.15, 94.5, 1],
    ['3/8-16', 'grade 5', 0.2, 30.9, newtonMetresPerPoundFoot],
    ['1/2-13', 'grade 8', 0.2, 106.4, newtonMetresPerPoundFoot],
  ])('%s %s, 0.75 of proof, K %d: %d', (size, name, factor, expected, scale) => {
    const of = thread(size)
    const { proofLoadN } = shareOfProof(of, fastenerClass(name), anyPreload) ?? { proofLoadN: 0 }
    const torque = shortFormTorque(factor, of.diameterMm, 0.75 * proofLoadN)
    expect(Math.abs(torque / scale / expected - 1)).toBeLessThan(0.005)
  })
})

const anyPreload = { leastN: 1, mostN: 1, leastNutFactor: 0.2, mostNutFactor: 0.2 }

describe('the full formula', () => {
  // VDI 2230 part 1, table A1, headed bolts, class 8.8, friction 0.12: assembly preload in kN, tightening torque in N·m.
  // From memory.
  test.each([
    ['M6', 10.2, 10.1],
    ['M8', 18.6, 24.6],
    ['M10', 29.6, 48],
    ['M12', 43, 84],
    ['M16', 80.9, 206],
  ])('%s: %d kN from %d N·m', (size, kilonewtons, torque) => {
    const preload = impliedPreload(thread(size), torque, { least: 0.12, most: 0.12 })
    expect(Math.abs((preload?.leastN ?? 0) / (kilonewtons * 1000) - 1)).toBeLessThan(0.03)
  })

  // Shigley: with a friction of 0.15 in thread and collar K is about 0.20, whatever the size, coarse or fine. From memory.
  test.each(['1/4-20', '1/4-28', '3/8-16', '1/2-13', '3/4-10', '3/4-16', '1-8', 'M6', 'M12', 'M24x2'])(
    '%s: K 0.20 with a friction of 0.15',
    (size) => expect(Math.abs((nutFactor(thread(size), 0.15) ?? 0) - 0.2)).toBeLessThan(0.012),
  )

  test('none for a taper pipe thread and for an unknown pitch', () => {
    expect(impliedPreload(thread('1/4 NPT'), 20, { least: 0.1, most: 0.2 })).toBeNull()
    expect(impliedPreload(thread('M15'), 20, { least: 0.1, most: 0.2 })).toBeNull()
  })

  test('what a torque makes, asked for its torque, gives the torque back; more friction leaves less', () => {
    const size = fc.constantFrom('M6', 'M8x1', 'M10', 'M12', '1/4-28', '3/8-16', '1/2-13').map(thread)
    const friction = fc.double({ min: 0.05, max: 0.4, noNaN: true })
    fc.assert(
      fc.property(
        size,
        friction,
        friction,
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        (of, a, b, torque) => {
          const range = { least: Math.min(a, b), most: Math.max(a, b) }
          const preload = impliedPreload(of, torque, range)
          if (preload === null) throw new Error('no preload')
          const back = (factor: number, force: number) => shortFormTorque(factor, of.diameterMm, force)
          expect(back(preload.mostNutFactor, preload.leastN)).toBeCloseTo(torque, 9)
          expect(back(preload.leastNutFactor, preload.mostN)).toBeCloseTo(torque, 9)
          expect(preload.leastN).toBeLessThanOrEqual(preload.mostN)
          // The energy of one turn goes into the pitch and into friction: without friction T = F p / 2 pi.
          expect(preload.mostN).toBeLessThan((torque * 1000 * 2 * Math.PI) / (of.pitchMm ?? 0))
        },
      ),
    )
  })
})

describe('against the proof load', () => {
  // Shigley, Mechanical Engineering Design, 9th edition, example 8-3: 25 kip on 3/4-16 are 67.02 ksi in its thread.
  test('the stress of a preload', () => {
    const share = shareOfProof(thread('3/4-16'), fastenerClass('grade 5'), {
      ...anyPreload,
      mostN: 25_000 * newtonsPerPound,
    })
    expect(Math.abs(((share?.most ?? 0) * 85) / 67.02 - 1)).toBeLessThan(0.003)
  })

  // A machine elements textbook, example 19-1 (Mott, from memory): 75 % of the proof of grade 5 are 63 750 psi.
  test('three quarters of proof', () => {
    const share = shareOfProof(thread('3/8-16'), fastenerClass('grade 5'), anyPreload)
    expect((0.75 * (share?.proofMpa ?? 0)) / 0.006894757).toBeCloseTo(63_750, -1)
  })

  test('25 N·m on M8 8.8, friction 0.10 to 0.16', () => {
    const preload = impliedPreload(thread('M8'), 25, { least: 0.1, most: 0.16 })
    const share = preload && shareOfProof(thread('M8'), fastenerClass('8.8'), preload)
    expect(share).toMatchObject({ proofMpa: 580 })
    expect(share?.proofLoadN).toBeCloseTo(21_234, -1)
    // By hand: 25 000 / (8 x 0.20899) = 14 953 N of 21 234 N, and 25 000 / (8 x 0.13974) = 22 363 N.
    expect(share?.least).toBeCloseTo(0.7042, 3)
    expect(share?.most).toBeCloseTo(1.0532, 3)
  })

  test('none where the standard has no such size', () => {
    expect(shareOfProof(thread('M18'), fastenerClass('9.8'), anyPreload)).toBeNull()
    expect(shareOfProof(thread('1/4 NPT'), fastenerClass('grade 5'), anyPreload)).toBeNull()
  })
})
