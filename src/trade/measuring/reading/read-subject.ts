import { readPositions } from '../../positions.ts'
import { notUnderstood, type Reading, understood } from '../../reading.ts'
import type { MeasurementKind } from '../measurement.ts'
import { joined, millimetresOf, NUMBER, numberFrom, UNIT } from './lengths.ts'
import type { MeasuringFault } from './measuring-fault.ts'
import type { MeasurementFrame } from './read-measurement.ts'

/** What a measurement is of, as it stands before its readings. */
export interface MeasuredSubject extends MeasurementFrame {
  /** What a later measurement of the same has to be called: `flatness of head`, `valve clearance I1..I4`. */
  name: string
  /** What was measured, for the record to find: `head`. */
  of: string
  /** The name without its positions: one valve measured again is the same clearance. */
  base: string
}

/**
 * Reads what was measured: `flatness of head`, `flatness grid 3x4 every 50 mm of head`, `valve clearance I1..I4`,
 * `bore of cylinder 1`, `clearance of cam caps I1..I4`. A grid is so many rows of so many readings.
 */
export function readSubject(text: string): Reading<MeasuredSubject, MeasuringFault> {
  const typed = text.replace(/\s+/gu, ' ').trim()
  if (typed === '') return notUnderstood('empty', '', 'flatness of head')
  const gridText = GRID.exec(typed)?.[0]
  const plain = gridText === undefined ? typed : typed.replace(gridText, ' ').replace(/\s+/gu, ' ').trim()
  const found = KINDS.find(([, words]) => new RegExp(`^(?:the )?(?:${words})(?![\\p{L}])`, 'iu').test(plain))
  if (!found) return notUnderstood('what', typed, `size of ${plain.replace(/^.*?(?:^| )of /iu, '')}`)
  const [kind, words] = found
  const rest = plain.replace(new RegExp(`^(?:the )?(?:${words})(?![\\p{L}])`, 'iu'), '').trim()
  const { of, positions } = withoutPositions(rest.replace(/^(?:of|at|on|in)(?: the)? /iu, ''), kind)
  const frame = { name: plain, of, positions, base: baseOf(plain, rest, of) }
  if (gridText === undefined) return understood({ kind, ...frame })
  const grid = readGrid(gridText)
  if (kind !== 'flatness' || !grid) return notUnderstood('grid', gridText.trim(), 'flatness grid 3x4')
  return understood({ kind: 'flatness-grid', ...frame, grid })
}

function baseOf(name: string, rest: string, of: string): string {
  const until = of === '' ? name.length - rest.length : name.lastIndexOf(of) + of.length
  return name.slice(0, until).trim().toLowerCase()
}

// In the words of the trade; the first that fits counts.
const KINDS: readonly [MeasurementKind, string][] = [
  ['flatness', 'flatness|warp(?:age|ing)?'],
  ['valve-clearance', 'valve (?:clearances?|lash|gaps?)|lash'],
  [
    'clearance',
    '(?:oil |bearing |side |radial |axial |piston |running )?clearances?|(?:end|side|axial|radial) ?(?:float|play)|(?:ring |end )?gaps?|backlash|play|float',
  ],
  ['out-of-round', 'out[ -]of[ -]round(?:ness)?|ovality|roundness'],
  ['taper', 'taper'],
  ['run-out', 'run[ -]?out'],
  ['stretch', '(?:bolt |stud )?stretch'],
  ['length', '(?:free |spring |bolt )?lengths?'],
  ['size', 'sizes?|bores?|journals?|diameters?|thickness(?:es)?|widths?|heights?|depths?'],
]

const length = `${NUMBER}(?: ?${UNIT})?`
const GRID = new RegExp(
  `(?:^| )grid(?: (?:of )?(\\d{1,3}) ?[x×*] ?(\\d{1,3})(?:,? (?:every|spaced|steps?(?: of)?) (${length})(?: ?[x×] ?(${length}))?)?)?(?= |$)`,
  'iu',
)
const mostPoints = 200

function readGrid(text: string): MeasurementFrame['grid'] {
  const [, rowsText, columnsText, across, down] = GRID.exec(joined(text)) ?? []
  const [rows, columns] = [Number(rowsText), Number(columnsText)]
  if (!(rows >= 2 && columns >= 2 && rows * columns <= mostPoints)) return undefined
  const [first, second] = [across, down].map((word) => numberFrom(word ?? ''))
  const columnStep = first && { ...first, unit: first.unit || (second?.unit ?? '') }
  const rowStep = second && { ...second, unit: second.unit || (first?.unit ?? '') }
  const steps = [columnStep, rowStep ?? columnStep].map((step) => step && millimetresOf(step))
  if (steps.some((step) => step !== undefined && step <= 0)) return undefined
  const [columnStepMm, rowStepMm] = steps
  return {
    rows,
    columns,
    ...(columnStepMm !== undefined && { columnStepMm }),
    ...(rowStepMm !== undefined && { rowStepMm }),
  }
}

/** Positions behind the words, where they are several, or those of a valve: `cam caps I1..I4`, `valve clearance I1`. */
function withoutPositions(text: string, kind: MeasurementKind): { of: string; positions: string[] } {
  const words = text.split(' ')
  for (let at = 0; at < words.length; at++) {
    const tail = words.slice(at).join(' ')
    const isSeveral = /\p{L}?\d.*(?:\.\.|…|-|,| to | )\p{L}?\d|^\p{L}\.\.\p{L}$/iu.test(tail)
    const isOne = kind === 'valve-clearance' && /^\p{L}{0,2}\d{1,3}\p{L}?$/u.test(tail)
    const isNamed = words.slice(at).every((word) => /\d|\.\./.test(word) || word === 'to')
    if (!(isSeveral || isOne) || !isNamed) continue
    const positions = readPositions(tail)
    if (positions.understood)
      return { of: words.slice(0, at).join(' ').replace(/ at$/, ''), positions: positions.value }
  }
  return { of: text, positions: [] }
}
