import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readPasses } from '../../../src/trade/tightening-passes/read-passes.ts'

describe('the passes of a tightening', () => {
  test.each([
    ['20 Nm, 40 Nm, 90 deg', '20 Nm | 40 Nm | 90 deg'],
    ['40 Nm + 90° + 90°', '40 Nm | 90° | 90°'],
    ['2,2 kgf·m, 90 deg', '2,2 kgf·m | 90 deg'],
    ['20Nm,40Nm', '20Nm | 40Nm'],
    ['snug; 10 Nm then 20 Nm', 'snug | 10 Nm | 20 Nm'],
    ['40 Nm +90°', '40 Nm | 90°'],
    ['40 +/- 4 Nm + 90 ± 5°', '40 +/- 4 Nm | 90 ± 5°'],
    ['40 Nm, then a marked sixth of a turn', '40 Nm | a marked sixth of a turn'],
    // A unit that is written once.
    ['20, 40, 60 Nm', '20 Nm | 40 Nm | 60 Nm'],
    ['20, 40 Nm (30 lbf·ft)', '20 Nm | 40 Nm (30 lbf·ft)'],
    ['20, 40 ± 4 Nm', '20 Nm | 40 ± 4 Nm'],
    ['2,5, 5, 7,5 Nm', '2,5 Nm | 5 Nm | 7,5 Nm'],
    ['20/40 Nm', '20 Nm | 40 Nm'],
    ['20/40 Nm clockwise', '20 Nm | 40 Nm clockwise'],
    ['1/2 kgf·m', '1/2 kgf·m'],
    ['1/4 turn', '1/4 turn'],
    ['20/40/60 Nm', '20 Nm | 40 Nm | 60 Nm'],
    ['20 Nm, 30, 40 lbf·ft', '20 Nm | 30 lbf·ft | 40 lbf·ft'],
    ['10, 60 Nm, check 60 Nm clockwise', '10 Nm | 60 Nm | check 60 Nm clockwise'],
    ['10, 60 Nm clockwise', '10 Nm | 60 Nm clockwise'],
    // Percentages of a torque that is written once.
    ['30%, 70%, 100% of 60 Nm', '30 % of 60 Nm | 70 % of 60 Nm | 100 % of 60 Nm'],
    ['30/70/100 % of 60 Nm', '30 % of 60 Nm | 70 % of 60 Nm | 100 % of 60 Nm'],
    ['30, 70, 100 % of 60 Nm', '30 % of 60 Nm | 70 % of 60 Nm | 100 % of 60 Nm'],
    ['30 % of 60 Nm, 70 %', '30 % of 60 Nm | 70 % of 60 Nm'],
    ['50% of 20 Nm, 50%, 100% of 60 Nm', '50 % of 20 Nm | 50 % of 60 Nm | 100 % of 60 Nm'],
    ['100% of 60 Nm, check 100% clockwise', '100 % of 60 Nm | check 100 % of 60 Nm clockwise'],
    ['20 Nm, 40 Nm, mark', '20 Nm | 40 Nm | mark'],
    ['40 Nm, back off, again', '40 Nm | back off | 40 Nm'],
    ['40 Nm, back off and repeat', '40 Nm | back off | 40 Nm'],
    [
      '10, 20 Nm, back off, again, back off, again',
      '10 Nm | 20 Nm | back off | 10 Nm | 20 Nm | back off | 10 Nm | 20 Nm',
    ],
    [
      'snug, 20 Nm, 90 deg, slacken, all passes again, mark',
      'snug | 20 Nm | 90 deg | slacken | snug | 20 Nm | 90 deg | mark',
    ],
  ])('%s', (typed, passes) => {
    expect(read(typed)).toBe(passes)
  })

  // TM 10-3930-669-20, appendix E: 29.5 lb-ft, then 45 + 45 + 45 + 30 degrees, 165 in all.
  test('a published sequence adds up', () => {
    const degrees = passesOf('29.5 lb-ft, 45 deg, 45 deg, 45 deg, 30 deg').map((pass) =>
      pass.kind === 'angle' ? pass.degrees : 0,
    )
    expect(degrees.reduce((sum, each) => sum + each)).toBe(165)
  })

  // TM 10-3930-675-24-2: 50, 105 and 155 lb-ft, back off fully, then the three passes again.
  test.each([
    '50, 105 and 155 lb-ft, back off fully, then the three passes again',
    '50, 105, 155 lb-ft, back off, again',
    '50/105/155 lb-ft; slacken; repeat all three passes',
  ])('published with a repetition: %s', (typed) => {
    const three = [67.791, 142.361, 210.152]
    expect(
      passesOf(typed).map((pass) =>
        pass.kind === 'torque' ? Number(pass.newtonMetres.toFixed(3)) : pass.kind,
      ),
    ).toEqual([...three, 'back-off', ...three])
  })

  // Vehicle service data: 29, 69 N-m, back off 180, then 180 again, 42 N-m, then by angle.
  test('published, backed off by half a turn twice', () => {
    expect(read('29, 69 Nm, back off 180 deg, back off 180 deg, 42 Nm, 80-90 deg, 40-45 deg')).toBe(
      '29 Nm | 69 Nm | back off 180 deg | back off 180 deg | 42 Nm | 80-90 deg | 40-45 deg',
    )
  })

  // ASME PCC-1: hand tight; 30, 70 and 100 % in the pattern; 100 % round and round.
  test('the passes of a flange, as published', () => {
    const passes = passesOf('hand tight, 30/70/100 % of 60 Nm, check 100 % clockwise, mark')
    expect(passes.map((pass) => ('newtonMetres' in pass ? pass.newtonMetres : pass.kind))).toEqual([
      'snug',
      18,
      42,
      60,
      60,
      'witness',
    ])
    expect(passes.map(({ round }) => round ?? false)).toEqual([false, false, false, false, true, false])
  })

  const anyPercentages = fc
    .uniqueArray(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 18 })
    .map((percentages) => percentages.toSorted((a, b) => a - b))

  test('percentages, each on its own or in one list, come to the same', () => {
    fc.assert(
      fc.property(anyPercentages, fc.integer({ min: 1, max: 3000 }), (percentages, torque) => {
        const apart = passesOf(percentages.map((each) => `${each} % of ${torque} Nm`).join(', '))
        expect(passesOf(`${percentages.join(', ')} % of ${torque} Nm`)).toEqual(apart)
        expect(apart.map((pass) => pass.kind === 'torque' && pass.newtonMetres)).toEqual(
          percentages.map((each) => expect.closeTo((each * torque) / 100, 9)),
        )
      }),
    )
  })
})

