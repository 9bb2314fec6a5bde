import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import { type Entry, parseEntry } from '../../src/journal/entry.ts'
import { foldOn } from '../../src/journal/fold.ts'
import { emptyState, type State } from '../../src/journal/state.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import { Gates } from '../../src/plan/gates.ts'
import { begin, end, gasket, off, set } from '../errors/commands.ts'
import { asked, judged, listed, together } from '../errors/judging-commands.ts'
import { numbered, openJob } from '../support/record.ts'
import { InspectionSheet } from './inspection-sheet.ts'
import { nextStepHome } from './way-home.ts'
import { type Whim, wildCommand } from './wild-commands.ts'

// Whatever the order in which pieces are judged, checked, sent out, replaced, compared, returned and fitted: the laws of
// the ledger hold, and no piece goes home, and no step is closed, while anything stands against a piece of it.

const strip: Command[] = [
  openJob,
  begin('Cover off'),
  off(6, 'cover bolts', { size: 'M6x25' }),
  gasket,
  begin('Caps off'),
  set('cam caps', ['I1', 'I2', 'I3']),
  off(1, 'oil pump', { kind: 'part' }),
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  off(4, 'pump studs'),
  end,
  together('bored as one', 'p8', 'p3', 'p4'),
  listed(
    'metal in the oil',
    { do: 'replace', piece: 'p6' },
    { do: 'check', piece: 'p5', kind: 'look', what: ['score'] },
  ),
  asked('p7', 'measure', 'flatness'),
  judged('clean', 'varnish', 'p4'),
]

const KINDS: Whim['kind'][] = [
  'ask-checks',
  'pass-checks',
  'pass-checks',
  'drop-check',
  'judge',
  'judge',
  'bind',
  'compare',
  'compare',
  'find',
  'measure',
  'send-out',
  'come-back',
  'supply',
  'supply',
  'line-orders',
  'receive',
  'return-order',
  'move',
  'move-over',
  'use-again',
  'leave-off',
  'rehome',
  'begin-build',
  'fit',
  'fit',
  'look',
  'close-step',
  'close-step',
  'override',
  'reopen',
  'fail',
  'undo',
  'redo',
]

const whims = fc.array(
  fc.record({ kind: fc.constantFrom(...KINDS), a: fc.nat(63), b: fc.nat(63), c: fc.nat(63) }),
  { minLength: 4, maxLength: 30, size: 'max' },
)
const jobs = fc.array(fc.record({ wild: whims, patience: fc.nat(40) }), {
  minLength: 1,
  maxLength: 3,
  size: 'max',
})

interface Tally {
  fitted: number
  closed: number
  heldBack: number
  notAccepted: number
}

class Bench {
  state: State = emptyState()
  readonly entries: Entry[] = []
  readonly #tally: Tally

  constructor(tally: Tally) {
    this.#tally = tally
  }

  /** Answers whether it was carried out; holds everything that must hold after it. */
  give(command: Command): boolean {
    const before = this.state
    const decision = decide(before, command)
    if (!decision.ok) {
      const { refusal } = decision
      if (refusal.code === 'not-accepted') this.#tally.notAccepted += 1
      if (refusal.code === 'step-blocked' && refusal.reasons.some(isAgainstAPiece)) this.#tally.heldBack += 1
      return false
    }
    const written = numbered(decision.body, before.seq + 1)
    const entry = parseEntry(JSON.parse(JSON.stringify(written)))
    const sheet = new InspectionSheet(this.entries)
    this.entries.push(entry)
    if (entry.type === 'fitted') {
      this.#tally.fitted += 1
      for (const { piece } of entry.moves.filter(({ to }) => to === 'machine'))
        expect([piece, sheet.against(piece)]).toEqual([piece, []])
    }
    if (entry.type === 'build-done') {
      this.#tally.closed += 1
      const { pieces } = new Gates(before).contentsOf(entry.step)
      for (const { piece } of pieces) expect([piece.id, sheet.against(piece.id)]).toEqual([piece.id, []])
    }
    this.state = foldOn(before, this.entries, [entry])
    expect(auditLedger(this.state.ledger)).toEqual([])
    return true
  }
}

function isAgainstAPiece({ code }: { code: string }): boolean {
  return ['check-due', 'piece-judged', 'compare-due', 'compare-wrong'].includes(code)
}

test('nothing goes home and no step is closed while a piece of it is not accepted', () => {
  const tally: Tally = { fitted: 0, closed: 0, heldBack: 0, notAccepted: 0 }
  fc.assert(
    fc.property(jobs, (stretches) => {
      const bench = new Bench(tally)
      for (const command of strip) expect(bench.give(command)).toBe(true)
      for (const { wild, patience } of stretches) {
        for (const whim of wild) bench.give(wildCommand(bench.state, whim))
        for (let step = 0; step < patience; step += 1) {
          const command = nextStepHome(bench.state)
          if (!command || !bench.give(command)) break
        }
      }
    }),
    { numRuns: 150, seed: 730_411 },
  )
  // A workload that never gets anywhere would hold it as well.
  expect(tally.fitted).toBeGreaterThan(80)
  expect(tally.closed).toBeGreaterThan(40)
  expect(tally.heldBack).toBeGreaterThan(200)
  expect(tally.notAccepted).toBeGreaterThan(20)
}, 60_000)
