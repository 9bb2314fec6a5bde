import type { Result } from '../../../src/cli/result.ts'
import type { Act, Doing } from '../job/act.ts'
import { lastRound } from '../job/build-acts.ts'
import { Known } from '../job/known.ts'
import { rebuildActs } from '../job/rebuild-acts.ts'
import type { Machine } from '../machines/machine.ts'
import type { Defect, Fate, Going, Where } from '../mistakes/mistake.ts'
import { refusedOr } from '../mistakes/refused-or.ts'
import { isAskedFor } from './asked-for.ts'
import { Bench } from './bench.ts'
import { idsIn, namedIn, reasonsNaming } from './ids-named.ts'
import { tipOut } from './last-round.ts'
import { goOn } from './taking-up.ts'

/** A refusal, or a hold, that no mistake explains. */
export interface FalseBlock {
  line: string
  code: string
  what: string
}

/**
 * Somebody at work in one job: does what the acts say, and when refused looks for the mistake that the refusal names. He notices
 * nothing by himself: a mistake is found by a refusal, or where the tool makes him look at just that.
 */
export class Mechanic {
  readonly machine: Machine
  readonly bench: Bench
  readonly known = new Known()
  readonly fates: Fate[] = []
  readonly falseBlocks: FalseBlock[] = []
  #open: Defect[] = []
  readonly #asked = new Map<Defect, string>()
  readonly #silent: ((act: Act) => boolean)[] = []
  /** Steps that went back whole out of their turn, when they were taken apart for a mistake. */
  readonly #whole = new Set<number>()
  /** Put right by what does not outlive its step. */
  readonly #voided: Defect[] = []
  #hands = 'Anna'
  #isOnRound = false

  constructor(machine: Machine) {
    this.machine = machine
    this.bench = new Bench(machine.shape)
  }

  /** A mistake is made. It stays until it is found. */
  make(defect: Defect): void {
    this.#open.push(defect)
  }

  /** Such acts are done and never said, from now on. */
  keepSilent(about: (act: Act) => boolean): void {
    this.#silent.push(about)
  }

  /** Whether an act was done already, because its step was put together anew meanwhile. */
  isDone(act: Act): boolean {
    return this.#whole.has(act.step) && ON_THE_WAY_BACK.has(act.doing) && !isTool(act)
  }

  /** Does an act, and says so, until it is taken. Answers false where it could not be, which is a false block. */
  perform(act: Act): boolean {
    if (act.isNeedless?.(this.known) || this.#silent.some((isSilent) => isSilent(act))) return true
    if (!isAskedFor(this.bench.session, act.doing, act.say(this.known))) return true
    if (act.doing === 'round') this.#goRound(act)
    this.#changeHands(act)
    if (this.#look(act)) return true
    for (let turn = 0; turn < MOST_TURNS; turn += 1) {
      const line = act.say(this.known)
      const result = this.bench.say(line)
      if (result.ok) {
        this.known.learn(act, result.entries ?? [])
        if (act.doing === 'ask' && !act.thing) this.known.hear(result.answer)
        this.#hear(result)
        this.#judgeScan(act, line, result)
        return true
      }
      const found = this.#mend(act, line, result)
      if (found.length === 0) return false
      if (this.isDone(act) || found.some(({ settles }) => settles?.(act))) return true
    }
    this.#block(act.say(this.known), 'no-end', 'refused again and again')
    return false
  }

  /** Says a line that is wrong, in place of an act. */
  sayWrong(line: string, act: Act): Result {
    this.#changeHands(act)
    const result = this.bench.say(line)
    if (result.ok) this.known.learn(act, result.entries ?? [])
    return result
  }

  /** Leaves off in the middle, with a note or without a word. After two months somebody else takes it up. */
  breakOff(note: string | null): void {
    if (note !== null) this.bench.say(`stop ${note}`)
    this.bench.wait(60 * 24 * 60)
    this.#hands = this.#hands === 'Anna' ? 'Clara' : 'Anna'
    this.bench.takeUp(this.#hands)
  }

  /** Does what the program names as next, until it names this act. Answers whether that one was done before. */
  takeUp(act: Act, wasTurned: boolean): boolean {
    return goOn(this.bench, this.known, act, wasTurned)
  }

  /** The first start is cleared: what is still there was asked about, or seen by nobody. */
  end(): void {
    for (const defect of this.#open.splice(0)) {
      const { mistake, going } = defect
      const asked = this.#asked.get(defect)
      const subjects = defect.subjects(this.known).join(', ')
      const what = asked ?? (subjects === '' ? 'the record has nothing of it' : subjects)
      this.fates.push({ mistake, going, came: asked === undefined ? 'unseen' : 'asked', what })
    }
  }

  /** It is found by what the tool makes one do, as a round or a second look. */
  find(defect: Defect, where: Where, refusal: string): void {
    this.#open = this.#open.filter((each) => each !== defect)
    if (defect.isVoided) this.#voided.push(defect)
    this.fates.push({ mistake: defect.mistake, going: defect.going, came: 'stopped', where, refusal })
  }

  /** The mistakes that are still there. */
  open(): readonly Defect[] {
    return this.#open
  }

  #goRound(round: Act): void {
    this.#isOnRound = true
    tipOut(this, round)
    this.#isOnRound = false
  }

  /** A question that holds up nothing, about something that is not as it should be. */
  #hear({ heeds = [] }: Result & { ok: true }): void {
    for (const heed of heeds)
      for (const defect of this.#about(idsIn(heed)))
        if (defect.askedBy?.includes(heed.heed)) this.#asked.set(defect, `asked: ${heed.heed}`)
  }

  /** A bag that is right, of which the scan says that it does not go on now, is held up though no line is refused. */
  #judgeScan({ doing }: Act, line: string, result: Result): void {
    const no = doing === 'scan' ? refusedOr(result, notNow) : null
    // After a mistake what came off again lies where it was put.
    const isClean = this.#open.length === 0 && this.fates.length === 0
    if (no !== null && isClean) this.#block(line, no, 'the right bag is said not to go on now')
  }

  #about(named: ReadonlySet<string>): Defect[] {
    return this.#open.filter((defect) => defect.subjects(this.known).some((id) => named.has(id)))
  }