describe('what is not understood', () => {
  test.each([
    ['', 'empty', '', '20 Nm, 40 Nm, 90 deg'],
    [' , ', 'empty', '', '20 Nm, 40 Nm, 90 deg'],
    ['20', 'form', '20', '20 Nm'],
    ['20,40,60 Nm', 'form', '20,40,60 Nm', '20, 40, 60 Nm'],
    ['20, 40', 'form', '20', '20 Nm, 40'],
    // Torques or angles: not for the program to say.
    ['20, 40, 90 deg', 'form', '20', '20 Nm, 40, 90 deg'],
    ['20 Nm, 40, 90 deg', 'form', '40', '20 Nm, 40 Nm, 90 deg'],
    ['20 Nm, 0 deg', 'angle', '0 deg', '20 Nm, 90 deg'],
    ['30%, 70%', 'percent-torque', '30%', '30 % of 60 Nm, 70%'],
    ['30%, 60 Nm', 'percent-torque', '30%', '30 % of 60 Nm, 60 Nm'],
    ['30%, 170% of 60 Nm', 'percent', '170 % of 60 Nm', '30 % of 60 Nm, 100 % of 60 Nm'],
    ['70%, 30%, 100% of 60 Nm', 'percent-falling', '30 % of 60 Nm', '70 % of 60 Nm, 100 % of 60 Nm'],
    ['20 Nm, mark, 40 Nm', 'witness-early', 'mark', '20 Nm, 40 Nm, mark'],
    ['20 Nm, mark, mark', 'witness-early', 'mark', '20 Nm, mark'],
    // TM 5-3825-226-24 marks head and cap for the angle: that is no witness mark.
    ['40 Nm, mark, 120 deg', 'witness-early', 'mark', '40 Nm, 120 deg, mark'],
    ['mark', 'witness-early', 'mark', '20 Nm, mark'],
    ['back off, 20 Nm', 'nothing-to-back-off', 'back off', '20 Nm'],
    ['back off, slacken', 'nothing-to-back-off', 'back off', '20 Nm, back off'],
    ['20 Nm, back off, slacken, 20 Nm', 'backed-off-twice', 'slacken', '20 Nm, back off, 20 Nm'],
    ['20 Nm, again', 'again', 'again', '20 Nm, back off, again'],
    ['again', 'again', 'again', 'back off, again'],
    ['20 Nm, back off, 20 Nm, again', 'again', 'again', '20 Nm, back off, 20 Nm, back off, again'],
    [
      '20, 40 Nm, back off, the three passes again',
      'again',
      'the three passes again',
      '20 Nm, 40 Nm, back off, again',
    ],
  ])('%j: %s', (typed, code, part, nearest) => {
    expect(readPasses(typed)).toEqual({ understood: false, code, part, nearest })
  })

  test('twenty-one passes are a slip, repeated ones too', () => {
    expect(readPasses(Array(20).fill('20 Nm').join(', '))).toMatchObject({ understood: true })
    const twenty = Array(20).fill('20 Nm').join(', ')
    expect(readPasses(`${twenty}, 20 Nm`)).toMatchObject({ code: 'too-many', nearest: twenty })
    expect(readPasses(`${Array(10).fill('20 Nm').join(', ')}, back off, again`)).toMatchObject({
      code: 'too-many',
    })
  })

  const words = fc.constantFrom(
    '20 Nm',
    '40',
    '0 Nm',
    '30%',
    '120 %',
    '70 % of 60 Nm',
    '90 deg',
    '-90 deg',
    '43-37 Nm',
    'check',
    'snug',
    'mark',
    'back off',
    'back off 180 deg',
    'again',
    'the three passes again',
    'tight',
    '60 Nm clockwise',
    '90 deg clockwise',
    '1,250 Nm',
  )

  const pieces = fc.constantFrom(
    ...[
      '40',
      '4',
      '/',
      '%',
      ' of ',
      'Nm',
      ' ',
      ',',
      '+',
      '-',
      '±',
      '..',
      'deg',
      'turn',
      'a ',
      '(',
      ')',
      'then ',
    ],
    ...['1/2', 'lbf·ft', 'check ', 'clockwise', 'snug', 'mark', 'back off', 'again', 'dry'],
  )
  const texts = fc.oneof(
    fc.array(words, { minLength: 1, maxLength: 25 }).map((parts) => parts.join(', ')),
    fc.array(pieces, { maxLength: 20 }).map((parts) => parts.join('')),
    fc.string(),
  )

  test('step by step, the nearest form is understood in the end', () => {
    fc.assert(
      fc.property(texts, (typed) => {
        let text = typed
        for (let step = 0; step < 80; step++) {
          const reading = readPasses(text)
          if (reading.understood) return
          expect(reading.nearest).not.toBe(text)
          text = reading.nearest
        }
        expect(text).toBe('understood')
      }),
      { numRuns: 500 },
    )
  })
})

function passesOf(typed: string) {
  const reading = readPasses(typed)
  if (!reading.understood) throw new Error(`${reading.code}: ${reading.part}`)
  return reading.value
}

function read(typed: string): string {
  return passesOf(typed)
    .map((pass) => pass.typed)
    .join(' | ')
}
