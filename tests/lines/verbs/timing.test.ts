import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import { nothing } from '../told.ts'

function question(line: string) {
  const reading = readLine(line, nothing)
  if (reading.kind !== 'ask' || reading.ask.ask !== 'sum' || reading.ask.sum.sum !== 'timing')
    throw new Error(`${line}: ${JSON.stringify(reading)}`)
  return reading.ask.sum.question
}

const stages = [{ driver: 24, driven: 48 }]
const late = { measured: { by: 'teeth', teeth: 1, side: 'late', at: 'cam' } }

describe('teeth', () => {
  test.each([
    ['teeth 24/48', { stages, off: null, pins: null }],
    ['teeth crank 24, cam 48', { stages, off: null, pins: null }],
    ['teeth 24/48 off 1 late', { stages, off: late, pins: null }],
    ['teeth 24/48, off 1 tooth late', { stages, off: late, pins: null }],
    ['teeth 24/48 chain of 126 links', { stages, off: null, pins: 126 }],
    ['teeth 24/48 chain 126 off 1 late', { stages, off: late, pins: 126 }],
    ['teeth 24/48 off 1 late, chain 126 pins', { stages, off: late, pins: 126 }],
    [
      'teeth 24/48 counted 14 for 15 slack',
      {
        stages,
        off: { measured: { by: 'count', wanted: 15, found: 14, run: 'slack', at: 'cam' } },
        pins: null,
      },
    ],
    [
      'teeth 24/36 30/40',
      {
        stages: [
          { driver: 24, driven: 36 },
          { driver: 30, driven: 40 },
        ],
        off: null,
        pins: null,
      },
    ],
  ])('%s', (line, expected) => {
    expect(question(line)).toEqual(expected)
  })

  test.each([
    ['teeth 24', '24', 'teeth 24/48'],
    ['teeth 48 cam', '48 cam', 'teeth 24/48'],
    ['teeth 24/48 1 late', '24/48 1 late', 'teeth 24/48 off 1 late'],
    ['teeth 24/48 off 1 purple late', 'purple', 'teeth 24/48 off 1 late'],
    ['teeth 24/48 chain 5', 'chain 5', 'teeth 24/48 chain 126'],
    ['teeth many', 'many', 'teeth 24/48'],
    ['teeth 24 off 1 late', '24', 'teeth 24/48 off 1 late'],
  ])('%s is not understood', (line, part, nearest) => {
    expect(readLine(line, nothing)).toMatchObject({
      kind: 'misread',
      misreading: { code: 'not-understood', part, nearest },
    })
    expect(question(nearest).stages).toEqual(stages)
  })

  test.each([
    ['teeth 24/48 off', 'HOW MUCH', 'teeth 24/48 off 1 late'],
    ['teeth 24/48 off 1', 'early or late', 'teeth 24/48 off 1 late'],
    ['teeth 24/48 off 15 deg late', 'crank or cam', 'teeth 24/48 off 15 deg crank late'],
    ['teeth 24/48 off 16 for 15', 'tight or slack', 'teeth 24/48 off 16 for 15 tight'],
    ['teeth 24/48 off 16 for 15 left', 'the way it runs', 'teeth 24/48 off 16 for 15 left, runs clockwise'],
  ])('%s: something is missing', (line, what, form) => {
    expect(readLine(line, nothing)).toMatchObject({
      kind: 'misread',
      misreading: { code: 'missing', verb: 'teeth', what, form },
    })
    expect(question(form).stages).toEqual(stages)
  })

  test('of nothing', () => {
    expect(readLine('teeth', nothing)).toMatchObject({ misreading: { code: 'missing', what: 'CRANK/CAM' } })
    expect(readLine('teeth off 1 late', nothing)).toMatchObject({ misreading: { code: 'missing' } })
  })
})

test('whatever is typed behind it, the line that is given back is understood', () => {
  const word = fc.constantFrom(
    ...[
      '24/48',
      '24',
      '24/36 30/40',
      'many',
      'off',
      '1',
      '15 deg',
      'crank',
      'late',
      'chain 126',
      'chain 3',
      'chain',
    ],
    ...['16 for 15', 'tight', 'left', 'runs clockwise', ',', 'counted'],
  )
  fc.assert(
    fc.property(fc.array(word, { minLength: 1, maxLength: 7 }), (words) => {
      const reading = readLine(`teeth ${words.join(' ')}`, nothing)
      if (reading.kind !== 'misread') return
      const { misreading } = reading
      const form =
        'nearest' in misreading ? misreading.nearest : 'form' in misreading ? misreading.form : null
      if (form !== null && !form.includes('CRANK/CAM')) expect(question(form)).toBeDefined()
    }),
    { numRuns: 500 },
  )
})
