import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import type { Entry } from '../../src/journal/entry.ts'
import { foldOn } from '../../src/journal/fold.ts'
import { emptyState, type State } from '../../src/journal/state.ts'
import { balance } from '../../src/ledger/ledger.ts'
import { belongsInToolbox } from '../../src/ledger/piece.ts'
import { asBuilt } from '../../src/record/as-built.ts'
import { nextStepHome } from '../model/way-home.ts'
import { STRIP_WHIMS, WHIMS, type Whim, wildCommand } from '../model/wild-commands.ts'
import { numbered, openJob } from '../support/record.ts'
import { entriesTold, factOf, partOf, recordOf, stepOf } from './support/record-of.ts'
import { sessionOf } from './support/session-of.ts'

const whims = (kinds: readonly Whim['kind'][], maxLength: number) =>
  fc.array(fc.record({ kind: fc.constantFrom(...kinds), a: fc.nat(63), b: fc.nat(63), c: fc.nat(63) }), {
    maxLength,
    size: 'max',
  })
const jobs = fc.record({
  strip: whims(STRIP_WHIMS, 12),
  first: fc.nat(40),
  wild: whims(WHIMS, 40),
  second: fc.nat(60),
})

test('of any job the record agrees with the ledger and with what stands', () => {
  const seen = { home: 0, turns: 0, overrides: 0, undone: 0 }
  fc.assert(
    fc.property(jobs, ({ strip, first, wild, second }) => {
      const job = new Job()
      job.give(openJob)
      for (const whim of strip) job.give(wildCommand(job.state, whim))
      job.bringHome(first)
      for (const whim of wild) job.give(wildCommand(job.state, whim))
      job.bringHome(second)
      hold(job, seen)
    }),
    { numRuns: 1000, seed: 20_300_101 },
  )
  // A workload that never gets anywhere would agree as well.
  expect(seen.home).toBeGreaterThan(800)
  expect(seen.turns).toBeGreaterThan(100)
  expect(seen.overrides).toBeGreaterThan(25)
  expect(seen.undone).toBeGreaterThan(50)
})

function hold(
  { state, entries }: Job,
  seen: Record<'home' | 'turns' | 'overrides' | 'undone', number>,
): void {
  const session = sessionOf(entries)
  const facts = asBuilt(session)
  const rows = recordOf(session)

  const accounts = [...state.ledger.accounts.values()].filter(({ piece }) => !belongsInToolbox(piece))
  for (const no of state.steps.keys()) {
    const own = accounts.filter(({ piece }) => piece.step === no)
    const home = own.reduce((sum, { piece }) => sum + balance(state.ledger, piece.id, 'machine'), 0)
    const told = partOf(stepOf(rows, no), 'on the machine').map(factOf)
    expect(told.reduce((sum, row) => sum + Number(/^(\d+) × /.exec(row)?.[1]), 0)).toBe(home)
    seen.home += home
  }
  for (const { tightenings, marks, fluids } of facts.steps) {
    for (const { tightening, history } of tightenings) {
      const turned = (history?.turns ?? []).map(({ pass, fastener }) => `${pass} ${fastener}`).sort()
      const grid = tightening.done.flatMap((done, pass) => [...done].map((name) => `${pass} ${name}`)).sort()
      expect(turned).toEqual(grid)
      seen.turns += turned.length
    }
    for (const { mark, confirmed } of marks) expect(confirmed !== null).toBe(mark.confirmed)
    for (const { fluid, filled } of fluids) expect(filled !== null).toBe(fluid.filledLitres !== null)
  }
  const standing = facts.overrides.filter(({ ended }) => ended === null).map(({ entry }) => entry.target)
  expect([...new Set(standing)].sort()).toEqual([...state.overrides.keys()].sort())
  seen.overrides += facts.overrides.length

  const told = entriesTold(rows)
  const inForce = new Set(state.inForce)
  const undone = entries.filter(({ n, type }) => !inForce.has(n) && type !== 'labels-dealt')
  expect(undone.filter(({ n }) => told.has(n))).toEqual([])
  seen.undone += undone.length
  for (const row of recordOf(session, 100)) {
    if (row.length > 100 || /undefined|null|NaN|\[object|\p{C}/u.test(row)) throw new Error(row)
  }
}

class Job {
  state: State = emptyState()
  readonly entries: Entry[] = []

  give(command: Command): boolean {
    const decision = decide(this.state, command)
    if (!decision.ok) return false
    const entry = numbered(decision.body, this.state.seq + 1)
    this.entries.push(entry)
    this.state = foldOn(this.state, this.entries, [entry])
    return true
  }

  bringHome(patience: number): void {
    for (let step = 0; step < patience; step += 1) {
      const command = nextStepHome(this.state)
      if (!command || !this.give(command)) return
    }
  }
}
