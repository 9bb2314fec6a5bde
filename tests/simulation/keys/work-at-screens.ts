import type { Reading } from '../../../src/lines/reading.ts'
import { toTip } from '../../../src/session/last-round.ts'
import { proposedSteps } from '../../../src/session/proposed-steps.ts'
import type { Act, Doing } from '../job/act.ts'
import { Known } from '../job/known.ts'
import type { Machine, Thing } from '../machines/machine.ts'
import { screenActs } from './screen-acts.ts'
import { type Done, Typist } from './typist.ts'

export type Phase = 'strip-down' | 'waiting' | 'build-up' | 'last gate'

/** One thing done, and what it was for. */
export interface Deed extends Done {
  doing: Doing
  phase: Phase
  thing: Thing | undefined
}

/** A whole job without a mistake at the screens. Stops where something was not taken: then the last deed says so. */
export class WorkAtScreens {
  readonly typist: Typist
  readonly known = new Known()
  readonly deeds: Deed[] = []
  readonly #machine: Machine
  #phase: Phase = 'strip-down'

  constructor(machine: Machine) {
    this.#machine = machine
    this.typist = new Typist(machine)
  }

  /** Answers whether all of it was taken. */
  run(): boolean {
    const { strip, wait, build, end } = screenActs(this.#machine)
    return (
      this.#inOrder('strip-down', strip) &&
      this.#inOrder('waiting', wait) &&
      this.#build(build) &&
      this.#inOrder('last gate', end)
    )
  }

  #inOrder(phase: Phase, acts: readonly Act[]): boolean {
    this.#phase = phase
    return acts.every((act) => this.#do(act))
  }

  /** Steps in the order in which the screens have them next. */
  #build(steps: readonly Act[][]): boolean {
    this.#phase = 'build-up'
    const open = [...steps]
    const read = new Map<string, Reading>()
    while (open.length > 0) {
      const ready = open.filter((acts) => this.#mayBegin(acts))
      const next = ready.map(([first]) => first as Act)
      const step = ready[this.#nearest(next, read)] ?? (open[0] as Act[])
      open.splice(open.indexOf(step), 1)
      if (!this.#step(step)) return false
    }
    return true
  }

  #mayBegin([first]: readonly Act[]): boolean {
    const reasons = this.typist.terminal.session.gates().start(first?.step ?? 0)
    return reasons.every(({ code }) => code !== 'step-before')
  }

  #step(acts: readonly Act[]): boolean {
    const isEnd = ({ doing }: Act) => doing === 'done' || doing === 'extra'
    const [begun, end] = [acts.findIndex(({ doing }) => doing === 'take') + 1, acts.findIndex(isEnd)]
    return (
      acts.slice(0, begun).every((act) => this.#do(act)) &&
      this.#inAnyOrder(acts.slice(begun, end)) &&
      acts.slice(end).every((act) => this.#do(act))
    )
  }

  /** What is to do in a step, as the screens have it next. A bag is scanned before anything is taken out of it. */
  #inAnyOrder(acts: readonly Act[]): boolean {
    let open = [...acts]
    const read = new Map<string, Reading>()
    while (open.length > 0) {
      const next = nextOfEach(open)
      const chosen = next[this.#nearest(next, read)]
      const scan = open.find(({ doing, thing }) => doing === 'scan' && thing === chosen?.thing)
      const deed = chosen?.doing === 'fit' && scan ? scan : chosen
      if (!deed || !this.#do(deed)) return false
      open = open.filter((each) => each !== deed)
    }
    return true
  }

  #nearest(acts: readonly Act[], read: Map<string, Reading>): number {
    if (acts.length < 2) return 0
    return this.typist.nearest(
      acts.map((act) => act.say(this.known)),
      read,
    )
  }

  #do(act: Act): boolean {
    if (act.isNeedless?.(this.known)) return true
    if (act.doing === 'ask' && act.thing === undefined) return this.#lookAtProposals()
    if (act.doing === 'round') return this.#round(act)
    return this.#say(act, act.say(this.known))
  }

  /** What is proposed stands on a screen of its own, with the number that takes it. */
  #lookAtProposals(): boolean {
    this.known.hear(proposedSteps(this.typist.terminal.session))
    return true
  }

  /** Bag after bag is tipped out, and each is said to be empty. */
  #round(act: Act): boolean {
    return (
      this.#say(act, `take ${act.step}`) &&
      toTip(this.typist.terminal.session.state).every(({ container }) =>
        this.#say(act, `count ${container}: others=0`),
      ) &&
      this.#say(act, act.say(this.known))
    )
  }

  #say(act: Act, line: string): boolean {
    this.typist.handOver(act.doing === 'see again' ? 'Boris' : 'Anna')
    const done = this.typist.do(line)
    this.known.learn(act, done.entries)
    this.deeds.push({ ...done, doing: act.doing, phase: this.#phase, thing: act.thing })
    return done.isTaken || done.how === 'scan'
  }
}

/** Of many bolts in one pass the next one alone; nothing is turned before its passes are set. */
function nextOfEach(acts: readonly Act[]): Act[] {
  const turned = new Set<Thing | undefined>()
  const unset = new Set(acts.filter(({ doing }) => doing === 'set passes').map(({ thing }) => thing))
  return acts.filter(({ doing, thing }) => {
    if (doing !== 'turn') return doing !== 'scan'
    if (turned.has(thing) || unset.has(thing)) return false
    turned.add(thing)
    return true
  })
}
