import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Entry } from '../../src/journal/entry.ts'
import type { State } from '../../src/journal/state.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { shimLines } from '../../src/lines/shim-lines.ts'
import { type ShimSum, shimSum } from '../../src/lines/shim-sum.ts'
import { shimsAtHome, theOne } from '../../src/plan/valves.ts'
import { readShims } from '../../src/trade/shims/read-shims.ts'
import { planShims } from '../../src/trade/shims/shim-plan.ts'
import { shimSizes } from '../../src/trade/shims/shim-sizes.ts'
import { given, record } from '../support/journal.ts'
import { anyEngine } from '../trade/shims/engines.ts'

describe('the lines that carry a plan out', () => {
  test('a swap and a new one', () => {
    const job = told(...twin)
    expect(linesFor(job.state, `${found} for sale 2.30..3.00 step 0.025`)).toEqual({
      lines: [
        'swap shims E2 E4 because 2.475 gives E2 0.235 mm and 2.50 gives E4 0.255 mm',
        'new shim E3 size 2.55',
        'spare p7 because another size takes its place',
      ],
      fitted: [],
    })
  })

  test('what was scrapped is no spare, and its successor is not bought again', () => {
    const scrapped = told(...twin, 'scrap shim E3 because it leaves 0.31 mm')
    const { lines } = linesFor(scrapped.state, `${found} for sale 2.55`)
    expect(lines.slice(1)).toEqual(['new shim E3 size 2.55'])
  })

  test('a circle of three is two swaps', () => {
    const job = told('begin shims out', 'off shims 1..3 into bench', 'size shims: 1 2.40, 2 2.50, 3 2.60')
    const { lines } = linesFor(job.state, '1 0.2, 2 0.2, 3 0.05 wanted 1 2 0.08..0.12 3 0.2..0.3')
    expect(lines).toEqual([
      'swap shims 1 2 because 2.50 gives 1 0.10 mm',
      'swap shims 2 3 because 2.60 gives 2 0.10 mm and 2.40 gives 3 0.25 mm',
    ])
    expect(sizesAt(carried(job, lines).state)).toEqual({ 1: 2.5, 2: 2.6, 3: 2.4 })
  })

  test('a home for which there is none is left short', () => {
    const job = told('begin shims out', 'off shims A1..A2 into bench', 'size shims: A1 2.40, A2 2.50')
    const { lines } = linesFor(job.state, 'A1 0.2, A2 0.2 wanted 0.08..0.12')
    expect(lines).toEqual(['swap shims A1 A2 because 2.50 gives A1 0.10 mm', 'spare p1'])
    const { state } = carried(job, lines)
    expect(state.ledger.accounts.get('p1')).toMatchObject({
      home: { position: 'A2' },
      at: new Map([['spare', 1]]),
    })
  })

  test('inches', () => {
    const job = told('begin shims out', 'off shim E1 0.100 in into bench', 'off shim E2 into bench')
    const line = 'E2 0.013 0.100 wanted 0.008..0.011 for sale 0.090..0.110 step 0.001 in inches'
    expect(linesFor(job.state, line).lines).toEqual([
      expect.stringMatching(/^new .* size 0\.103 in$/),
      expect.stringMatching(/^spare p/),
    ])
  })

  test('where a name means something else, pieces are named by their ids', () => {
    // `old` in front asks for what was replaced.
    const job = told('begin head off', 'off old shims I1..I2 into bench', 'size p1 2.40', 'size p2 2.50')
    const { lines } = linesFor(job.state, 'I1 0.2, I2 0.2 wanted 0.08..0.12 for sale 2.60')
    expect(lines).toEqual([
      'swap p1 and p2 because 2.50 gives I1 0.10 mm',
      'new p1 size 2.60',
      'spare p1 because another size takes its place',
    ])
    expect(sizesAt(carried(job, lines).state)).toEqual({ I1: 2.5, I2: 2.6 })
  })

  test('without shims in the record there are none', () => {
    const job = told('begin cover off')
    expect(linesFor(job.state, 'I1 0.2 2.40 wanted 0.08..0.12 bench 2.50')).toEqual({ lines: [], fitted: [] })
  })

  test('shims on the machine are named', () => {
    const job = told(...twin, 'begin head off free', 'end', 'take 1', 'fit shim E2', 'fit shim I1')
    expect(linesFor(job.state, `${found} for sale 2.30..3.00 step 0.025`).fitted).toEqual(['p6'])
  })

  test('are accepted as they stand, leave every valve the shim planned, and are not asked for again', () => {
    fc.assert(
      fc.property(anyEngine({ maxLength: 10 }), ({ valves, stock }) => {
        const sizes = valves.map(({ position, fitted }) => `${position} ${fitted}`).join(', ')
        const job = told(
          'begin buckets and shims out',
          valves.length > 1 ? `off shims V1..V${valves.length} into bench` : 'off shim V1 into bench',
          `size shims: ${sizes}`,
          'end',
        )
        const sum = sumOf(job.state, {
          valves: valves.map(({ position, clearance }) => ({ position, clearance, fitted: null })),
          wanted: valves.map(({ position, wanted }) => ({ of: position, ...wanted })),
          bench: [...stock.bench],
          forSale: [...stock.forSale],
          second: 'fewest-touched',
          unit: 'mm',
        })
        const plan = planShims(sum.valves, sum.stock, sum.second)
        const { lines } = shimLines(job.state, plan, sum)
        const after = carried(job, lines).state
        const found = sizesAt(after)
        for (const { position, size, fitted } of plan.valves) {
          const isGiven = plan.work.some(({ positions }) => positions.includes(position))
          if (size !== null || !isGiven) expect(found[position]).toBe(size ?? fitted)
          else expect(lyingAt(after, position)).toEqual(['spare'])
        }
        expect(shimLines(after, plan, sum).lines).toEqual([])
      }),
      { numRuns: 150 },
    )
  })
})

