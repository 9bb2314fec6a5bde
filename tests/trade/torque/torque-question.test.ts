import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readTorque } from '../../../src/trade/quantity.ts'
import { questionTorque, type TypedTorque } from '../../../src/trade/torque/torque-question.ts'
import { fastenerClass, thread } from '../said-thread.ts'

function typed(size: string, text: string, rest: Partial<TypedTorque> = {}): TypedTorque {
  const torque = readTorque(text)
  if (!torque.understood) throw new Error(`no torque: ${text}`)
  return { thread: thread(size), ...torque.value, thenAngle: false, ...rest }
}
const of = (size: string, name: string, text: string) =>
  typed(size, text, { fastenerClass: fastenerClass(name) })
const slips = (torque: TypedTorque) => questionTorque(torque)?.slips.map(({ text }) => text) ?? []

describe('the ceiling, 0.20 x d x proof load', () => {
  // Worked out from the printed proof loads of ISO 898-1, in N·m.
  test.each([
    ['M6', 13.9, 20, 23.4],
    ['M8', 33.9, 48.6, 56.8],
    ['M10', 67.4, 96.2, 112.6],
    ['M12', 117.4, 168, 196.3],
    ['M14', 186.8, 267.4, 313.6],
    ['M16', 291.2, 416, 486.4],
  ])('%s: %d, %d, %d', (size, ...ceilings) => {
    for (const [i, name] of ['8.8', '10.9', '12.9'].entries()) {
      const ceiling = ceilings[i] ?? 0
      expect(questionTorque(of(size, name, `${(ceiling * 0.98).toFixed(3)} Nm`))).toBeNull()
      const question = questionTorque(of(size, name, `${(ceiling * 1.02).toFixed(3)} Nm`))
      expect(question).toMatchObject({ code: 'torque-over', isClassAssumed: false })
      expect(Math.abs((question?.ceilingNm ?? 0) / ceiling - 1)).toBeLessThan(0.01)
    }
  })

  test('the facts are the arithmetic', () => {
    const question = questionTorque(of('M6', '8.8', '120 Nm'))
    if (!question) throw new Error('no question')
    const { areaMm2, proofMpa, proofLoadN, ceilingNm, share } = question
    expect(proofMpa).toBe(580)
    expect(proofLoadN).toBeCloseTo(areaMm2 * 580, 9)
    expect(ceilingNm).toBeCloseTo((0.2 * 6 * proofLoadN) / 1000, 9)
    expect(share).toBeCloseTo(120 / ceilingNm, 9)
  })
})

describe('the right number in the wrong unit', () => {
  test.each([
    ['M6', '8.8', '120 Nm', ['120 lbf·in', '120 kgf·cm']],
    ['M6', '8.8', '85 ft-lb', ['85 lbf·in', '85 kgf·cm']],
    ['M10', '8.8', '50 kgf·m', ['50 N·m']],
    ['M10', '8.8', '6.5 N·m', ['6.5 kgf·m']],
    ['M8', '8.8', '22 lbf·ft', []],
    ['M10', '8.8', '50 N·m', []],
    // Too little: 25 lbf·in is 2.8 N·m.
    ['M8', '8.8', '25 lbf·in', ['25 N·m', '25 lbf·ft']],
    ['3/8-16', 'grade 5', '30 lbf·in', ['30 N·m', '30 lbf·ft']],
    ['M12', '10.9', '12,5 Nm', []],
  ])('%s %s, %s: %j', (size, name, text, expected) => {
    expect(slips(of(size, name, text))).toEqual(expected)
  })

  test('what is a share of a torque, or is told in other words, has no unit to slip', () => {
    expect(slips({ ...of('M6', '8.8', '85 Nm'), typed: '100 % of 85 Nm' })).toEqual([])
    expect(slips({ ...of('M6', '8.8', '85 Nm'), typed: '30 Nm' })).toEqual([])
  })
})

describe('no class said', () => {
  test.each([
    ['M6', '10 Nm', undefined],
    // Over 8.8 (13.9) and 10.9 (20.0), within 12.9 (23.4).
    ['M6', '16 Nm', ['10.9', '12.9']],
    ['M6', '22 Nm', ['12.9']],
    ['1/2-13', '100 lbf·ft', undefined],
    ['1/2-13', '120 lbf·ft', ['8']],
  ])('%s, %s: only %j bear it', (size, text, bearing) => {
    const question = questionTorque(typed(size, text))
    expect(question?.code).toBe(bearing && 'torque-needs-class')
    if (question?.code === 'torque-needs-class')
      expect(question.bearing.map(({ name }) => name)).toEqual(bearing)
  })

  test.each([
    ['M6', '24 Nm', '12.9'],
    ['1/2-13', '150 lbf·ft', '8'],
  ])('%s, %s: even %s does not bear it', (size, text, name) => {
    expect(questionTorque(typed(size, text))).toMatchObject({
      code: 'torque-over',
      isClassAssumed: true,
      fastenerClass: { name },
    })
  })
})

