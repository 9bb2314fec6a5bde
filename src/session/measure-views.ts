import type { State } from '../journal/state.ts'
import type { MeasureFacts, MeasureId } from '../plan/facts.ts'
import { judge } from '../trade/measuring/judge.ts'
import type { Judged } from '../trade/measuring/judged.ts'
import { readSubject } from '../trade/measuring/reading/read-subject.ts'

/** A measurement and what it comes to. */
export interface MeasureView {
  measure: MeasureFacts
  judged: Judged
  /** The later one that took its place: of the same name, or of the same at all its positions. */
  replacedBy: MeasureId | null
  /** Positions that were measured again later; they are not judged here any more. */
  again: string[]
}

/** Every measurement on record, oldest first, those since taken again as well. */
export function measureViews(state: State): MeasureView[] {
  return viewsOf(state, () => true)
}

/** The measurements that hold: what was measured again is left out. */
export function measuresInForce(state: State): MeasureView[] {
  return measureViews(state).filter(({ replacedBy }) => replacedBy === null)
}

/** The measurements that hold and belong to a step. */
export function measuresOfStep(state: State, step: number): MeasureView[] {
  // Asked of one step after the other: only its own are judged.
  return viewsOf(state, (measure) => measure.step === step).filter(({ replacedBy }) => replacedBy === null)
}

/** The measurements that hold and whose name, position or id has all the words. */
export function measuresAbout(state: State, words: string | null): MeasureView[] {
  const asked = (words ?? '')
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  return measuresInForce(state).filter(({ measure: { id, name, measurement } }) => {
    const places = measurement.readings.map(({ at }) => at ?? '')
    const known = [id, name, ...places].join(' ').toLowerCase()
    return asked.every((word) => known.includes(word))
  })
}

/** Of a step, only what is out of its limits: shown wherever the step is. */
export function outOfLimits(state: State, step: number): MeasureView[] {
  return measuresOfStep(state, step).filter(({ judged }) => judged.verdict === 'out')
}

function viewsOf({ measures }: State, isWanted: (measure: MeasureFacts) => boolean): MeasureView[] {
  const all = [...measures.values()]
  return all.flatMap((measure, index) => (isWanted(measure) ? [viewOf(measure, all.slice(index + 1))] : []))
}

function viewOf(measure: MeasureFacts, later: readonly MeasureFacts[]): MeasureView {
  const { measurement } = measure
  const same = later.filter((other) => isOfTheSame(measure, other))
  const whole = same.find(({ name }) => name.toLowerCase() === measure.name.toLowerCase())
  const retaken = new Set(
    same.flatMap(({ measurement: { readings } }) => readings.flatMap(({ at }) => key(at) ?? [])),
  )
  const isAgain = (at: string | undefined) => at !== undefined && retaken.has(key(at) ?? '')
  const readings = measurement.readings.filter(({ at }) => !isAgain(at))
  const judged = judge(readings.length === 0 || whole ? measurement : { ...measurement, readings })
  const again = [
    ...new Set(measurement.readings.flatMap(({ at }) => (at !== undefined && isAgain(at) ? [at] : []))),
  ]
  const replacedBy = whole?.id ?? (readings.length === 0 ? (same.at(-1)?.id ?? null) : null)
  return { measure, judged, replacedBy, again }
}

/** Positions of one clearance may be measured again alone; a surface is measured as a whole. */
function isOfTheSame(one: MeasureFacts, other: MeasureFacts): boolean {
  if (one.name.toLowerCase() === other.name.toLowerCase()) return true
  const isSurface = one.measurement.kind === 'flatness' || one.measurement.kind === 'flatness-grid'
  const [first, second] = [one, other].map(({ name }) => readSubject(name))
  if (!first?.understood || !second?.understood || isSurface) return false
  return one.measurement.kind === other.measurement.kind && first.value.base === second.value.base
}

function key(at: string | undefined): string | undefined {
  return at?.toLowerCase()
}
