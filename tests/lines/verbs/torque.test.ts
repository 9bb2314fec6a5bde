import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import type { Sum } from '../../../src/lines/sum.ts'
import { nothing, told } from '../told.ts'

function sum(line: string): Sum {
  const reading = readLine(line, nothing)
  if (reading.kind !== 'ask' || reading.ask.ask !== 'sum')
    throw new Error(`${line}: ${JSON.stringify(reading)}`)
  return reading.ask.sum
}

describe('a setting', () => {
  test.each([
    ['setting 40 Nm', { torque: { base: 40 } }],
    [
      'setting 40 Nm handle 400 mm adapter 50 mm',
      { adapter: { handle: { base: 400 }, length: { base: 50 }, angleDegrees: 0 } },
    ],
    [
      'setting 40 Nm adapter 2 in handle 16 in at 45°',
      { adapter: { handle: { base: 406.4 }, length: { base: 50.8 }, angleDegrees: 45 } },
    ],
    [
      'setting 40 Nm at -90 degrees lever 400 mm crowfoot 50 mm range 20..100 Nm',
      { adapter: { angleDegrees: -90 }, range: { least: { base: 20 }, most: { base: 100 } } },
    ],
    ['setting 40 Nm range 20-100 Nm', { range: { least: { base: 20 }, most: { base: 100 } } }],
    ['setting 40 Nm range 20 Nm to 100 Nm', { range: { least: { base: 20 }, most: { base: 100 } } }],
    ['setting 2,2 kgf·m range 0.5…5 kgf·m', { torque: { number: 2.2 }, range: { most: { number: 5 } } }],
  ])('%s', (line, expected) => expect(sum(line)).toMatchObject({ sum: 'setting', ...expected }))
})

describe('a preload', () => {
  test.each([
    [
      'preload M8 8.8 25 Nm',
      { thread: { size: 'M8' }, fastenerClass: { name: '8.8' }, torque: { base: 25 } },
    ],
    ['preload M8 25 Nm', { frictionBy: 'assumed', friction: { least: 0.08, most: 0.24 } }],
    ['preload M8 25 Nm dry', { frictionBy: 'dry', friction: { least: 0.14, most: 0.24 } }],
    ['preload M8 25 Nm, oiled', { frictionBy: 'oiled', friction: { least: 0.08, most: 0.16 } }],
    ['preload M8 25 Nm friction 0,12', { frictionBy: 'typed', friction: { least: 0.12, most: 0.12 } }],
    ['preload M8 25 Nm friction 0.16..0.10', { frictionBy: 'typed', friction: { least: 0.1, most: 0.16 } }],
    ['preload M8 x 1 class 10.9 25 Nm', { thread: { pitchMm: 1 }, fastenerClass: { name: '10.9' } }],
    [
      'preload 3/8-16 grade 5 30 lbf·ft',
      { thread: { size: '3/8' }, fastenerClass: { standard: 'SAE J429' } },
    ],
    ['preload 1/4 NPT 20 Nm', { thread: { system: 'npt' } }],
    // A torque of 8.8, not a class.
    ['preload M8 8.8 Nm', { torque: { base: 8.8 } }],
  ])('%s', (line, expected) => expect(sum(line)).toMatchObject({ sum: 'preload', ...expected }))

  test('8.8 Nm names no class', () => expect(sum('preload M8 8.8 Nm')).not.toHaveProperty('fastenerClass'))
})

describe('the preload of fasteners of the job', () => {
  const state = told(
    'off 8 M8x1x45 10.9 hex 13 mount bolts into bench',
    'off 4 M6x25 hex 10 cover bolts @1..4 into bench',
    'off 2 M6x60 long cover bolts into bench',
    'off sump into bench',
  )

  test('is that of their thread and class', () => {
    expect(readLine('preload mount bolts 25 Nm dry', state)).toMatchObject({
      ask: {
        sum: { thread: { size: 'M8', pitchMm: 1 }, fastenerClass: { name: '10.9' }, frictionBy: 'dry' },
      },
    })
    expect(readLine('preload p1 25 Nm', state)).toMatchObject({ ask: { sum: { thread: { size: 'M8' } } } })
  })

  test.each([
    ['preload cover 9 Nm', 'which-piece'],
    ['preload camshaft 9 Nm', 'no-such-piece'],
    ['preload sump 9 Nm', 'not-understood'],
    ['preload mount bolts', 'missing'],
  ])('%s: %s', (line, code) => {
    const reading = readLine(line, state)
    expect(reading.kind === 'misread' ? reading.misreading.code : reading.kind).toBe(code)
  })
})

