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
        `With ${typed} the cam would turn twice as fast as the crank: the crank stands first.`,
        `Write "teeth ${turned.join(' ')}".`,
      ]
    }
    case 'not-two-to-one': {
      const { turnsOfCrank, driven } = angles
      return [
        `With ${typed} the crank turns ${figure(turnsOfCrank)} times for one turn of the cam: a four-stroke needs 2.`,
        `${driven === null ? 'Count' : `It would be 2 with ${driven} teeth at the cam: count`} again, or add the intermediate pair: "teeth 24/36 30/40".`,
      ]
    }
    case 'teeth':
      return [`A timing sprocket with ${angles.teeth} teeth there is none: 6 to 300.`]
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
        `${angle(misplaced.crankDegrees)} of the crank are more than a turn: measure to the nearer side of the mark.`,
      ]
    case 'amount':
      return [`${misplaced.amount} is no amount by which a mark can be off.`]
    case 'misplaced':
      return [...movedText(misplaced, off), ...LOOK_AGAIN]
    default:
      return misplaced satisfies never
  }
}

type Moved = Extract<Misplaced, { code: 'misplaced' }>

function movedText(moved: Moved, off: Off): string[] {
  const whole = moved.stages.filter(({ verdict }) => verdict === 'whole')
  const isTwoStage = moved.stages.length > 1
  const [first] = whole
  const off_ = `The cam is ${angle(moved.crankDegrees)} of the crank (${angle(moved.camDegrees)} of its own) ${moved.side}`
  if (first === undefined) return [`${off_}: no whole tooth.`, ...moved.stages.map(partText), NO_TOOTH]
  return [
    ...whole.map((stage, at) => {
      const where = isTwoStage ? ` at ${stage.driver}/${stage.driven}` : ''
      return `${at === 0 ? `The cam is ${counted(stage.whole, 'tooth', 'teeth')} ${moved.side}${where}` : `Or it is ${counted(stage.whole, 'tooth', 'teeth')}${where}`}: move it ${counted(stage.whole, 'tooth', 'teeth')} ${moved.move} in its chain or belt.`
    }),
    `${off_}${slackText(first, moved.crankDegrees)}.`,
    ...countText(off),
    wayText(moved, off),
  ]
}

/** Where the measure is near a whole tooth and not on it. */
function slackText(stage: MisplacedStage, crankDegrees: number): string {
  const left = crankDegrees - stage.whole * stage.crankDegrees
  return Math.abs(left) < 0.05
    ? ''
    : `, ${angle(Math.abs(left))} ${left > 0 ? 'more' : 'less'} than ${counted(stage.whole, 'tooth', 'teeth')}`
}

function partText({ driver, driven, teeth, crankDegrees }: MisplacedStage): string {
  return `At ${driver}/${driven} that is ${figure(teeth, 2)} of a tooth of ${angle(crankDegrees)}.`
}

function countText({ measured }: Off): string[] {
  if (measured.by !== 'count') return []
  const { wanted, found, run } = measured
  const more = found - wanted
  return [
    `${found} counted for ${wanted} from the cam's mark to the crank's, along the ${run} run: ${Math.abs(more)} too ${more > 0 ? 'many' : 'few'}.`,
  ]
}

function wayText({ move }: Moved, { runs }: Off): string {
  const forward = move === 'forward'
  const as =
    runs === undefined
      ? ''
      : `: ${forward === (runs === 'clockwise') ? 'clockwise' : 'anticlockwise'} as you look at it`
  return `${forward ? 'Forward is the way it runs' : 'Back is against the way it runs'}${as}; the crank stays on its mark.`
}

function marksText({ pins, stages }: Timing['question'], turns: number | null): string[] {
  if (pins === null) return []
  if (turns === null)
    return [`When marked links come round is worked out for one pair of teeth, not for ${stages.length}.`]
  return [
    `The marked links of a chain or belt of ${pins} meet the marks again after ${counted(turns, 'turn')} of the crank.`,
    'Until then they stand elsewhere, and nothing is wrong.',
  ]
}

const NO_TOOTH = 'Look for wear, a slack tensioner or a wrong mark before anything is moved.'

const LOOK_AGAIN = [
  'With chain or belt off, valves may meet pistons: turn neither crank nor cam on its own.',
  'Then turn the crank two full turns by hand, the way it runs, and look again.',
]

function angle(degrees: number): string {
  return `${figure(degrees, 4)}°`
}
