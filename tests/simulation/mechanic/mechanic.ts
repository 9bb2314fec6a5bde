import type { Result } from '../../../src/cli/result.ts'
import type { Act, Doing } from '../job/act.ts'
import { Known } from '../job/known.ts'
import { rebuildActs } from '../job/rebuild-acts.ts'
import type { Machine } from '../machines/machine.ts'
import type { Defect, Fate, Where } from '../mistakes/mistake.ts'
import { Bench } from './bench.ts'
import { namedIn } from './named.ts'

/** A refusal, or a hold, that no mistake explains. */
export interface FalseBlock {
  line: string
  code: string
  what: string
}

/** Somebody at work in one job: does what the acts say, and when refused looks for the mistake that the refusal names. */
export class Mechanic {
  readonly machine: Machine
  readonly bench: Bench
  readonly known = new Known()
  readonly fates: Fate[] = []
  readonly falseBlocks: FalseBlock[] = []
  readonly #open: Defect[] = []
  readonly #asked = new Set<Defect>()
  #acts = 0

  constructor(machine: Machine) {
    this.machine = machine
    this.bench = new Bench(machine.shape)
  }

  get acts(): number {
    return this.#acts
  }

  /** A mistake is made. It stays until it is found. */
  make(defect: Defect): void {
    this.#open.push(defect)
  }

  /** Does an act, and says so, until it is taken. Answers false where it could not be, which is a false block. */
  perform(act: Act): boolean {
    this.#acts += 1
    this.#changeHands(act)
    for (let turn = 0; turn < MOST_TURNS; turn += 1) {
      const line = act.say(this.known)
      const result = this.bench.say(line)
      if (result.ok) {
        this.known.learn(act, result.entries ?? [])
        this.#hear(result)
        return true
      }
      if (!this.#mend(act, line, result)) return false
    }
    this.falseBlocks.push({ line: act.say(this.known), code: 'no-end', what: 'refused again and again' })
    return false
  }

  /** Says a line that is wrong. Answers the refusal, or null where it was taken. */
  sayWrong(line: string): string | null {
    const result = this.bench.say(line)
    return result.ok ? null : result.code
  }

  /** The first start is cleared: what is still there was asked about, or seen by nobody. */
  end(): void {
    for (const defect of this.#open.splice(0)) {
      const { mistake, going } = defect
      this.fates.push({ mistake, going, came: this.#asked.has(defect) ? 'asked' : 'unseen' })
    }
  }

  /** It is found by what the tool makes one do, as a round or a second look. */
  find(defect: Defect, where: Where, refusal: string): void {
    this.#open.splice(this.#open.indexOf(defect), 1)
    this.fates.push({ mistake: defect.mistake, going: defect.going, came: 'stopped', where, refusal })
  }

  /** The mistakes that are still there. */
  open(): readonly Defect[] {
    return this.#open
  }

  #hear(result: Result): void {
    const named = namedIn(result)
    if (named.size === 0) return
    for (const defect of this.#about(named)) this.#asked.add(defect)
  }

  #about(named: ReadonlySet<string>): Defect[] {
    return this.#open.filter((defect) => defect.subjects(this.known).some((id) => named.has(id)))
  }

  /** Puts right what a refusal names. Answers false where none of it is a mistake. */
  #mend(act: Act, line: string, result: Extract<Result, { ok: false }>): boolean {
    const found = this.#about(namedIn(result))
    if (found.length === 0) {
      this.falseBlocks.push({
        line,
        code: result.code,
        what: [result.told.what, ...result.told.lines].join(' | '),
      })
      return false
    }
    // What was left out first is put right first.
    for (const defect of found) this.find(defect, WHERE[act.doing] ?? 'at once', result.code)
    for (const defect of found) for (const each of defect.cure) this.#redo(each)
    return true
  }

  /** What should have been done before; where its step is closed by now, that is taken apart again first. */
  #redo(act: Act): void {
    const { state } = this.bench.session
    const step = state.steps.get(act.step)
    if (step?.built === 'done' && IN_STEP.has(act.doing)) {
      const result = this.bench.say(`reopen ${act.step} because something was left out`)
      if (!result.ok) {
        this.falseBlocks.push({ line: `reopen ${act.step}`, code: result.code, what: result.told.what })
        return
      }
      const steps = (result.entries ?? []).flatMap((entry) => (entry.type === 'reopened' ? entry.steps : []))
      for (const each of rebuildActs(this.machine, steps, this.known, this.bench.session.state))
        this.perform(each)
      return
    }
    this.perform(act)
  }

  /** Who looks a second time is somebody else. */
  #changeHands({ doing }: Act): void {
    const hands = doing === 'see again' ? 'Boris' : 'Anna'
    if (this.bench.by !== hands) this.bench.reopen(hands)
  }
}

const MOST_TURNS = 30

/** Where a mistake is stopped that the refusal of such an act names. */
const WHERE: Partial<Record<Doing, Where>> = {
  done: 'step closed',
  extra: 'next step',
  take: 'next step',
  look: 'last look',
  'see again': 'second look',
  round: 'last round',
  clear: 'last gate',
}

const IN_STEP: ReadonlySet<Doing> = new Set([
  'put on',
  'fit',
  'confirm',
  'turn',
  'set passes',
  'take out',
  'fill',
])