describe('far too little', () => {
  test.each([
    ['M10', '6 Nm', 'torque-low'],
    ['M10', '7 Nm', undefined],
    ['M10', '0.5 Nm', 'torque-low'],
  ])('%s, %s: %s', (size, text, code) => {
    expect(questionTorque(typed(size, text))?.code).toBe(code)
  })

  test.each([
    ['an angle follows', { thenAngle: true }],
    ['more stages follow', { thenMore: true }],
    ['a sensor', { name: 'oxygen sensor' }],
    ['a plug', { name: 'spark plugs' }],
  ])('but not where %s', (_, rest) => {
    expect(questionTorque(typed('M14x1.25', '12 Nm', { thenAngle: false }))?.code).toBe('torque-low')
    expect(questionTorque(typed('M14x1.25', '12 Nm', rest))).toBeNull()
  })
})

describe('torque and angle', () => {
  test('the torque before an angle is checked, and the question knows of the angle', () => {
    expect(questionTorque(typed('M11', '40 Nm', { thenAngle: true }))).toBeNull()
    expect(
      questionTorque(typed('M11', '300 Nm', { thenAngle: true, fastenerClass: fastenerClass('10.9') })),
    ).toMatchObject({ code: 'torque-over', thenAngle: true })
  })
})

describe('nothing is known', () => {
  test.each(['1/4 NPT', 'M15', 'M64'])('%s', (size) => {
    expect(questionTorque(typed(size, '2000 Nm'))).toBeNull()
  })
})

// TM 5-3805-258-24-2: 40 N·m, then 90 degrees. TM 10-3930-669-20, appendix E: 29.5 lb-ft, then 165 degrees; the threads
// are not printed there, M10 to M12 are likely.
test.each([
  ['M10', '40 N·m', true],
  ['M12', '29.5 lbf·ft', true],
])('a published torque is not questioned: %s, %s', (size, text, thenAngle) => {
  expect(questionTorque(typed(size, text, { thenAngle }))).toBeNull()
})

describe('FAA AC 43.13-1B of 1998, table 7-1, tension nuts, lbf·in, no grade said', () => {
  // Install range and maximum. 1-14 is of the special series.
  test.each([
    ['#8-36', 12, 15, 20],
    ['#10-32', 20, 25, 40],
    ['1/4-28', 50, 70, 100],
    ['5/16-24', 100, 140, 225],
    ['3/8-24', 160, 190, 390],
    ['7/16-20', 450, 500, 840],
    ['1/2-20', 480, 690, 1100],
    ['9/16-18', 800, 1000, 1600],
    ['5/8-18', 1100, 1300, 2400],
    ['3/4-16', 2300, 2500, 5000],
    ['7/8-14', 2500, 3000, 7000],
    ['1-14', 3700, 5500, 10_000],
    ['#8-32', 12, 15, 20],
    ['#10-24', 20, 25, 35],
    ['1/4-20', 40, 50, 75],
    ['5/16-18', 80, 90, 160],
    ['3/8-16', 160, 185, 275],
    ['7/16-14', 235, 255, 475],
    ['1/2-13', 400, 480, 880],
    ['9/16-12', 500, 700, 1100],
    ['5/8-11', 700, 900, 1500],
    ['3/4-10', 1150, 1600, 2500],
    ['7/8-9', 2200, 3000, 4600],
  ])('%s: %d to %d, at most %d, none of them too much', (size, least, most, maximum) => {
    for (const pounds of [least, most]) expect(questionTorque(typed(size, `${pounds} lbf·in`))).toBeNull()
    // The maximum of 3/4-16 is past the ceiling of grade 5, so the grade is asked for.
    const expected = size === '3/4-16' ? 'torque-needs-class' : undefined
    expect(questionTorque(typed(size, `${maximum} lbf·in`))?.code).toBe(expected)
  })
})

test('what is questioned as too much stays so with more, and what is proposed instead is never questioned', () => {
  const any = fc.constantFrom('M6', 'M8', 'M10x1.25', 'M12', '1/4-20', '3/8-16', '1/2-20')
  const unit = fc.constantFrom('N·m', 'lbf·ft', 'lbf·in', 'kgf·m', 'kgf·cm')
  fc.assert(
    fc.property(any, fc.integer({ min: 1, max: 200 }), unit, (size, number, name) => {
      const torque = typed(size, `${number} ${name}`)
      const question = questionTorque(torque)
      for (const { text } of question?.slips ?? []) expect(questionTorque(typed(size, text))).toBeNull()
      if (question?.code !== 'torque-over') return
      expect(questionTorque({ ...torque, newtonMetres: torque.newtonMetres * 2 })?.code).toBe('torque-over')
    }),
    { numRuns: 500 },
  )
})