const twin = [
  'begin buckets and shims out',
  'tray 16 slots buckets and shims',
  'off shims I1..I4,E1..E4 into buckets and shims',
  'size shims: I1 2.45, I2 2.40, I3 2.45, I4 2.45, E1 2.50, E2 2.50, E3 2.50, E4 2.475',
  'end',
]
const found =
  'I1 0.14, I2 0.15, I3 0.15, I4 0.14, E1 0.26, E2 0.21, E3 0.31, E4 0.28 wanted I 0.13..0.17 E 0.22..0.28'

interface Job {
  state: State
  entries: Entry[]
}

function told(...lines: string[]): Job {
  return carried(given(), lines)
}

/** The job after some lines, each of which must be understood and accepted. */
function carried(job: Job, lines: readonly string[]): Job {
  let { state, entries } = { state: job.state, entries: job.entries }
  for (const line of lines) {
    const reading = readLine(line, state)
    if (reading.kind !== 'commands') throw new Error(`no commands: ${line}: ${JSON.stringify(reading)}`)
    ;({ state, entries } = record(reading.commands, entries))
  }
  return { state, entries }
}

function linesFor(state: State, text: string) {
  const said = readShims(text)
  if (!said.understood) throw new Error(`${said.code}: ${said.part}`)
  const sum = sumOf(state, said.value)
  return shimLines(state, planShims(sum.valves, sum.stock, sum.second), sum)
}

function sumOf(state: State, said: Parameters<typeof shimSum>[0]): ShimSum {
  const sum = shimSum(said, state)
  if ('lacks' in sum) throw new Error(`lacks ${sum.lacks}: ${sum.positions}`)
  return sum
}

/** The size of the shim that belongs at each valve. */
function sizesAt(state: State): Record<string, number | null> {
  const shims = shimsAtHome(state.ledger)
  const sizes = shimSizes(shims.map(({ piece }) => state.ledger.accounts.get(piece)?.piece.size))
  return Object.fromEntries(shims.map(({ position }, at) => [position, sizes[at] ?? null]))
}

function lyingAt(state: State, position: string): string[] {
  const piece = theOne(shimsAtHome(state.ledger), position)
  return piece === null ? [] : [...(state.ledger.accounts.get(piece)?.at.keys() ?? [])]
}
