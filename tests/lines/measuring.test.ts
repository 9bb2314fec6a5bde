import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decide } from '../../src/journal/decide/decide.ts'
import { parseEntry } from '../../src/journal/entry.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { judge } from '../../src/trade/measuring/judge.ts'
import { numbered } from '../support/record.ts'
import { told, topEnd } from './told.ts'

const state = told(...topEnd)
const read = (line: string) => readLine(line, state)

describe('measure', () => {
  test('what, readings, instrument, limits and their source; the piece where the record knows it', () => {
    expect(
      read('measure flatness of cylinder head: 0.02 0.04 by 0.01 feeler, max 0.05 manual p. 4-12'),
    ).toEqual({
      kind: 'commands',
      bag: null,
      commands: [
        {
          do: 'measure',
          name: 'flatness of cylinder head',
          piece: expect.stringMatching(/^p\d+$/),
          measurement: {
            kind: 'flatness',
            readings: [
              { mm: 0.02, typed: '0.02' },
              { mm: 0.04, typed: '0.04' },
            ],
            instrument: { resolutionMm: 0.01, typed: 'by 0.01 feeler', kind: 'feeler' },
            limits: { typed: 'max 0.05', mostMm: 0.05, source: 'manual p. 4-12' },
          },
        },
      ],
    })
  })

  test('one piece stands for its set', () => {
    const reading = read('measure clearance of cam caps I1..I4: 0.04 0.04 0.05 0.04 max 0.07')
    const [command] = reading.kind === 'commands' ? reading.commands : []
    const piece = command?.do === 'measure' ? command.piece : undefined
    expect(piece && state.ledger.accounts.get(piece)?.piece.name).toMatch(/cam cap/)
  })

  test('what the record does not know is measured all the same', () => {
    const reading = read('measure bore of cylinder 1: 76.01')
    expect(reading.kind === 'commands' && reading.commands[0]).not.toHaveProperty('piece')
  })

  test('in a step', () => {
    const reading = read('measure end float of crankshaft: 0.10 max 0.25 in step 2')
    expect(reading.kind === 'commands' && reading.commands).toMatchObject([
      { step: 2, name: 'end float of crankshaft' },
    ])
  })

  test.each([
    ['measure', 'missing', undefined],
    ['measure flatness of head', 'missing', undefined],
    ['measure colour of head: 3', 'measuring', 'measure size of head: 3'],
    ['measure flatness of head: 0,02,0,03', 'measuring', 'measure flatness of head: 0,02 0,03'],
    [
      'measure flatness of head: 2 3 thou max 0.05',
      'measuring',
      'measure flatness of head: 2 3 thou max 0.05 thou',
    ],
    ['measure free length of spring: 45 limit 44', 'measuring', 'measure free length of spring: 45 max 44'],
    ['measure flatness grid 3x4 of head: 0 0 0 0 0 0', 'measuring', null],
    ['measure valve clearance I1..I4: 0.14', 'measuring', null],
    // A misprint: neither figure is proposed over the other where it would have to be converted.
    ['measure flatness of head: 0.02 max 0.01 mm (0.004 in)', 'measuring', null],
    ['measure flatness of head: 0.02 with feelers', 'measuring', null],
  ])('%s is misread, with nothing made up', (line, code, nearest) => {
    const reading = read(line)
    expect(reading).toMatchObject({ kind: 'misread', misreading: { code } })
    if (nearest === undefined || reading.kind !== 'misread') return
    expect('nearest' in reading.misreading && reading.misreading.nearest).toBe(nearest)
    if (nearest !== null) expect(read(nearest).kind).toBe('commands')
  })
})

test.each([
  ['measures', null],
  ['measures valve clearance', 'valve clearance'],
])('%s', (line, words) => {
  expect(read(line)).toEqual({ kind: 'ask', ask: { ask: 'sum', sum: { sum: 'measures', words } } })
})

test('whatever is typed is misread, or recorded and judged in numbers', () => {
  const subject = fc.constantFrom(
    'flatness of head',
    'flatness grid 2x2 of head',
    'valve clearance I1..I2',
    'bore of cylinder 1',
    'clearance of cam caps',
    'run-out of crank',
    'stretch of bolts',
    'out-of-round of bore',
    'taper of bore',
  )
  const piece = fc.constantFrom(
    ...[
      '0.02',
      '0,03',
      '76.01',
      '-0.01',
      '999999999',
      '0',
      '.5',
      '1/2',
      'mm',
      'in',
      'thou',
      '"',
      'I1',
      'I2',
      'top',
    ],
    ...[
      'x',
      'y',
      'bottom',
      'bore',
      'journal',
      'before',
      'after',
      'over',
      'per',
      'max',
      'min',
      'limits',
      '..',
      'to',
    ],
    ...['by', 'feeler', 'dial', 'and', '±', '(', ')', 'manual p. 3', 'out-of-round', 'taper', ':', ','],
  )
  fc.assert(
    fc.property(subject, fc.array(piece, { minLength: 1, maxLength: 12 }), (what, pieces) => {
      const line = `measure ${what}: ${pieces.join(' ')}`
      const reading = readLine(line, state)
      if (reading.kind === 'misread') {
        const { misreading } = reading
        const nearest = 'nearest' in misreading ? misreading.nearest : null
        if (nearest !== null) expect([nearest, readLine(nearest, state).kind]).toEqual([nearest, 'commands'])
        return
      }
      if (reading.kind !== 'commands') throw new Error(reading.kind)
      const [command] = reading.commands
      if (command?.do !== 'measure') throw new Error('no measurement')
      const decision = decide(state, command)
      expect(decision).toMatchObject({ ok: true })
      if (decision.ok) expect(parseEntry(numbered(decision.body, 99))).toMatchObject({ type: 'measured' })
      const { results } = judge(command.measurement)
      const numbers = results.flatMap(({ mm, lowMm, highMm }) => [mm, lowMm, highMm])
      expect(numbers.every(Number.isFinite)).toBe(true)
      expect(results.every(({ mm, lowMm, highMm }) => lowMm <= mm && mm <= highMm)).toBe(true)
    }),
    { numRuns: 3000 },
  )
})
