import type { WorkedOut } from '../../session/work-out.ts'
import { figure, NOT_A_SPECIFICATION } from './figures.ts'

type Setting = Extract<WorkedOut, { sum: 'setting' }>
type Possible = Extract<Setting['worked'], { isPossible: true }>

/** What to set a torque wrench to, with its arithmetic, and what speaks against it. */
export function settingText(sum: Setting): string[] {
  const { torque, adapter, range, worked } = sum
  if (!worked.isPossible) return [IMPOSSIBLE[worked.code]]
  const { unit } = torque
  const setting = `${figure(worked.settingNm / unit.scale, 3)} ${unit.name}`
  const scale = range?.most.unit ?? unit
  const onScale =
    scale.name === unit.name ? '' : ` (${figure(worked.settingNm / scale.scale, 3)} ${scale.name})`
  return [
    `Set the wrench to ${setting}${onScale}${worked.fault === null ? '' : `: ${FAULTS[worked.fault]}`}.`,
    ...(adapter ? [arithmetic(sum, setting), GRIP] : []),
    ...rangeText(sum),
    NOT_A_SPECIFICATION,
  ]
}

const FAULTS: Record<NonNullable<Possible['fault']>, string> = {
  'range-empty': 'its range is not understood',
  'below-range': 'below its range',
  'above-range': 'above its range',
  'lowest-fifth': 'in its lowest fifth',
}

const GRIP = 'The handle counts from the middle of the grip, where the hand pulls.'

const IMPOSSIBLE: Record<Extract<Setting['worked'], { isPossible: false }>['code'], string> = {
  'handle-length': 'A handle of no length turns nothing: give the length from grip to drive.',
  'adapter-length': 'An adapter cannot be shorter than nothing.',
  'no-lever': 'The adapter brings the fastener under the hand or behind it: turn it round.',
}

/** `40 N·m × 400 / (400 + 50 × cos 60°) = 37.6 N·m`, in the units typed; both lengths in that of the handle. */
function arithmetic({ torque, adapter }: Setting, setting: string): string {
  if (!adapter) return ''
  const { handle, length, angleDegrees } = adapter
  const lever = figure(handle.number)
  const cosine = angleDegrees === 0 ? '' : ` × cos ${figure(angleDegrees)}°`
  const extension = `${figure(length.base / handle.unit.scale)}${cosine}`
  return `${figure(torque.number)} ${torque.unit.name} × ${lever} / (${lever} + ${extension}) = ${setting}`
}

function rangeText({ range, worked }: Setting): string[] {
  if (!range || !worked.isPossible) return []
  const { unit, number: most } = range.most
  const span = `${figure(range.least.base / unit.scale)} to ${figure(most)} ${unit.name}`
  const from = `${figure((worked.leastUsableNm ?? 0) / unit.scale, 3)} ${unit.name}`
  const what = `The wrench goes from ${span}`
  switch (worked.fault) {
    case 'below-range':
      return [`${what}: take a smaller one.`]
    case 'above-range':
      return [`${what}: take a larger one.`]
    case 'lowest-fifth':
      return [`${what}: of use from ${from} up (common practice).`]
    default:
      return [`${what}.`]
  }
}
