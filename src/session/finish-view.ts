import type { State } from '../journal/state.ts'
import { type Activity, criticalPath, type Schedule } from '../plan/finish/critical-path.ts'
import { freeWork } from '../plan/finish/free-work.ts'
import { curedAt } from '../plan/waiting/consumables.ts'
import type { ConsumableFacts, ConsumableId } from '../plan/waiting/waiting-facts.ts'
import type { Session } from './session.ts'
import { planRows } from './views.ts'
import { type Wait, waitsOf } from './waits.ts'

/** A step that is still to be done: how long it takes by the user's word, and what of it is not here. */
export interface StepToDo {
  step: number
  /** `said`: for the way back. `took`: as it was noted while it came off. None where nobody said anything. */
  minutes: { minutes: number; by: 'said' | 'took' } | null
  waits: Wait[]
}

/** An estimate of when the machine is together: it rests on what was said, and holds nothing up. */
export interface FinishView {
  /** The moment of the estimate, in ISO 8601; its minutes count from then. */
  from: string
  steps: StepToDo[]
  /** By steps, and by what sets; null where the steps would wait for one another. */
  schedule: Schedule<number | ConsumableId> | null
  /** What the steps take one after the other, in minutes: one pair of hands can do no more. */
  hands: number
  /** Steps of which nobody said how long they take: they count as nothing. */
  unknown: number[]
  /** What could start at once. */
  ready: number[]
  /** What can be done after that while what is not here is away. */
  free: number[]
}

/** The critical path over what is left to do before the first start, and the work that nothing keeps waiting. */
export function finishView(session: Session): FinishView {
  const state = session.stateNow()
  const gates = session.gates()
  const open = planRows(session)
    .filter(({ step, standing }) => step.way !== 'after-start' && standing !== 'done' && standing !== 'idle')
    .map(({ step }) => step.no)
  const steps = open.map((step) => ({
    step,
    minutes: minutesOf(state, step),
    waits: waitsOf(state, gates, step),
  }))
  const schedule = criticalPath([...activities(session, state, steps), ...setting(state, open)])
  const held = new Set(steps.filter(({ waits }) => waits.length > 0).map(({ step }) => step))
  const now = new Set([...gates.ready(), ...open.filter((no) => state.steps.get(no)?.built === 'underway')])
  const free = freeWork(gates.needs, open, held)
  return {
    from: state.clock.at,
    steps,
    schedule: 'cycle' in schedule ? null : schedule,
    hands: steps.reduce((sum, { minutes }) => sum + (minutes?.minutes ?? 0), 0),
    unknown: steps.filter(({ minutes }) => minutes === null).map(({ step }) => step),
    ready: open.filter((no) => now.has(no)),
    free: free.filter((no) => !now.has(no)),
  }
}

/** Whether anything was said that an estimate can rest on. */
export function isEstimable({ steps, notes, outings, orders, consumables }: State): boolean {
  return (
    outings.size + orders.size + consumables.size > 0 ||
    notes.some(({ minutes }) => minutes !== undefined) ||
    [...steps.values()].some(({ minutes }) => minutes !== undefined)
  )
}

function minutesOf({ steps, notes }: State, no: number): StepToDo['minutes'] {
  const said = steps.get(no)?.minutes
  if (said !== undefined) return { minutes: Math.ceil(said), by: 'said' }
  const took = notes.filter(({ step, minutes }) => step === no && minutes !== undefined)
  if (took.length === 0) return null
  return { minutes: Math.ceil(took.reduce((sum, { minutes = 0 }) => sum + minutes, 0)), by: 'took' }
}

type Id = number | ConsumableId

function activities(session: Session, state: State, steps: readonly StepToDo[]): Activity<Id>[] {
  const gates = session.gates()
  return steps.map(({ step, minutes, waits }) => {
    const isPassed = state.passedOver.get(`start ${step}`)?.has('step-before')
    const before = isPassed ? [] : gates.stepsBefore(step)
    const held = [...state.consumables.values()].filter((each) => holds(state, each, step))
    return {
      id: step,
      minutes: minutes?.minutes ?? 0,
      needs: [
        ...before.flatMap((reason) => (reason.code === 'step-before' ? reason.step : [])),
        ...held.map(({ id }) => id),
      ],
      notBefore: Math.max(0, ...waits.map((wait) => minutesUntil(state, wait))),
    }
  })
}

/** Whether a step, or a filling in it, waits until something put on in another step has set. */
function holds({ fluids }: State, { step: own, before }: ConsumableFacts, step: number): boolean {
  return (
    own !== step &&
    before.some(
      (target) =>
        (typeof target === 'string' && target !== 'start' ? fluids.get(target)?.step : target) === step,
    )
  )
}

/** What sets, or will, as an activity of its own that takes no hands. */
function setting(state: State, open: readonly number[]): Activity<Id>[] {
  return [...state.consumables.values()].flatMap((consumable): Activity<Id>[] => {
    const { id, step, before, cureMinutes = 0 } = consumable
    if (cureMinutes === 0 || before.length === 0 || state.overrides.has(id)) return []
    const until = curedAt(state, consumable)
    // Until the joint is together its time has not begun.
    if (open.includes(step) || until === null)
      return open.includes(step) ? [{ id, minutes: Math.ceil(cureMinutes), needs: [step] }] : []
    const left = Math.ceil((Date.parse(until) - Date.parse(state.clock.at)) / 60_000)
    return left > 0 ? [{ id, minutes: left, needs: [] }] : []
  })
}

/** From the start of the day on which it is due; what is late or has no day may come at any time. */
function minutesUntil({ clock }: State, { due }: Wait): number {
  if (due === undefined || due <= clock.today) return 0
  // Without a zone, a day begins where the user is.
  return Math.max(0, Math.ceil((Date.parse(`${due}T00:00`) - Date.parse(clock.at)) / 60_000))
}
