import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readCoolant } from '../../../src/trade/coolant/read-coolant.ts'

const metric = { units: 'metric' as const }
const litres = (number: number, typed = `${number} L`) => ({ litres: number, typed })
const concentrate = { kind: 'concentrate', percent: 100 }
const premix = { kind: 'premix', percent: 50 }

describe('what is asked about a coolant', () => {
  const change = {
    ask: 'change',
    capacity: litres(10),
    nowPercent: 30,
    wantedPercent: 50,
    glycol: 'ethylene',
  }
  test.each([
    ['10 L from 30 % to 50 %', { ...change, refill: concentrate }],
    ['10 L from 30 to 50', { ...change, refill: concentrate }],
    ['10 L 30 % to 50 %', { ...change, refill: concentrate }],
    ['capacity 10 L 30 to 50 using concentrate', { ...change, refill: concentrate }],
    ['10 L, from 30% to 50/50, with antifreeze', { ...change, refill: concentrate }],
    ['10 L with premix from 30 % to 50 %', { ...change, refill: premix }],
    ['10 L from 30 % to 50 % with 60 % premix', { ...change, refill: { kind: 'premix', percent: 60 } }],
    ['10 L from 30 % to 50 % with 60 %', { ...change, refill: { kind: 'mixture', percent: 60 } }],
    ['10 L from 30 % to 50 % propylene', { ...change, refill: concentrate, glycol: 'propylene' }],
    [
      '10 L from 30 % to 50 % propylene glycol with water',
      { ...change, refill: { kind: 'water', percent: 0 }, glycol: 'propylene' },
    ],
    [
      '10 L drained 4 L from 30 % to 50 %',
      { ...change, ask: 'refill', drained: litres(4), refill: concentrate },
    ],
    [
      '10 L from 30 % drained 4 L with premix',
      {
        ask: 'after',
        capacity: litres(10),
        drained: litres(4),
        nowPercent: 30,
        refill: premix,
        glycol: 'ethylene',
      },
    ],
    [
      '2,1 L at 50 %',
      {
        ask: 'mix',
        volume: litres(2.1, '2,1 L'),
        asDrained: false,
        wantedPercent: 50,
        refill: concentrate,
        glycol: 'ethylene',
      },
    ],
    [
      '12 imp qt at 33.3 % with neat antifreeze',
      {
        ask: 'mix',
        volume: { litres: expect.closeTo(13.638, 3), typed: '12 imp qt' },
        asDrained: false,
        wantedPercent: 33.3,
        refill: concentrate,
        glycol: 'ethylene',
      },
    ],
  ])('%s', (typed, value) => {
    expect(readCoolant(typed, metric)).toEqual({ understood: true, value })
  })

  test('a mixture whose volume is not said is what came out', () => {
    const drainedBefore = litres(2.1)
    expect(readCoolant('at 50 %', { ...metric, drainedBefore })).toMatchObject({
      value: { ask: 'mix', volume: drainedBefore, asDrained: true },
    })
    expect(readCoolant('3 L at 50 %', { ...metric, drainedBefore })).toMatchObject({
      value: { volume: litres(3), asDrained: false },
    })
  })

  test('a bare quart is asked about, but not of who works in US units', () => {
    expect(readCoolant('12 qt at 50 %', metric)).toEqual({
      understood: false,
      code: 'us-or-imperial',
      part: '12 qt',
      nearest: '12 US qt at 50 %',
    })
    expect(readCoolant('12 qt at 50 %', { units: 'us' })).toMatchObject({
      value: { volume: { typed: '12 qt' } },
    })
  })

  test.each([
    ['', 'missing', 'AMOUNT', '10 L from 30 % to 50 %'],
    ['10 L', 'missing', 'STRENGTH', '10 L at 50 %'],
    ['10 L from 30 %', 'missing', 'to STRENGTH', '10 L from 30 % to 50 %'],
    ['10 L to 40 %', 'missing', 'from STRENGTH', '10 L from 30 % to 40 %'],
    ['from 30 % to 50 %', 'missing', 'AMOUNT', '10 L from 30 % to 50 %'],
    ['at 50 %', 'missing', 'AMOUNT', '10 L at 50 %'],
    ['10 from 30 % to 50 %', 'unit', '10', '10 L from 30 % to 50 %'],
    ['10 kg from 30 % to 50 %', 'unit', '10 kg', '10 L from 30 % to 50 %'],
    ['0 L at 50 %', 'not-positive', '0 L', '2.1 L at 50 %'],
    ['10 L from 30 % to 150 %', 'strength', '150 %', '10 L from 30 % to 50 %'],
    ['10 L from -5 % to 50 %', 'strength', '-5 %', '10 L from 30 % to 50 %'],
    ['10 L 40 %', 'words', '40 %', '10 L at 40 %'],
    ['10 kg', 'unit', '10 kg', '10 L at 50 %'],
    ['10 L at half', 'strength', 'half', '10 L at 50 %'],
    ['10 L from', 'strength', 'from', '10 L from 30 % to 50 %'],
    ['10 L at 50 % with oil', 'refill', 'oil', '10 L at 50 % with concentrate'],
    ['10 L at 50 % with', 'refill', 'with', '10 L at 50 % with concentrate'],
    ['10 L from 30 % to 50 % with 120 %', 'refill', '120 %', '10 L from 30 % to 50 % with 50 %'],
    ['10 L from 30 % from 40 % to 50 %', 'twice', 'from', '10 L from 30 % to 50 %'],
    ['10 L from 30 % at 50 %', 'words', 'at 50 %', '10 L from 30 % to 50 %'],
    ['10 L drained from 30 % to 50 %', 'empty', 'drained', '10 L drained 2.1 L from 30 % to 50 %'],
    ['10 L drained 4 from 30 % to 50 %', 'unit', '4', '10 L drained 4 L from 30 % to 50 %'],
    ['10 L drained 4 L to 50 %', 'missing', 'from STRENGTH', '10 L drained 4 L from 30 % to 50 %'],
    ['10 L drained 4 L from 30 %', 'missing', 'with WHAT', '10 L drained 4 L from 30 % with premix'],
    ['10 L at 50 % please', 'strength', '50 % please', '10 L at 50 %'],
  ])('%j is not understood: %s', (typed, code, part, nearest) => {
    expect(readCoolant(typed, metric)).toEqual({ understood: false, code, part, nearest })
    expect(readCoolant(nearest, metric).understood).toBe(true)
  })
})

test('whatever is typed, the nearest form is understood', () => {
  const word = fc.constantFrom(
    ...[
      '10 L',
      '12 qt',
      '0 L',
      '4',
      'from',
      'to',
      'at',
      'drained',
      'with',
      '30 %',
      '50',
      '150 %',
      '50/50',
      'premix',
      'oil',
    ],
    ...['propylene', 'of', ',', '%', '-5 %', '1.234,5 L'],
  )
  fc.assert(
    fc.property(fc.array(word, { maxLength: 9 }), (words) => {
      const reading = readCoolant(words.join(' '), metric)
      if (!reading.understood) expect(readCoolant(reading.nearest, metric).understood).toBe(true)
    }),
    { numRuns: 1000 },
  )
})
