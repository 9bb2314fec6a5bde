import fc from 'fast-check'
import type { Command } from '../../../src/journal/command.ts'
import { decide } from '../../../src/journal/decide/decide.ts'
import type { Entry } from '../../../src/journal/entry.ts'
import { fold, foldOn } from '../../../src/journal/fold.ts'
import { emptyState, type State } from '../../../src/journal/state.ts'
import { nextStepHome } from '../../model/way-home.ts'
import { STRIP_WHIMS, WHIMS, type Whim, wildCommand } from '../../model/wild-commands.ts'
import { numbered, openJob } from '../../support/record.ts'

/** A job that is written on by one hand: wild work, then a patient hand that brings it home for a while. */
export interface Stretch {
  wild: Whim[]
  patience: number
}

/** A job until it was copied, and what was written down in each of the two copies after that. */
export interface PartedJob {
  both: Stretch
  ours: Stretch
  theirs: Stretch
}

const whims = (kinds: readonly Whim['kind'][], maxLength: number) =>
  fc.array(fc.record({ kind: fc.constantFrom(...kinds), a: fc.nat(63), b: fc.nat(63), c: fc.nat(63) }), {
    maxLength,
    size: 'max',
  })

const way = fc.record({ wild: whims(WHIMS, 14), patience: fc.nat(12) })

/** Random jobs that went two ways. */
export const partedJobs: fc.Arbitrary<PartedJob> = fc.record({
  both: fc
    .tuple(whims(STRIP_WHIMS, 10), whims(WHIMS, 12), fc.nat(25))
    .map(([strip, wild, patience]) => ({ wild: [...strip, ...wild], patience })),
  ours: way,
  theirs: way,
})

/** The journals of both copies. */
export function journalsOf({ both, ours, theirs }: PartedJob): {
  both: Entry[]
  ours: Entry[]
  theirs: Entry[]
} {
  const common = writeOn([], both, 'c', [openJob])
  return { both: common, ours: writeOn(common, ours, 'a'), theirs: writeOn(common, theirs, 'b') }
}

/** A journal with more behind it; `by` makes the ids of what is written. */
function writeOn(
  before: readonly Entry[],
  { wild, patience }: Stretch,
  by: string,
  commands: readonly Command[] = [],
): Entry[] {
  const pen = new Pen(before, by)
  for (const command of commands) pen.give(command)
  for (const whim of wild) pen.give(wildCommand(pen.state, whim))
  for (let step = 0; step < patience; step += 1) {
    const command = nextStepHome(pen.state)
    if (!command || !pen.give(command)) break
  }
  return pen.entries
}

/** Writes a journal on, command by command, with ids of its own. */
export class Pen {
  readonly entries: Entry[]
  state: State
  readonly #by: string

  constructor(before: readonly Entry[], by: string) {
    this.entries = [...before]
    this.state = before.length > 0 ? fold(before) : emptyState()
    this.#by = by
  }

  /** Answers whether it was carried out. */
  give(command: Command): boolean {
    const decision = decide(this.state, command)
    if (!decision.ok) return false
    const n = this.state.seq + 1
    const entry = JSON.parse(
      JSON.stringify({ ...numbered(decision.body, n), id: `${this.#by}${n}` }),
    ) as Entry
    this.entries.push(entry)
    this.state = foldOn(this.state, this.entries, [entry])
    return true
  }
}
