import {
  type Blend,
  blendForRefill,
  type DrainAndRefill,
  drainAndRefill,
  type StrengthAfter,
  strengthAfterRefill,
} from './drain-and-refill.ts'
import { type FreezingPoint, freezingPoint } from './freezing-point.ts'
import type { CoolantQuestion } from './read-coolant.ts'
import { type UnitAsTyped, unitAsTyped } from './unit-as-typed.ts'

/** An answer, and where the mixture that comes of it freezes. */
export interface CoolantWorkedOut {
  result: DrainAndRefill | Blend | StrengthAfter
  /** The unit of the volume that was typed first. */
  unit: UnitAsTyped
  /** The strength that comes of it, in percent; null where none does. */
  percent: number | null
  freezes: FreezingPoint | null
}

/** Answers a question about a coolant. */
export function workOutCoolant(question: CoolantQuestion): CoolantWorkedOut {
  const result = resultOf(question)
  const percent = percentOf(question, result)
  return {
    result,
    unit: unitAsTyped(question.ask === 'mix' ? question.volume : question.capacity),
    percent,
    freezes: percent === null ? null : freezingPoint(question.glycol, percent),
  }
}

function resultOf(question: CoolantQuestion): DrainAndRefill | Blend | StrengthAfter {
  switch (question.ask) {
    case 'change':
      return drainAndRefill({
        capacityLitres: question.capacity.litres,
        nowPercent: question.nowPercent,
        wantedPercent: question.wantedPercent,
        refillPercent: question.refill.percent,
      })
    case 'refill':
      return blendForRefill({
        capacityLitres: question.capacity.litres,
        drainedLitres: question.drained.litres,
        nowPercent: question.nowPercent,
        wantedPercent: question.wantedPercent,
        sourcePercent: question.refill.percent,
      })
    case 'after':
      return strengthAfterRefill({
        capacityLitres: question.capacity.litres,
        drainedLitres: question.drained.litres,
        nowPercent: question.nowPercent,
        refillPercent: question.refill.percent,
      })
    case 'mix':
      return blendForRefill({
        capacityLitres: question.volume.litres,
        drainedLitres: question.volume.litres,
        nowPercent: 0,
        wantedPercent: question.wantedPercent,
        sourcePercent: question.refill.percent,
      })
    default:
      return question satisfies never
  }
}

function percentOf(question: CoolantQuestion, result: DrainAndRefill | Blend | StrengthAfter): number | null {
  if (result.code === 'strength') return result.percent
  const isReached =
    result.code === 'drain-and-refill' || result.code === 'blend' || result.code === 'nothing-to-do'
  return isReached && question.ask !== 'after' ? question.wantedPercent : null
}