  /** What the act puts before one's eyes. Answers whether the act itself was done in putting that right. */
  #look(act: Act): boolean {
    const seen = this.#open.filter((defect) => defect.shows?.(act))
    for (const defect of seen) this.find(defect, WHERE[act.doing] ?? 'next line', 'seen')
    if (seen.length === 0 || act.doing !== 'see again') return false
    this.takeApart(act.step, 'it is not as it should be')
    return true
  }

  /** Puts right what a refusal names, and answers that: nothing where none of it is a mistake. */
  #mend(act: Act, line: string, result: Extract<Result, { ok: false }>): Defect[] {
    const named = namedIn(result)
    const found = this.#about(named).filter(({ going }) => !IS_WHOLE.has(going))
    if (found.length === 0) {
      const again = this.#voided.filter((each) => each.subjects(this.known).some((id) => named.has(id)))
      for (const { cure } of again) for (const each of cure) this.#redo(each)
      if (again.length > 0) return again
      this.#block(line, result.code, [result.told.what, ...result.told.lines].join(' | '))
      return []
    }
    // What was left out first is put right first.
    for (const defect of found)
      this.find(defect, WHERE[act.doing] ?? 'next line', reasonsNaming(result, defect.subjects(this.known)))
    for (const defect of found) for (const each of defect.cure) this.#redo(each)
    return found
  }

  /** What should have been done before; where its step is closed by now, that is taken apart again first. */
  #redo(act: Act): void {
    if (this.isDone(act)) return
    const isClosed = this.bench.session.state.steps.get(act.step)?.built === 'done'
    if (isClosed && IN_STEP.has(act.doing) && !isTool(act)) this.takeApart(act.step, 'something was left out')
    // Where work broke off meanwhile, a pass starts again before it comes to this bolt; which pass it is the record says.
    else if (!this.takeUp({ ...act, pass: undefined }, false)) this.perform(act)
  }

  /** A closed step comes apart, with all on top of it, and goes back whole. */
  takeApart(no: number, reason: string): void {
    const closed = this.#closedSteps()
    const result = this.bench.say(`reopen ${no} because ${reason}`)
    if (!result.ok) {
      this.#block(`reopen ${no}`, result.code, result.told.what)
      return
    }
    const steps = (result.entries ?? []).flatMap((entry) => (entry.type === 'reopened' ? entry.steps : []))
    this.#putRightByChance(steps, closed)
    for (const step of steps) this.#whole.delete(step)
    for (const each of rebuildActs(this.machine, steps, this.known, this.bench.session.state))
      if (!this.isDone(each) && !this.perform(each)) return
    for (const step of steps) this.#whole.add(step)
    const round = lastRound(this.machine)
    if (steps.includes(round.step) && !this.#isOnRound) this.perform(round)
  }

  /**
   * Mistakes in steps that went apart for another one, and go back whole. They count neither as stopped nor as passed, for nothing
   * found them; but of what was left out and not said to be done, the gate that its step was closed by has failed.
   */
  #putRightByChance(steps: readonly number[], closed: ReadonlySet<number>): void {
    const isPutRight = ({ going, step, cure }: Defect) =>
      going !== 'never written' &&
      steps.includes(step) &&
      cure.every((each) => ON_THE_WAY_BACK.has(each.doing) && !isTool(each))
    for (const { mistake, going, step } of this.#open.filter(isPutRight)) {
      const isPassed = going === 'left out' && closed.has(step)
      const what = isPassed ? `step ${step} was closed over it` : `step ${step} went apart for another one`
      this.fates.push({ mistake, going, came: isPassed ? 'unseen' : 'by chance', what })
    }
    this.#open = this.#open.filter((defect) => !isPutRight(defect))
  }

  #closedSteps(): ReadonlySet<number> {
    const all = [...this.bench.session.state.steps.values()]
    return new Set(all.filter(({ built }) => built === 'done').map(({ no }) => no))
  }

  #block(line: string, code: string, what: string): void {
    this.falseBlocks.push({ line, code, what })
  }

  /** Who looks a second time is somebody else. */
  #changeHands({ doing }: Act): void {
    const hands = doing === 'see again' ? 'Boris' : this.#hands
    if (this.bench.by !== hands) this.bench.reopen(hands)
  }
}

const MOST_TURNS = 30

function notNow({ kind, verdict }: { kind: string; verdict: string }): string | null {
  return verdict === 'fits-now' ? null : verdict || kind
}

/** Of these the record is whole, or has nothing: a refusal that names such a piece or step does so for something else. */
const IS_WHOLE: ReadonlySet<Going> = new Set(['ticked', 'never written'])

/** Where a mistake is stopped that the refusal of such an act names, or that it puts before one's eyes. */
const WHERE: Partial<Record<Doing, Where>> = {
  // A mark is confirmed because its step does not close without it.
  confirm: 'step closed',
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

const ON_THE_WAY_BACK: ReadonlySet<Doing> = new Set([
  ...IN_STEP,
  'scan',
  'look',
  'take',
  'done',
  'see again',
  'extra',
])

/** A tool is put back when all is done, whatever becomes of the step in which it was taken. */
function isTool({ thing }: Act): boolean {
  return thing?.kind === 'aid' && thing.where === null
}
