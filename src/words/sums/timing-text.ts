import type { WorkedOut } from '../../session/work-out.ts'
import type { Misplaced, MisplacedStage } from '../../trade/timing/misplaced-mark.ts'
import type { ToothAngle, ToothAngles } from '../../trade/timing/teeth.ts'
import { counted } from '../grammar.ts'
import { figure, NOT_A_SPECIFICATION } from './figures.ts'

type Timing = Extract<WorkedOut, { sum: 'timing' }>
type Off = NonNullable<Timing['question']['off']>

/** What one tooth is worth, and which way a mark that is off goes back. */
export function timingText({ question, worked }: Timing): string[] {
  const { angles, misplaced } = worked
  if (angles.code !== 'tooth-angles') return noDriveText(angles, question.stages)
  const teeth = angles.stages.flatMap((stage, at) => toothText(stage, at))
  const marks = marksText(question, worked.turnsUntilMarksMeet)
  if (misplaced === null || question.off === null) {
    return marks.length > 0 ? [...marks, ...teeth, NOT_A_SPECIFICATION] : [...teeth, NOT_A_SPECIFICATION]
  }
  return [...misplacedText(misplaced, question.off), ...teeth, ...marks, NOT_A_SPECIFICATION]
}

function toothText({ driver, driven, crankDegrees, camDegrees }: ToothAngle, at: number): string[] {
  const worth = `${angle(crankDegrees)} at the crank, ${angle(camDegrees)} at the cam`
  const sum = at === 0 ? `: 360 / ${driver} = ${angle(crankDegrees)}` : ''
  return [`One tooth of ${driver}/${driven} is ${worth}${sum}.`]
}

function noDriveText(
  angles: Exclude<ToothAngles, { code: 'tooth-angles' }>,
  stages: Timing['question']['stages'],
): string[] {
  const typed = stages.map(({ driver, driven }) => `${driver}/${driven}`).join(' ')
  switch (angles.code) {
    case 'swapped': {
      const turned = [...stages].reverse().map(({ driver, driven }) => `${driven}/${driver}`)
      return [
        `With ${typed} the cam would turn twice as fast: the crank stands first.`,
        `Write "teeth ${turned.join(' ')}".`,
      ]
    }
    case 'not-two-to-one': {
      const { turnsOfCrank, driven } = angles
      return [
        `With ${typed} the crank turns ${figure(turnsOfCrank)} times a turn of the cam, not 2.`,
        driven === null ? 'Count them again.' : `With ${driven} at the cam it would be 2: count them again.`,
        ...(stages.length === 1 ? ['With a shaft between, name both pairs: "teeth 24/36 30/40".'] : []),
      ]
    }
    case 'teeth':
      return [`No timing sprocket has ${counted(angles.teeth, 'tooth', 'teeth')}: 6 to 300.`]
    case 'too-many-stages':
      return [`At most ${angles.most} pairs of teeth, from the crank to the cam.`]
    case 'no-stages':
      return ['The teeth of the crank and of the cam are missing.']
    default:
      return angles satisfies never
  }
}

function misplacedText(misplaced: Misplaced, off: Off): string[] {
  switch (misplaced.code) {
    case 'in-time':
      return ['The marks stand right: nothing to move.']
    case 'other-stroke':
      return [
        'That is one whole turn of the crank: turn it once more and look again.',
        'The marks of the crank meet every turn, those of the cam every second one.',
      ]
    case 'too-far':
      return [
        `${angle(misplaced.crankDegrees)} of the crank is more than a turn: measure to the nearer side.`,
      ]
    case 'amount':
      return [`${misplaced.amount} is no amount by which a mark can be off.`]
    case 'misplaced':
      return movedText(misplaced, off)
    default:
      return misplaced satisfies never
  }
}

type Moved = Extract<Misplaced, { code: 'misplaced' }>

function movedText(moved: Moved, off: Off): string[] {
  const { side, crankDegrees, camDegrees, stages } = moved
  const whole = stages.filter(({ verdict }) => verdict === 'whole')
  const isOff = `The cam is ${angle(crankDegrees)} of the crank (${angle(camDegrees)} of its own) ${side}`
  const [first] = whole
  if (first === undefined) return [`${isOff}: no whole tooth.`, ...stages.map(partText), NO_TOOTH]
  return [
    ...(stages.length === 1
      ? [
          `The cam is ${teeth(first)} ${side}: move it ${teeth(first)} ${moved.move} in its chain or belt.`,
          `${isOff}.`,
          ...slackText(first, moved),
        ]
      : [`${isOff}.`, ...whole.map((stage, at) => stageText(stage, moved, at > 0))]),
    ...countText(off),
    wayText(moved, off),
    'The crank stays on its mark.',
    'With it off, valves may meet pistons: turn no shaft but as the manual says.',
    'Then turn the crank two full turns by hand, the way it runs, and look again.',
  ]
}

function stageText(stage: MisplacedStage, moved: Moved, isOther: boolean): string {
  const { driver, driven } = stage
  const rest = isNear(stage, moved) ? '' : ` (it is ${restText(stage, moved)})`
  return `${isOther ? 'Or at' : 'At'} ${driver}/${driven}: the ${driven} goes ${teeth(stage)} ${moved.move}${rest}.`
}

/** Where the measure is near a whole tooth and not on it. */
function slackText(stage: MisplacedStage, moved: Moved): string[] {
  return isNear(stage, moved) ? [] : [`That is ${restText(stage, moved)}: slack, wear, or the measure.`]
}

function restText(stage: MisplacedStage, { crankDegrees }: Moved): string {
  const rest = crankDegrees - stage.whole * stage.crankDegrees
  return `${angle(Math.abs(rest))} ${rest > 0 ? 'more' : 'less'} than ${teeth(stage)}`
}

function isNear(stage: MisplacedStage, { crankDegrees }: Moved): boolean {
  return Math.abs(crankDegrees - stage.whole * stage.crankDegrees) < 0.05
}

function teeth({ whole }: MisplacedStage): string {
  return counted(whole, 'tooth', 'teeth')
}

function partText({ driver, driven, teeth, crankDegrees }: MisplacedStage): string {
  return `At ${driver}/${driven}, ${angle(crankDegrees)} a tooth, it is ${figure(teeth, 3)} ${teeth > 1 ? 'teeth' : 'of a tooth'}.`
}

function countText({ measured }: Off): string[] {
  if (measured.by !== 'count') return []
  const { wanted, found, run } = measured
  const more = found - wanted
  return [
    `${found} counted, ${wanted} wanted, from mark to mark along the ${run} run: ${Math.abs(more)} too ${more > 0 ? 'many' : 'few'}.`,
  ]
}

function wayText({ move }: Moved, { runs }: Off): string {
  const forward = move === 'forward'
  const clockwise = forward === (runs === 'clockwise')
  const seen = runs === undefined ? '' : `: ${clockwise ? 'clockwise' : 'anticlockwise'} as you look at it`
  return `${forward ? 'Forward is the way it runs' : 'Back is against the way it runs'}${seen}.`
}

function marksText({ pins, stages }: Timing['question'], turns: number | null): string[] {
  if (pins === null) return []
  if (turns === null)
    return [`When marked links come round is worked out for one pair, not for ${stages.length}.`]
  return [
    `Marked links (of ${pins}) meet the marks again after ${counted(turns, 'turn')} of the crank.`,
    'Until then they stand elsewhere, and nothing is wrong.',
  ]
}

const NO_TOOTH = 'Look for wear, a slack tensioner or a wrong mark before anything is moved.'

function angle(degrees: number): string {
  return `${figure(degrees, 4)}°`
}
