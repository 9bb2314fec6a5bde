import type { UnitSystem } from '../../quantity.ts'
import { notUnderstood, type Reading, understood } from '../../reading.ts'
import type { Measurement, MeasurementKind } from '../measurement.ts'
import { NUMBER, UNIT } from './lengths.ts'
import type { MeasuringFault } from './measuring-fault.ts'
import { placeReadings } from './place-readings.ts'
import { INSTRUMENT_IN_LINE, readInstrument } from './read-instrument.ts'
import { readLimits } from './read-limits.ts'
import { readReadings } from './read-readings.ts'

/** What is known of a measurement before its readings: what it is, where, and the grid that they fill. */
export interface MeasurementFrame {
  kind: MeasurementKind
  /** Where the readings were taken, in their order; empty where they say it themselves, or need not. */
  positions: readonly string[]
  /** Whether the user works in inches: then a bare number is in doubt. */
  units?: UnitSystem
  grid?: { rows: number; columns: number; columnStepMm?: number; rowStepMm?: number } | undefined
}

/**
 * Reads a measurement: readings, then in any order what they were read with, the limits, and where those stand:
 * `0.02 0.03 0.05 by 0.01 feeler, max 0.05 manual p. 4-12`. A bare number is millimetres only where nothing is inches.
 */
export function readMeasurement(text: string, frame: MeasurementFrame): Reading<Measurement, MeasuringFault> {
  const { rest: unsourced, found: sourceText } = cut(text.replace(/\s+/gu, ' ').trim(), SOURCE)
  const { rest: bare, found: inFront } = cut(unsourced, INSTRUMENT_IN_LINE)
  const behind = inFront === undefined ? behindSource(sourceText) : null
  const instrumentText = behind?.found ?? inFront
  const source = behind?.rest ?? sourceText
  const at = LIMITS_IN_LINE.exec(bare)?.index ?? bare.length
  const [readingsText, limitsText] = [bare.slice(0, at), bare.slice(at)].map(trimmed) as [string, string]
  const readings = readReadings(readingsText)
  if (!readings.understood) return readings
  const instrument = instrumentText === undefined ? undefined : readInstrument(instrumentText)
  if (instrument?.understood === false) return instrument
  const limits =
    limitsText === '' ? undefined : readLimits(limitsText, { bareIsMost: isDeviation(frame.kind) })
  if (limits?.understood === false) return limits
  if (source !== undefined && !limits) return notUnderstood('limits', source, `${text.trim()} max 0.05`)
  const parts = [
    { typed: readingsText, ...readings.value },
    ...(instrument ? [{ typed: instrumentText ?? '', ...instrument.value }] : []),
    ...(limits ? [{ typed: limitsText, ...limits.value }] : []),
  ]
  const usual = frame.units === 'us' ? 'in' : undefined
  const inches = parts.find((part) => part.inches !== '')?.inches ?? usual
  const inDoubt = inches === undefined ? undefined : parts.find((part) => part.isBare)
  if (inDoubt) return notUnderstood('unit', inDoubt.typed, withUnit(inDoubt.typed, inches ?? ''))
  const negative = isBothWays(frame.kind) ? undefined : readings.value.readings.find(({ mm }) => mm < 0)
  if (negative) return notUnderstood('number', negative.typed, negative.typed.replace('-', ''))
  const taken = placeReadings(frame.kind, readings.value.readings, frame.positions)
  if (!taken.understood) return taken
  const count = taken.value.length
  const { grid } = frame
  if (grid && count !== grid.rows * grid.columns) {
    const rows = Math.max(2, Math.round(count / grid.columns))
    return notUnderstood('count', `${grid.rows}x${grid.columns}`, `${rows}x${grid.columns}`)
  }
  return understood({
    kind: frame.kind,
    readings: taken.value,
    ...(grid && { columns: grid.columns }),
    ...(grid?.columnStepMm !== undefined && { columnStepMm: grid.columnStepMm }),
    ...(grid?.rowStepMm !== undefined && { rowStepMm: grid.rowStepMm }),
    ...(instrument && { instrument: instrument.value.instrument }),
    ...(limits && { limits: { ...limits.value.limits, ...(source !== undefined && { source }) } }),
  })
}

const SOURCE =
  /[,;(\s]+((?:(?:see|from|per) )?(?:the )?(?:(?:service|workshop|repair|shop) )?(?:manual|handbook|data ?sheet|page|pg\.?|p\.)(?=[\s\d,.:)]|$).*?)\)?$/iu
const BEGINS_LIMITS =
  '(?:(?:service |wear )?limits?|max|maximum|min|minimum|(?:at )?most|(?:at )?least|between|up to|not (?:over|under)|no (?:more|less) than|less than|more than|under|ovality|roundness|out[ -]of[ -]round(?:ness)?|taper)(?![\\p{L}])|[≤≥<>]'
/** Where limits begin in a line. */
export const LIMITS_IN_LINE = new RegExp(
  `(?:^|[\\s,;]+)(?=${BEGINS_LIMITS}|${NUMBER}(?: ?${UNIT})?(?: ?(?:\\.\\.|…|±|\\+/?-) ?| to |-)[\\d.,])`,
  'iu',
)

function cut(text: string, pattern: RegExp): { rest: string; found: string | undefined } {
  const match = pattern.exec(text)
  if (!match) return { rest: text, found: undefined }
  const rest = `${text.slice(0, match.index)} , ${text.slice(match.index + match[0].length)}`
  return { rest: trimmed(rest), found: match[1] }
}

/** What was read with, named behind where the limits stand: `manual p. 28 by 0.01 dial`. */
function behindSource(source = ''): { rest: string; found: string } | null {
  const { rest, found } = cut(source, INSTRUMENT_IN_LINE)
  return found !== undefined && rest !== '' && readInstrument(found).understood
    ? { rest: rest.replace(/ ,/g, ','), found }
    : null
}

function trimmed(text: string): string {
  return text.replace(/^[\s,;:]+|[\s,;]+$/gu, '').replace(/\s*,(?:\s*,)+/gu, ',')
}

/** Kinds that are nothing but a fault of form: a bare limit is the most that it may be. */
function isDeviation(kind: MeasurementKind): boolean {
  return /^(?:flatness|flatness-grid|out-of-round|taper|run-out|stretch)$/.test(kind)
}

/** Kinds whose readings go below zero: heights, a dial, an interference. */
function isBothWays(kind: MeasurementKind): boolean {
  return /^(?:flatness-grid|run-out|clearance|stretch)$/.test(kind)
}

/** With a unit behind the last number, which is then that of all. */
function withUnit(typed: string, unit: string): string {
  return typed.replace(/(\d)(?!.*\d)/u, `$1 ${unit}`)
}
