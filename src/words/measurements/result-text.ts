import type { Lacking, MeasuredResult } from '../../trade/measuring/judged.ts'
import type { Measurement } from '../../trade/measuring/measurement.ts'
import type { Verdict } from '../../trade/measuring/verdict.ts'

/** A verdict in a word or three. Out is written large, so that it is seen without colour. */
export const VERDICTS: Record<Verdict, string> = { in: 'in', out: 'OUT', 'too-close': 'too close to call' }

/** A result with its arithmetic and its verdict: `I1 28.03 - 27.98 = 0.05 mm, in`. */
export function resultText(result: MeasuredResult, measurement: Measurement): string {
  const amount = amountIn(measurement)
  const { from, mm, verdict } = result
  const sum = from
    ? `${number(from[0], measurement)} - ${number(from[1], measurement)} = ${amount(mm)}`
    : amount(mm)
  return [
    placeText(result),
    sum,
    pointsText(result),
    verdict === null ? '' : `, ${verdictText(result, amount)}`,
  ]
    .filter((part) => part !== '')
    .join(' ')
    .replace(/ , /g, ', ')
}

function placeText({ what, at, height, axis, spanMm }: MeasuredResult): string {
  const place = [at, height, height === undefined && axis !== undefined ? `axis ${axis}` : axis]
    .filter((part) => part !== undefined)
    .join(' ')
  return [
    WHATS[what] ?? '',
    place,
    what === 'flatness-in-span' && spanMm !== undefined ? `within ${spanMm} mm` : '',
  ]
    .filter((part) => part !== '')
    .join(' ')
}

/** Said where one measurement comes to several things. */
const WHATS: Partial<Record<MeasuredResult['what'], string>> = {
  'flatness-in-span': '',
  'out-of-round': 'out-of-round',
  taper: 'taper',
}

function pointsText({ peak, valley }: MeasuredResult): string {
  return peak === undefined || valley === undefined ? '' : `from ${peak} down to ${valley}`
}

function verdictText(result: MeasuredResult, amount: (mm: number) => string): string {
  const { verdict, mm, lowMm, highMm, mostMm, leastMm, nearMm = mm, decidesMm } = result
  if (verdict === 'in') return VERDICTS.in
  if (verdict === 'too-close') {
    const decides =
      decidesMm === undefined ? 'it is read as the limit itself' : `steps of ${amount(decidesMm)} decide`
    return `${VERDICTS['too-close']}: ${amount(lowMm)} to ${amount(highMm)} at a limit of ${amount(nearMm)}, ${decides}`
  }
  const isOver = mostMm !== undefined && mm > mostMm
  const limit = isOver ? mostMm : (leastMm ?? mm)
  return mm === limit
    ? `${VERDICTS.out}: less than the limit of ${amount(limit)}`
    : `${VERDICTS.out}: ${amount(Math.abs(mm - limit))} ${isOver ? 'over' : 'under'} the limit of ${amount(limit)}`
}

/** What a measurement lacks, as a question or what is to be said. */
export function lackingText({ what, at }: Lacking): string {
  const where = at === undefined ? '' : ` at ${at}`
  switch (what) {
    case 'limits':
      return 'no limit was given, so there is no verdict: the manual has it'
    case 'resolution':
      return 'what does the instrument read to? It decides what is too close to call: measure again, with by N or feeler N'
    case 'span':
      return `the gap${where} is over the limit for a span: was it found within one? Write over and the length behind it`
    case 'spacing':
      return 'how far apart are the points of the grid? Write every and the distance behind its rows and columns'
    case 'grid':
      return 'a grid has two rows or more, of as many readings each'
    case 'inches':
      return 'read as millimetres all of it is out, as inches all of it would be in: was the unit left out?'
    case 'second-axis':
      return `out-of-round${where} needs two axes at one height, such as top x and top y`
    case 'second-height':
      return `taper${where} needs two heights along one axis, such as top x and bottom x`
    case 'bore':
    case 'journal':
    case 'before':
    case 'after':
      return `the ${NOUNS[what]}${where} is missing`
    default:
      return what satisfies never
  }
}

const NOUNS = {
  bore: 'bore',
  journal: 'journal',
  before: 'length before',
  after: 'length after',
} as const

/** Lengths in the unit in which the readings were typed. */
function amountIn(measurement: Measurement): (mm: number) => string {
  return (mm) => `${number(mm, measurement)} ${isInches(measurement) ? 'in' : 'mm'}`
}

/** With the places in which the readings were typed, and more only where the value has more. */
function number(mm: number, measurement: Measurement): string {
  const value = isInches(measurement) ? mm / 25.4 : mm
  const typed = measurement.readings.map(({ typed }) => /[.,](\d+)/.exec(typed)?.[1]?.length ?? 0)
  const rounded = Number(value.toFixed(isInches(measurement) ? 5 : 4)) + 0
  const places = Math.min(4, Math.max(...typed))
  return Number(rounded.toFixed(places)) === rounded ? rounded.toFixed(places) : String(rounded)
}

function isInches({ readings }: Measurement): boolean {
  return readings.every(({ typed }) => /(?:thou|in|inch|inches|")$/i.test(typed))
}
