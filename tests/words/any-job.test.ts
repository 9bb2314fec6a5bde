import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import type { Entry } from '../../src/journal/entry.ts'
import { foldOn } from '../../src/journal/fold.ts'
import type { Refusal } from '../../src/journal/refusal.ts'
import { emptyState, type State } from '../../src/journal/state.ts'
import { Gates } from '../../src/plan/gates.ts'
import { leftovers } from '../../src/plan/leftovers.ts'
import { entryText } from '../../src/words/entries.ts'
import { leftoverText } from '../../src/words/leftovers.ts'
import { reasonText } from '../../src/words/reasons.ts'
import { leftoverLines } from '../../src/words/told-leftovers.ts'
import { job } from '../errors/commands.ts'
import { codeOf, says } from '../errors/play.ts'
import { quoted, readTyped } from '../errors/typed.ts'
import { nextStepHome } from '../model/way-home.ts'
import { WHIMS, type Whim, wildCommand } from '../model/wild-commands.ts'

const number = fc.nat(63)
const whim: fc.Arbitrary<Whim> = fc.record({
  kind: fc.constantFrom(...WHIMS),
  a: number,
  b: number,
  c: number,
})
const work = fc.tuple(fc.array(whim, { maxLength: 40, size: 'max' }), fc.nat(20))

test('whatever a job comes to is told whole, and what is told to type is understood', () => {
  let told = 0
  fc.assert(
    fc.property(work, ([whims, patience]) => {
      const telling = new Telling()
      telling.give(job)
      for (const each of whims) telling.give(wildCommand(telling.state, each))
      telling.tellPlan()
      for (let step = 0; step < patience; step += 1) {
        const command = nextStepHome(telling.state)
        if (!command) break
        telling.give(command)
      }
      telling.tellPlan()
      told += telling.told
    }),
    { numRuns: 300, seed: 20260502 },
  )
  expect(told).toBeGreaterThan(10_000)
})

/** Whether what a line waits for has a line of its own: also a ring on the piece that is to go home, used or left off. */
function isToldElsewhere(words: string, refusal: Refusal): boolean {
  if (refusal.code === 'piece-used' || refusal.code === 'not-for-home')
    return !words.split(' ').includes(refusal.piece)
  // A joint that is not sealed yet holds up the filling: what is to be put on has a line of its own.
  return ['step-blocked', 'not-clear', 'not-to-be-filled', 'job-closed'].includes(refusal.code)
}

/** A job that tells everything it can at every turn. */
class Telling {
  state: State = emptyState()
  told = 0
  readonly entries: Entry[] = []

  give(command: Command): void {
    const decision = decide(this.state, command)
    if (!decision.ok) {
      this.tell(says(this.state, decision.refusal))
      return
    }
    const n = this.state.seq + 1
    const entry: Entry = { v: 1, n, at: '2026-05-02T08:00:00.000Z', id: `e${n}`, ...decision.body }
    this.entries.push(entry)
    this.state = foldOn(this.state, this.entries, [entry])
    this.tell([entryText(this.state, entry)])
  }

  tellPlan(): void {
    const { state } = this
    const gates = new Gates(state)
    for (const no of state.steps.keys()) {
      const { built } = state.steps.get(no) ?? {}
      const asked = built === 'done' ? [] : built === 'underway' ? gates.finish(no) : gates.start(no)
      const reasons = asked.map((reason) => reasonText(state, reason))
      this.tell(reasons)
      for (const line of reasons) this.tryFirst(line)
      this.tell(gates.look(no).map((reason) => reasonText(state, reason)))
    }
    const found = leftovers(gates)
    this.tell(leftoverLines(state, found, codeOf(state)))
    const cures = found.map((leftover) => leftoverText(state, leftover, codeOf(state)).cure)
    this.tell(cures)
    for (const line of cures) this.tryFirst(line)
    for (const entry of this.entries) this.tell([entryText(state, entry)])
  }

  /** What is first to type is accepted, or waits for what is told elsewhere. */
  tryFirst(line: string): void {
    const [first = ''] = quoted([line])
    if (first === '' || first.includes('PLACE') || first.includes('PIECE')) return
    const reading = readTyped(first, this.state)
    const commands = reading.kind === 'commands' ? reading.commands : []
    for (const command of commands) {
      // A second look is somebody else's.
      const decision = decide(this.state, command, { ...this.state.clock, by: 'somebody else' })
      if (!decision.ok && !isToldElsewhere(first, decision.refusal)) {
        throw new Error(`${line}: ${decision.refusal.code}`)
      }
    }
  }

  tell(lines: string[]): void {
    this.told += lines.length
    for (const line of lines) {
      if (/undefined|null|NaN|\[object|\p{C}/u.test(line) || line.trim().length < 4) throw new Error(line)
    }
    for (const words of quoted(lines)) {
      const reading = readTyped(words, this.state)
      // A gap for a piece is filled with one that may not be there.
      if (reading.kind === 'misread' && !words.includes('PIECE')) throw new Error(`not understood: ${words}`)
    }
  }
}
