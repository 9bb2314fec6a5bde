import { describe, expect, test } from 'vitest'
import { readRefill, readStrength, takeGlycol } from '../../../src/trade/coolant/strength.ts'

describe('strengths', () => {
  test.each([
    ['50 %', 50],
    ['50%', 50],
    ['50', 50],
    ['33,3 %', 33.3],
    ['50 percent', 50],
    ['50 vol %', undefined],
    ['50 vol-%', 50],
    ['50/50', 50],
    ['50:50', 50],
    ['0 %', 0],
    ['100 %', 100],
  ])('%s', (typed, percent) => {
    const reading = readStrength(typed)
    expect(reading.understood ? reading.value : undefined).toBe(percent)
  })

  // Which of two unequal parts is the water is anyone's guess.
  test.each([
    ['', 'empty'],
    ['strong', 'percent'],
    ['40/60', 'percent'],
    ['1:2', 'percent'],
    ['101 %', 'out-of-range'],
    ['-1 %', 'out-of-range'],
  ])('%j is none: %s', (typed, code) => {
    expect(readStrength(typed)).toEqual({ understood: false, code, part: typed, nearest: '50 %' })
  })
})

describe('what goes in', () => {
  test.each([
    ['concentrate', 'concentrate', 100],
    ['neat antifreeze', 'concentrate', 100],
    ['anti-freeze', 'concentrate', 100],
    ['pure glycol', 'concentrate', 100],
    ['95 % concentrate', 'concentrate', 95],
    ['premix', 'premix', 50],
    ['ready-mixed', 'premix', 50],
    ['premixed coolant', 'premix', 50],
    ['60 % premix', 'premix', 60],
    ['50/50', 'mixture', 50],
    ['40 % mix', 'mixture', 40],
    ['40', 'mixture', 40],
    ['water', 'water', 0],
    ['distilled water', 'water', 0],
  ])('%s', (typed, kind, percent) => {
    expect(readRefill(typed)).toEqual({ understood: true, value: { kind, percent } })
  })

  test.each([
    ['', 'empty', 'concentrate'],
    ['oil', 'percent', 'concentrate'],
    ['mix', 'empty', 'concentrate'],
    ['120 % premix', 'out-of-range', '50 %'],
  ])('%j is not understood: %s', (typed, code, nearest) => {
    expect(readRefill(typed)).toEqual({ understood: false, code, part: typed, nearest })
  })
})

describe('which glycol', () => {
  test.each([
    ['50 % propylene', '50 %', 'propylene'],
    ['propylene glycol 50 %', '50 %', 'propylene'],
    ['50 % (PG)', '50 %', 'propylene'],
    ['50 % ethylene glycol', '50 %', 'ethylene'],
    ['50 % MEG', '50 %', 'ethylene'],
    ['50 %', '50 %', 'ethylene'],
    ['50 % polypropylene', '50 % polypropylene', 'ethylene'],
  ])('%s', (typed, rest, glycol) => {
    expect(takeGlycol(typed)).toEqual({ rest, glycol })
  })
})
