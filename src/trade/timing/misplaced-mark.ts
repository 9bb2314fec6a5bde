import type { ToothAngle } from './teeth.ts'

/** What the cam is when it does not stand right: ahead of the crank (advanced), or behind it (retarded). */
export type Side = 'early' | 'late'
export type Shaft = 'crank' | 'cam'
/** As seen by who looks at the drive. */
export type Rotation = 'clockwise' | 'anticlockwise'
/** The run of a chain or belt that the crank pulls, and the one with the tensioner. */
export type Run = 'tight' | 'slack'

/** How a mark was found to be off. `at` tells the stage of a drive with two: the one at the crank or the one at the cam. */
export type Measured =
  | { by: 'teeth'; teeth: number; side: Side; at: Shaft }
  /** Of the crank, the cam on its mark; or of the cam, the crank on its mark. */
  | { by: 'degrees'; degrees: number; side: Side; at: Shaft }
  /** Pins, links or teeth from the mark of the cam to the mark of the crank, along one run. */
  | { by: 'count'; wanted: number; found: number; run: Run; at: Shaft }

/** What a mark that is off comes to, and what would bring it back. */
export type Misplaced =
  | { code: 'in-time' }
  /** A whole turn of the crank: its marks meet every turn, those of the cam every second one. */
  | { code: 'other-stroke' }
  | {
      code: 'misplaced'
      side: Side
      crankDegrees: number
      camDegrees: number
      /** How the cam has to be moved in its chain or belt: the way it runs, or against it. */
      move: 'forward' | 'back'
      /** The stages in which it may have happened, from the crank to the cam. */
      stages: MisplacedStage[]
    }
  /** More than a turn of the crank: as many degrees the other way are nearer. */
  | { code: 'too-far'; crankDegrees: number }
  | { code: 'amount'; amount: number }

export interface MisplacedStage extends ToothAngle {
  /** Exactly, with its fraction. */
  teeth: number
  /** The whole teeth; those below where it is none. */
  whole: number
  /**
   * Whole teeth; less than one: slack, wear, or not measured well; or between two: no tooth alone does that, so look for
   * wear, slack or a wrong mark.
   */
  verdict: 'whole' | 'under-one' | 'between'
}

/** How far from a whole tooth still is that tooth. A choice of this program: slack and a mark's width take so much. */
const nearEnough = 0.25 // teeth

/** By how many teeth a mark is off, and which way the cam has to go. The stages are those of `toothAngles`. */
export function misplacedMark(stages: readonly ToothAngle[], measured: Measured): Misplaced {
  const wrong = wrongAmount(measured)
  if (wrong !== undefined) return { code: 'amount', amount: wrong }
  const counted = measured.at === 'crank' ? stages.slice(0, 1) : stages.slice(-1)
  const possible = measured.by === 'degrees' ? stages : counted
  const { late, crankDegrees } = offBy(counted, measured)
  if (crankDegrees < 1e-9) return { code: 'in-time' }
  const finest = Math.min(...possible.map((stage) => stage.crankDegrees))
  if (Math.abs(crankDegrees - 360) <= nearEnough * finest) return { code: 'other-stroke' }
  if (crankDegrees > 360) return { code: 'too-far', crankDegrees }
  return {
    code: 'misplaced',
    side: late ? 'late' : 'early',
    crankDegrees,
    camDegrees: crankDegrees / 2,
    move: late ? 'forward' : 'back',
    stages: possible.map((stage) => inTeeth(stage, crankDegrees)),
  }
}

/**
 * What the cam is, told from which way a mark stands from where it belongs, as seen, and which way the engine runs, seen
 * from the same side. A mark of the cam that is ahead is early; a crank that is ahead when the cam is on its mark has
 * a cam that is late.
 */
export function sideOfMark(at: Shaft, stands: Rotation, runs: Rotation): Side {
  const ahead = stands === runs
  return ahead === (at === 'cam') ? 'early' : 'late'
}

/** Which run is at the left or the right as seen, the cam above the crank: the crank pulls down what runs down. */
export function runOnSide(seen: 'left' | 'right', runs: Rotation): Run {
  return (seen === 'right') === (runs === 'clockwise') ? 'tight' : 'slack'
}

function offBy(counted: readonly ToothAngle[], measured: Measured): { late: boolean; crankDegrees: number } {
  if (measured.by === 'degrees') {
    const crankDegrees = measured.at === 'crank' ? measured.degrees : measured.degrees * 2
    return { late: measured.side === 'late', crankDegrees }
  }
  const perTooth = counted[0]?.crankDegrees ?? 0
  if (measured.by === 'teeth') {
    return { late: measured.side === 'late', crankDegrees: measured.teeth * perTooth }
  }
  // The tight run goes from the cam to the crank: more of it between the marks is a cam that is behind.
  const more = measured.found - measured.wanted
  return { late: more > 0 === (measured.run === 'tight'), crankDegrees: Math.abs(more) * perTooth }
}

function inTeeth(stage: ToothAngle, crankDegrees: number): MisplacedStage {
  const teeth = Number((crankDegrees / stage.crankDegrees).toPrecision(12))
  const near = Math.round(teeth)
  if (Math.abs(teeth - near) > nearEnough) {
    return { ...stage, teeth, whole: Math.floor(teeth), verdict: 'between' }
  }
  return { ...stage, teeth, whole: near, verdict: near === 0 ? 'under-one' : 'whole' }
}

function wrongAmount(measured: Measured): number | undefined {
  if (measured.by === 'degrees') return isAmount(measured.degrees) ? undefined : measured.degrees
  const counts = measured.by === 'teeth' ? [measured.teeth] : [measured.wanted, measured.found]
  return counts.find((count) => !isAmount(count) || !Number.isInteger(count))
}

function isAmount(number: number): boolean {
  return number >= 0 && Number.isFinite(number)
}
