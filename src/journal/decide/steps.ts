import type { StepFacts } from '../../plan/facts.ts'
import { Gates } from '../../plan/gates.ts'
import { buildOrder } from '../../plan/order.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf, StripStep } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownStep, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** A strip step begins; the one under way ends with it. */
export function beginStrip(
  state: State,
  { title, after, hides }: Of<'begin-strip'>,
): EntryBodyOf<'strip-began'> {
  return { type: 'strip-began', step: newStrip(state, title, after, hides) }
}

const MOST_TURNS = 20

/** A strip step for what comes off without one being named: nobody is stopped before the first bolt. */
export function stripFor(state: State, name: string): { no: number; began?: StripStep } {
  if (state.strip !== null) return { no: state.strip }
  const began = newStrip(state, `${name} off`)
  return { no: began.no, began }
}

/** The strip step under way is off. */
export function endStrip(state: State): EntryBodyOf<'strip-ended'> {
  return { type: 'strip-ended', step: state.strip ?? refuse({ code: 'no-strip-step' }) }
}

/** A step of the way back alone; refused where it would close a circle. */
export function addStep(
  state: State,
  { title, kind, way, needs, before, due, turns }: Of<'add-step'>,
): EntryBodyOf<'step-added'> {
  const name = given(title, 'title')
  if (turns !== undefined && !(Number.isInteger(turns) && turns >= 1 && turns <= MOST_TURNS))
    refuse({ code: 'count-wrong', count: turns })
  for (const no of [...needs, ...before]) knownStep(state, no)
  for (const no of before) {
    const { built } = knownStep(state, no)
    if (built === 'done') refuse({ code: 'step-done', step: no })
  }
  const no = nextStep(state)
  const upper = new Set(before)
  const trial: Map<number, Links> = new Map(
    [...state.steps].map(([key, step]) => [
      key,
      upper.has(key) ? { ...step, needs: [...step.needs, no] } : step,
    ]),
  )
  refuseCycle(trial.set(no, { no, way, needs, after: [], due }))
  return {
    type: 'step-added',
    step: { no, title: name, way, kind, needs: [...new Set(needs)], due, ...(turns && { turns }) },
    before: [...upper],
  }
}

/** A step gets another title, order or cover; refused where it would close a circle. */
export function changeStep(state: State, command: Of<'change-step'>): EntryBodyOf<'step-changed'> {
  const step = knownStep(state, command.step)
  const { after, needs, hides, minutes, critical } = command
  if (minutes !== undefined && !(minutes > 0 && minutes <= 1e6))
    refuse({ code: 'count-wrong', count: minutes })
  if (critical && !(critical.afterMinutes > 0 && critical.afterMinutes <= 1e6))
    refuse({ code: 'count-wrong', count: critical.afterMinutes })
  if (after && step.way !== 'both') refuse({ code: 'not-a-strip-step', step: step.no })
  for (const no of needs ?? []) knownStep(state, no)
  for (const no of after ?? []) if (!step.after.includes(no)) wasOffBefore(state, no)
  if ((after || needs) && step.built === 'done') refuse({ code: 'step-done', step: step.no })
  const trial = new Map(state.steps)
  trial.set(step.no, { ...step, after: after ?? step.after, needs: needs ?? step.needs })
  refuseCycle(trial)
  const title = command.title === undefined ? undefined : given(command.title, 'title')
  return { type: 'step-changed', step: step.no, title, after, needs, hides, minutes, critical }
}

/** Words kept with the step under way, or with the one named. */
export function note(state: State, { kind, text, minutes, step }: Of<'note'>): EntryBodyOf<'noted'> {
  if (step !== undefined) knownStep(state, step)
  if (minutes !== undefined && !(minutes > 0 && minutes < Number.POSITIVE_INFINITY))
    refuse({ code: 'count-wrong', count: minutes })
  return { type: 'noted', step: step ?? state.strip ?? state.build, kind, text: given(text, 'text'), minutes }
}

function newStrip(state: State, title: string, after?: number[], hides?: boolean): StripStep {
  const name = given(title, 'title')
  for (const earlier of after ?? []) wasOffBefore(state, earlier)
  return {
    no: nextStep(state),
    title: name,
    after: [...new Set(after ?? lastStrip(state))],
    hides: hides ?? HIDES.test(name),
  }
}

function wasOffBefore(state: State, no: number): void {
  const { way, built } = knownStep(state, no)
  if (way !== 'both') refuse({ code: 'not-a-strip-step', step: no })
  // What is back on the machine cannot have been out of the way.
  if (built === 'done') refuse({ code: 'step-done', step: no })
}

/** What closes something in is taken to hide it, by its usual names: common practice, and the user may say otherwise. */
const HIDES = /\b(cover|covers|sump|oil pan|lid|casing|housing|case|cylinder head|head)\b/i

/** The strip step before, among those that are still off: one that is back on was not in the way. */
function lastStrip(state: State): number[] {
  const gates = new Gates(state)
  const off = [...state.steps.values()].filter(({ no, way }) => way === 'both' && !gates.isDone(no))
  const last = off.at(-1)
  return last ? [last.no] : []
}

function nextStep(state: State): number {
  const no = state.dealt.step + 1
  return no > 9999 ? refuse({ code: 'numbers-used-up', what: 'step', left: 0 }) : no
}

type Links = Pick<StepFacts, 'no' | 'way' | 'after' | 'needs' | 'due'>

function refuseCycle(steps: ReadonlyMap<number, Links>): void {
  const result = buildOrder(steps)
  if ('cycle' in result) refuse({ code: 'cycle', steps: result.cycle })
  // What comes after the first start cannot be waited for before it.
  for (const { no, way, needs } of steps.values()) {
    const late =
      way === 'after-start' ? undefined : needs.find((needed) => steps.get(needed)?.way === 'after-start')
    if (late !== undefined) refuse({ code: 'cycle', steps: [no, late] })
  }
}
