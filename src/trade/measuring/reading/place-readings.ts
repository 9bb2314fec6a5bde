import { notUnderstood, type Reading, understood } from '../../reading.ts'
import { type MeasurementKind, READING_ROLES, type ReadingRole, type TakenReading } from '../measurement.ts'
import type { MeasuringFault } from './measuring-fault.ts'
import type { LabelledReading } from './read-readings.ts'

const heights = /^(?:top|upper|middle|mid|centre|center|bottom|lower|h\d{1,2})$/i
const axes = /^(?:x|y|z|along|across|lengthwise|crosswise|thrust|axis-?\d|[abc]-[abc])$/i
const roles: Readonly<Record<string, ReadingRole>> = {
  shaft: 'journal',
  housing: 'bore',
  new: 'before',
  used: 'after',
}
/** What is round has heights and axes. */
const round: readonly MeasurementKind[] = ['size', 'out-of-round', 'taper']
/** One reading for each place: a second one would be a slip. */
const single: readonly MeasurementKind[] = ['valve-clearance', 'length']

/**
 * Says of each reading where it was taken: from the words in front of it, or from positions given for all in their
 * order. A bore or journal, before or after belong to the place named last.
 */
export function placeReadings(
  kind: MeasurementKind,
  labelled: readonly LabelledReading[],
  positions: readonly string[],
): Reading<TakenReading[], MeasuringFault> {
  const readings: TakenReading[] = []
  for (const { label, ...reading } of labelled) {
    const words = partsOf(kind, label)
    readings.push({ ...reading, ...words, ...(words.at === undefined && kept(words, readings.at(-1))) })
  }
  const placed = positions.length === 0 ? understood(readings) : atPositions(readings, positions)
  if (!placed.understood) return placed
  const double = single.includes(kind)
    ? placed.value.find(
        ({ at }, i, all) => at !== undefined && all.slice(0, i).some((other) => other.at === at),
      )
    : undefined
  if (!double) return placed
  const first = placed.value.find(({ at }) => at === double.at)
  return notUnderstood('twice', `${double.at} ${double.typed}`, `${double.at} ${first?.typed}`)
}

type Placed = Pick<TakenReading, 'at' | 'height' | 'axis' | 'role'>

function partsOf(kind: MeasurementKind, label: readonly string[]): Placed {
  const placed: Placed = {}
  const names: string[] = []
  for (const word of label) {
    const role = roleOf(kind, word)
    if (role) placed.role = role
    else if (round.includes(kind) && heights.test(word)) placed.height = word
    else if (round.includes(kind) && axes.test(word)) placed.axis = word
    else names.push(word)
  }
  return { ...(names.length > 0 && { at: names.join(' ') }), ...placed }
}

function roleOf(kind: MeasurementKind, word: string): ReadingRole | undefined {
  const name = word.toLowerCase()
  const role =
    READING_ROLES.find((each) => each === name) ?? (Object.hasOwn(roles, name) ? roles[name] : undefined)
  const isPaired = kind === 'clearance' ? role === 'bore' || role === 'journal' : kind === 'stretch'
  return isPaired ? role : undefined
}

/** What a label without a place takes over from the reading before: `I1 bore 28.03 journal 27.98`. */
function kept(words: Placed, before: TakenReading | undefined): Placed {
  const isPart = words.role !== undefined || words.height !== undefined || words.axis !== undefined
  if (!isPart || !before) return {}
  return {
    ...(before.at !== undefined && { at: before.at }),
    ...(words.axis !== undefined &&
      words.height === undefined &&
      before.height !== undefined && { height: before.height }),
  }
}

/** Readings in the order of the positions, each role for itself; or each already at one of them. */
function atPositions(
  readings: readonly TakenReading[],
  positions: readonly string[],
): Reading<TakenReading[], MeasuringFault> {
  const count = `${positions.join(' ')}: ${readings.map(({ typed }) => typed).join(' ')}`
  if (readings.every(({ at }) => at !== undefined)) {
    const known = readings.map(({ at, ...more }) => ({ ...more, at: named(at, positions) }))
    const isEach = positions.every((position) => known.some(({ at }) => at === position))
    if (isEach && known.every(({ at }) => at !== undefined)) return understood(known)
    return notUnderstood('count', count, readings.map(({ at, typed }) => `${at} ${typed}`).join(', '))
  }
  const groups = new Map<ReadingRole | undefined, TakenReading[]>()
  for (const reading of readings) groups.set(reading.role, [...(groups.get(reading.role) ?? []), reading])
  const isEach = [...groups.values()].every((group) => group.length === positions.length)
  if (!isEach || readings.some(({ at }) => at !== undefined)) {
    const shorter = readings.slice(0, positions.length)
    return notUnderstood('count', count, shorter.map(({ typed }, i) => `${positions[i]} ${typed}`).join(', '))
  }
  return understood(
    [...groups.values()].flatMap((group) => group.map((reading, i) => ({ ...reading, at: positions[i] }))),
  )
}

function named(at: string | undefined, positions: readonly string[]): string | undefined {
  return positions.find((position) => position.toLowerCase() === at?.toLowerCase())
}
