import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findVerb, readLine, readOff } from '../../../src/lines/read-line.ts'
import type { Sum } from '../../../src/lines/sum.ts'
import { nothing, told } from '../told.ts'

function sum(line: string, state = nothing): Sum {
  const reading = readLine(line, state)
  if (reading.kind !== 'ask' || reading.ask.ask !== 'sum')
    throw new Error(`${line}: ${JSON.stringify(reading)}`)
  return reading.ask.sum
}

function misreading(line: string) {
  const reading = readLine(line, nothing)
  if (reading.kind !== 'misread') throw new Error(`${line} is understood`)
  return reading.misreading
}

describe('a coolant', () => {
  test.each([
    ['coolant 10 L from 30 % to 50 %', { ask: 'change', nowPercent: 30, wantedPercent: 50 }],
    ['Coolant 10 L from 30 to 50 with premix', { ask: 'change', refill: { kind: 'premix', percent: 50 } }],
    ['coolant 10 L drained 4 L from 30 % to 40 %', { ask: 'refill', drained: { litres: 4 } }],
    ['coolant 2,1 L at 50 % propylene', { ask: 'mix', volume: { litres: 2.1 }, glycol: 'propylene' }],
  ])('%s', (line, question) => {
    expect(sum(line)).toMatchObject({ sum: 'coolant', question })
  })

  test('as much as the record says came out', () => {
    const state = told('begin hoses off', 'off coolant out 2.1 L')
    expect(sum('coolant at 50 %', state)).toMatchObject({
      question: { ask: 'mix', asDrained: true, volume: { litres: 2.1, typed: '2.1 L' } },
    })
    const two = told('begin hoses off', 'off coolant out 2.1 L', 'off green antifreeze out 1 L')
    expect(readLine('coolant at 50 %', two)).toMatchObject({ kind: 'misread' })
    const oil = told('begin sump off', 'off oil out 3 L')
    expect(readLine('coolant at 50 %', oil)).toMatchObject({ kind: 'misread' })
  })

  test.each([
    [
      'coolant 12 qt at 50 %',
      { code: 'amount', fault: 'us-or-imperial', nearest: 'coolant 12 US qt at 50 %' },
    ],
    ['coolant 0 L at 50 %', { code: 'amount', fault: 'not-positive' }],
    ['coolant 10 Nm at 50 %', { code: 'amount', fault: 'unit', part: '10 Nm' }],
    ['coolant 10 L from 30 % to 150 %', { code: 'not-understood', part: '150 %' }],
    ['coolant 10 L at 50 % with oil', { part: 'oil', nearest: 'coolant 10 L at 50 % with concentrate' }],
    ['coolant', { code: 'missing', what: 'AMOUNT', form: 'coolant 10 L from 30 % to 50 %' }],
    [
      'coolant 10 L to 50 %',
      { code: 'missing', what: 'from STRENGTH', form: 'coolant 10 L from 30 % to 50 %' },
    ],
    // What came out, and what is called after it, are no sums.
    ['coolant out 2.1 L', { part: 'out 2.1 L', nearest: 'off coolant out 2.1 L' }],
    ['coolant drained 2.1 L', { part: 'drained 2.1 L', nearest: 'off coolant drained 2.1 L' }],
    ['coolant hose', { part: 'hose', nearest: 'off coolant hose' }],
  ])('%s is not understood', (line, expected) => {
    expect(misreading(line)).toMatchObject({ verb: 'coolant', ...expected })
  })

  // Where things come off, a line that begins no verb is a bag line.
  test.each([
    'coolant out 2.1 L',
    'coolant drained 2.1 L',
    'coolant hose: radiator > pump',
    'coolant 2.1 L out',
    'glycol out 2 L',
  ])('where things come off, "%s" is what came off', (line) => {
    expect(findVerb(line)).toBeNull()
    expect(readOff(line, nothing)).toMatchObject({ kind: 'commands' })
  })

  test.each([
    'coolant 10 L from 30 % to 50 %',
    'coolant at 50 %',
    'coolant 2.1 L at 50 %',
    'glycol for -25 °C',
  ])('but "%s" is a sum there too', (line) => {
    expect(findVerb(line)?.verb.topic).toBe('arithmetic')
  })
})

describe('frost', () => {
  test.each([
    ['freezes at 50 %', { sum: 'freezing-point', glycol: 'ethylene', percent: 50 }],
    ['freezes 33,3% propylene', { sum: 'freezing-point', glycol: 'propylene', percent: 33.3 }],
    ['glycol for -25 °C', { sum: 'glycol-for', glycol: 'ethylene', lowest: { celsius: -25 } }],
    ['glycol for -13 F PG', { sum: 'glycol-for', glycol: 'propylene', lowest: { typed: '-13 F' } }],
    ['glycol -25 C', { sum: 'glycol-for', lowest: { celsius: -25 } }],
  ])('%s', (line, expected) => {
    expect(sum(line)).toMatchObject(expected)
  })

  test.each([
    ['freezes at 120 % propylene', '120 %', 'freezes at 50 % propylene'],
    ['freezes at -20 C', '-20 C', 'freezes at 50 %'],
    ['glycol for winter', 'winter', 'glycol for -25 °C'],
    ['glycol for', 'glycol for', 'glycol for -25 °C'],
    ['glycol out 2 L', 'out 2 L', 'off glycol out 2 L'],
  ])('%s is not understood', (line, part, nearest) => {
    expect(misreading(line)).toMatchObject({ code: 'not-understood', part, nearest })
  })

  test('something is missing', () => {
    expect(misreading('glycol for -25')).toMatchObject({
      code: 'missing',
      what: 'C or F',
      form: 'glycol for -25 °C',
    })
    expect(misreading('freezes')).toMatchObject({ code: 'missing', what: '50 %' })
    expect(misreading('glycol')).toMatchObject({ code: 'missing', what: 'for -25 °C' })
  })
})

test('whatever is typed behind it, the line that is given back is understood', () => {
  const word = fc.constantFrom(
    ...[
      '10 L',
      '12 qt',
      '0 L',
      'from',
      'to',
      'at',
      'drained',
      'with',
      '30 %',
      '50',
      '150 %',
      'premix',
      'oil',
      'for',
    ],
    ...['-25 °C', '-25', 'propylene', ','],
  )
  const verb = fc.constantFrom('coolant', 'freezes at', 'glycol')
  fc.assert(
    fc.property(verb, fc.array(word, { minLength: 1, maxLength: 8 }), (begins, words) => {
      const reading = readLine(`${begins} ${words.join(' ')}`, nothing)
      if (reading.kind !== 'misread' || !('form' in reading.misreading)) return
      const { misreading: misread } = reading
      const form = ('nearest' in misread ? misread.nearest : null) ?? misread.form
      // Of what is no sum, it is said that it begins with `off`.
      if (!/^off |\[/.test(form)) expect(sum(form)).toBeDefined()
    }),
    { numRuns: 500 },
  )
})
