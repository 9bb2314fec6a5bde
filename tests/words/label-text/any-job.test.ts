import fc from 'fast-check'
import { expect, test } from 'vitest'
import { decide } from '../../../src/journal/decide/decide.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import { foldOn } from '../../../src/journal/fold.ts'
import { emptyState, type State } from '../../../src/journal/state.ts'
import { labelCode } from '../../../src/label/code.ts'
import { Gates } from '../../../src/plan/gates.ts'
import { paperPlan, standingOf } from '../../../src/session/label-facts.ts'
import type { Session } from '../../../src/session/session.ts'
import { containerLabel } from '../../../src/words/label-text/container-label.ts'
import { endsOfConnection, flagLabels } from '../../../src/words/label-text/flag-labels.ts'
import { machineTag } from '../../../src/words/label-text/machine-tag.ts'
import { markerText } from '../../../src/words/label-text/marker-text.ts'
import { planText } from '../../../src/words/label-text/plan-text.ts'
import { nextStepHome } from '../../model/way-home.ts'
import { WHIMS, type Whim, wildCommand } from '../../model/wild-commands.ts'
import { numbered, openJob } from '../../support/record.ts'

const number = fc.nat(63)
const whim: fc.Arbitrary<Whim> = fc.record({
  kind: fc.constantFrom(...WHIMS),
  a: number,
  b: number,
  c: number,
})

test('whatever a job comes to, its labels and its plan say it whole, and count every piece in every container', () => {
  let labels = 0
  fc.assert(
    fc.property(fc.array(whim, { maxLength: 40, size: 'max' }), fc.nat(20), (whims, patience) => {
      const job = new Job()
      job.give(openJob)
      for (const each of whims) job.give(wildCommand(job.state, each))
      for (let step = 0; step < patience; step += 1) {
        const command = nextStepHome(job.state)
        if (!command) break
        job.give(command)
      }
      labels += checkPapers(job)
    }),
    { numRuns: 1200, seed: 20261125 },
  )
  expect(labels).toBeGreaterThan(300)
})

class Job {
  state: State = emptyState()
  readonly entries: Entry[] = []

  give(command: Parameters<typeof decide>[1]): void {
    const decision = decide(this.state, command)
    if (!decision.ok) return
    const entry = numbered(decision.body, this.state.seq + 1)
    this.entries.push(entry)
    this.state = foldOn(this.state, this.entries, [entry])
  }

  /** As much of a session as paper asks for. */
  session(): Session {
    const gates = new Gates(this.state)
    const { state, entries } = this
    return { state, stateNow: () => state, gates: () => gates, entries: () => entries } as unknown as Session
  }
}

function checkPapers(job: Job): number {
  const { state } = job
  const session = job.session()
  const code = (no: number) => labelCode(7, no)
  for (const no of state.containers.keys()) {
    const label = containerLabel(state, no, '25 Nov 2026', code(no))
    const marker = markerText(state, no, code(no))
    checkTexts(label)
    checkTexts(marker)
    expect(marker.length).toBeGreaterThanOrEqual(2)
    expect(marker.length).toBeLessThanOrEqual(4)
    expect(countOn(label.what)).toBe(countIn(state, no))
  }
  for (const id of state.ledger.accounts.keys()) {
    checkTexts(flagLabels(state, endsOfConnection(state, id), code(9000)))
  }
  checkTexts(machineTag(state, standingOf(session), '25 Nov 2026', code(9000)))
  checkTexts(planText(state, paperPlan(session), '25 Nov 2026', code))
  return state.containers.size
}

/** The counts before the signs; a hose is one, and so many ends. */
function countOn(what: readonly string[]): number {
  return what.reduce((sum, text) => {
    const count = Number(/(\d+) ×/.exec(text)?.[1] ?? 0)
    const ends = /, ends at (.+?)(?: →|$)/.exec(text)?.[1]
    return sum + (ends === undefined ? count : ends.split(/, | and /).length)
  }, 0)
}

function countIn(state: State, container: number): number {
  let sum = 0
  for (const { at } of state.ledger.accounts.values()) {
    for (const [place, count] of at)
      if (place === `c${container}` || place.startsWith(`c${container}/`)) sum += count
  }
  return sum
}

function checkTexts(value: unknown): void {
  if (typeof value === 'string') {
    if (/undefined|null|NaN|\[object|\p{C}| {2}|^ | $/u.test(value)) throw new Error(value)
  } else if (typeof value === 'object' && value !== null) Object.values(value).forEach(checkTexts)
}