describe('not understood, with the line that would be', () => {
  test.each([
    ['= 0 Nm', 'amount', '= 22 Nm'],
    ['= 10,000 Nm', 'amount', '= 10.000 Nm'],
    ['= 9999 Nm', 'amount', '= 22 Nm'],
    ['= 22 Nm in litres', 'amount', '= 22 Nm in lbf·ft'],
    ['= 3 qt', 'amount', '= 3 US qt'],
    ['setting 40', 'amount', 'setting 40 Nm'],
    ['setting 40 mm', 'amount', 'setting 40 Nm'],
    ['setting 400 Nm handle 400 adapter 400 mm', 'amount', 'setting 400 Nm handle 400 mm adapter 400 mm'],
    ['setting 40 Nm handle 400 Nm adapter 5 mm', 'amount', 'setting 40 Nm handle 400 mm adapter 5 mm'],
    // A figure that nobody typed is proposed for no torque, length or range: the form is shown.
    ['setting 40 Nm range 20', 'not-understood', null],
    ['setting 40 Nm range 20..0 Nm', 'amount', null],
    ['setting 0 Nm', 'amount', null],
    ['setting 40 Nm handle x mm adapter 5 mm', 'amount', null],
    ['preload M8 8.8 0 Nm', 'amount', null],
    ['setting 40 Nm range 100..20 Nm', 'not-understood', 'setting 40 Nm range 20 Nm..100 Nm'],
    [
      'setting 40 Nm handle 4 cm adapter 2 cm at sixty',
      'not-understood',
      'setting 40 Nm handle 4 cm adapter 2 cm at 90',
    ],
    ['setting 40 Nm handel 400 mm', 'not-understood', null],
    ['preload M13 25 Nm', 'not-understood', 'preload M12 25 Nm'],
    ['preload 3/8 25 Nm', 'not-understood', 'preload 3/8-16 25 Nm'],
    ['preload M8 10.8 25 Nm', 'not-understood', 'preload M8 10.9 25 Nm'],
    ['preload M8 strong 25 Nm', 'not-understood', 'preload M8 8.8 25 Nm'],
    ['preload M8 8.8 25', 'amount', 'preload M8 8.8 25 Nm'],
    ['preload M8 25 Nm friction 5', 'not-understood', 'preload M8 25 Nm friction 0.10..0.16'],
  ])('%s: %s', (line, code, nearest) => {
    expect(readLine(line, nothing)).toMatchObject({ kind: 'misread', misreading: { code, nearest } })
    if (nearest !== null) expect(readLine(nearest, nothing).kind, nearest).toMatch(/ask|misread/)
  })

  test.each([
    ['=', 'AMOUNT'],
    ['setting', 'TORQUE'],
    ['setting 40 Nm handle 400 mm', 'adapter LENGTH'],
    ['setting 40 Nm adapter 40 mm', 'handle LENGTH'],
    ['setting 40 Nm at 90', 'handle LENGTH adapter LENGTH'],
    ['setting 40 Nm range', 'LEAST..MOST'],
    ['preload', 'THREAD'],
    ['preload M8', 'TORQUE'],
    ['preload M8 8.8', 'TORQUE'],
    ['preload M8 8.8 25 Nm friction', 'LEAST..MOST'],
  ])('%s: %s is missing', (line, what) => {
    expect(readLine(line, nothing)).toMatchObject({ kind: 'misread', misreading: { code: 'missing', what } })
  })
})

test('whatever is typed behind these words is read or not understood, and nothing is thrown', () => {
  const word = fc.constantFrom(
    ...'= setting preload 40 Nm lbf·ft mm in 0 -1 1/2 handle adapter at 90 deg range 20..100 to M8 M8x1 3/8-16 1/4 NPT 8.8 class grade 5 friction 0.10..0.16 dry oiled ( ) , / °C qt'.split(
      ' ',
    ),
  )
  const verb = fc.constantFrom('=', 'setting', 'preload')
  fc.assert(
    fc.property(verb, fc.array(word, { maxLength: 9 }), (begins, words) => {
      expect(readLine([begins, ...words].join(' '), nothing).kind).toMatch(/^(?:ask|misread)$/)
    }),
    { numRuns: 2000 },
  )
})
