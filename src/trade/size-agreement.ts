import type { Drive } from './drive.ts'
import type { Size } from './size-text.ts'
import type { Thread } from './thread.ts'
import { classText } from './torque/fastener-class.ts'

export type Agrees = 'yes' | 'no' | 'unknown'

/** In what a piece in the hand and a recorded size agree. Each is unknown where either of them does not say it. */
export interface SizeAgreement {
  /** System and nominal size: M8, 5/16, 1/4 NPT. */
  thread: Agrees
  pitch: Agrees
  length: Agrees
  fastenerClass: Agrees
  drive: Agrees
}

/** A size as it is told of a piece in the hand: the length may be known where no thread is. */
export interface SizeInHand extends Size {
  lengthMm?: number | undefined
}

/** Compares what is known of a piece in the hand with a size from the record. */
export function sizeAgreement(inHand: SizeInHand, recorded: Size): SizeAgreement {
  const [one, other] = [inHand.thread, recorded.thread]
  return {
    thread: compared(one, other, isSameThread),
    pitch: pitchAgrees(one, other),
    length: compared(one?.lengthMm ?? inHand.lengthMm, other?.lengthMm, isSameLength),
    fastenerClass: compared(
      inHand.fastenerClass,
      recorded.fastenerClass,
      (a, b) => classText(a) === classText(b),
    ),
    drive: compared(inHand.drive, recorded.drive, isSameDrive),
  }
}

function compared<Value>(
  one: Value | undefined,
  other: Value | undefined,
  isSame: (one: Value, other: Value) => boolean,
): Agrees {
  if (one === undefined || other === undefined) return 'unknown'
  return isSame(one, other) ? 'yes' : 'no'
}

function isSameThread(one: Thread, other: Thread): boolean {
  return one.system === other.system && one.size === other.size
}

/** The coarse pitch that was filled in for one that nobody wrote agrees with itself, and contradicts no other. */
function pitchAgrees(one: Thread | undefined, other: Thread | undefined): Agrees {
  const agrees = compared(one?.pitchMm, other?.pitchMm, (a, b) => Math.abs(a - b) < 0.005)
  const isAssumed = one?.pitchAssumed === true || other?.pitchAssumed === true
  return agrees === 'no' && isAssumed ? 'unknown' : agrees
}

// Common practice: a rule at the bench reads to half a millimetre, and bolts are made 1 mm longer or shorter; lengths up
// to 10 mm stand 1 or 2 mm apart (from memory of ISO 888).
const shortMm = 10
const nearShortMm = 0.5
const nearMm = 1

function isSameLength(one: number, other: number): boolean {
  const near = Math.max(one, other) <= shortMm ? nearShortMm : nearMm
  return Math.abs(one - other) <= near + 1e-9
}

function isSameDrive(one: Drive, other: Drive): boolean {
  if (one.kind !== other.kind) return false
  if (one.kind === 'slot' || other.kind === 'slot') return true
  if ('acrossFlatsMm' in one)
    return 'acrossFlatsMm' in other && Math.abs(one.acrossFlatsMm - other.acrossFlatsMm) < 1e-6
  const isSameForm = one.kind !== 'cross-recess' || (other.kind === 'cross-recess' && one.form === other.form)
  return isSameForm && 'size' in other && one.size === other.size
}
