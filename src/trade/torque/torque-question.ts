import { unitsOf } from '../convert/units.ts'
import { readDecimal, tidy, withoutNoise } from '../number.ts'
import { readTorque } from '../quantity.ts'
import type { Thread } from '../thread.ts'
import { commonClasses, type FastenerClass, proofStressMpa } from './fastener-class.ts'
import { shortFormTorque } from './preload.ts'
import { stressAreaMm2 } from './stress-area.ts'

/** A torque as it was typed for a fastener of a thread. */
export interface TypedTorque {
  thread: Thread
  /** Absent where nobody has said it. */
  fastenerClass?: FastenerClass
  newtonMetres: number
  /** With its unit: `120 Nm`. */
  typed: string
  /** An angle follows: it goes past the proof load by design, and the torque before it may be small. */
  thenAngle: boolean
  /** More torque stages follow, so that a small one is no sign of a slip. */
  thenMore?: boolean
  /** The name of the piece: a plug or a sensor has a large thread and takes little. */
  name?: string
}

/** The same number in another unit, which this thread would bear and need. */
export interface UnitSlip {
  /** `lbf·in`. */
  unit: string
  /** `120 lbf·in`. */
  text: string
  newtonMetres: number
}

/** What is worth asking about a torque. It is never refused, and nothing else is recommended: the manual decides. */
export type TorqueQuestion = TorqueFacts & (Over | NeedsClass | Low)

/** More than the ceiling of the class that was said, or of the strongest where none was said. */
type Over = { code: 'torque-over' }
/** No class was said, and only the stronger ones bear it: these. */
type NeedsClass = { code: 'torque-needs-class'; bearing: FastenerClass[] }
/** Less than a tenth of the ceiling of the common class, 8.8 or grade 5. */
type Low = { code: 'torque-low' }

/** The arithmetic: `ceilingNm` = 0.20 x `diameterMm` x `proofLoadN`, and `proofLoadN` = `areaMm2` x `proofMpa`. */
export interface TorqueFacts {
  newtonMetres: number
  typed: string
  thread: Thread
  /** The class that the ceiling is for. */
  fastenerClass: FastenerClass
  /** Nobody said the class. */
  isClassAssumed: boolean
  areaMm2: number
  proofMpa: number
  proofLoadN: number
  ceilingNm: number
  /** The torque as a share of the ceiling. */
  share: number
  /** Likely slips of the unit; empty where no other unit fits either. */
  slips: UnitSlip[]
  thenAngle: boolean
}

// Dry plain threads, common practice: little less than what brings a fastener to its proof load.
const ceilingNutFactor = 0.2
// Common practice: specified torques lie above a fifth of the ceiling.
const lowestShareOfASlip = 0.2
const lowShare = 0.1

/**
 * What is worth asking about a typed torque; null where nothing is, or nothing is known of the thread. The ceiling,
 * 0.20 x d x proof load, is a choice of this program: no standard gives one. It is what brings a dry plain fastener to
 * its proof load by the short form T = K d F, so a torque above it is more likely a slip of the pen than a specification.
 * With an angle behind it the torque stage is still checked; the angle itself goes past the proof load by design.
 */
export function questionTorque(torque: TypedTorque): TorqueQuestion | null {
  const { thread, newtonMetres, fastenerClass } = torque
  const usual = commonClasses(thread)
  const judged = (fastenerClass === undefined ? usual : [fastenerClass]).flatMap((each) => {
    const facts = factsFor(torque, each)
    return facts === null ? [] : [facts]
  })
  const [weakest] = judged
  const strongest = judged.at(-1)
  if (weakest === undefined || strongest === undefined) return null
  if (newtonMetres > strongest.ceilingNm) {
    // Of two classes that nobody said, the common one is the measure of a likely slip.
    return { code: 'torque-over', ...strongest, slips: slipsOf(torque, weakest.ceilingNm) }
  }
  if (newtonMetres > weakest.ceilingNm) {
    const bearing = judged.filter(({ ceilingNm }) => newtonMetres <= ceilingNm)
    return {
      code: 'torque-needs-class',
      ...weakest,
      bearing: bearing.map((facts) => facts.fastenerClass),
      slips: slipsOf(torque, weakest.ceilingNm),
    }
  }
  const low = usual[0] === undefined ? null : factsFor(torque, usual[0])
  if (low === null || low.share >= lowShare || mayBeLittle(torque)) return null
  return { code: 'torque-low', ...low, slips: slipsOf(torque, weakest.ceilingNm) }
}

function factsFor(torque: TypedTorque, fastenerClass: FastenerClass): TorqueFacts | null {
  const { thread, newtonMetres, typed, thenAngle } = torque
  const areaMm2 = stressAreaMm2(thread)
  const proofMpa = proofStressMpa(fastenerClass, thread.diameterMm)
  if (areaMm2 === null || proofMpa === null) return null
  const proofLoadN = areaMm2 * proofMpa
  const ceilingNm = shortFormTorque(ceilingNutFactor, thread.diameterMm, proofLoadN)
  return {
    newtonMetres,
    typed,
    thread,
    fastenerClass,
    isClassAssumed: torque.fastenerClass === undefined,
    areaMm2,
    proofMpa,
    proofLoadN,
    ceilingNm,
    share: newtonMetres / ceilingNm,
    slips: [],
    thenAngle,
  }
}

/** The same number in the other units, where it lies in the band that is usual for the thread. */
function slipsOf({ typed, newtonMetres }: TypedTorque, ceilingNm: number): UnitSlip[] {
  const number = numberTyped(typed, newtonMetres)
  if (number === undefined) return []
  return unitsOf.torque.flatMap(({ name: unit, scale }) => {
    const slipped = withoutNoise(number * scale)
    const isSame = Math.abs(slipped - newtonMetres) < 1e-6 * newtonMetres
    const isUsual = slipped >= lowestShareOfASlip * ceilingNm && slipped <= ceilingNm
    return isUsual && !isSame ? [{ unit, text: `${number} ${unit}`, newtonMetres: slipped }] : []
  })
}

/** The number typed, where the torque is what was typed and not a share of it. */
function numberTyped(typed: string, newtonMetres: number): number | undefined {
  const reading = readTorque(typed)
  if (!reading.understood || Math.abs(reading.value.newtonMetres - newtonMetres) > 1e-6 * newtonMetres)
    return undefined
  return readDecimal(/^[\d.,]+/.exec(tidy(typed))?.[0] ?? '')
}

/** A first stage, and a plug, a sensor or a hollow bolt: common practice. */
function mayBeLittle({ thenAngle, thenMore, name = '' }: TypedTorque): boolean {
  return (
    thenAngle ||
    thenMore === true ||
    /\b(?:plugs?|sensors?|senders?|switch(?:es)?|banjos?|unions?|fittings?|nipples?|bleed\w*|locknuts?|adjust\w*)\b/i.test(
      name,
    )
  )
}
