import { notUnderstood, type Reading, understood } from '../../reading.ts'
import type { Instrument, InstrumentKind } from '../measurement.ts'
import { isInches, joined, millimetresOf, NUMBER, numberFrom, UNIT } from './lengths.ts'
import type { MeasuringFault } from './measuring-fault.ts'

export interface ReadInstrument {
  instrument: Instrument
  isBare: boolean
  /** The unit of inches that some number has; empty where none has. */
  inches: string
}

// Names in the trade, without makers.
const names: readonly [InstrumentKind, string][] = [
  ['feeler', 'feelers?(?: gau?ges?| blades?| leaves)?'],
  ['bore-gauge', '(?:bore|telescopic|three-point) gau?ges?'],
  ['dial', 'dial(?: gau?ges?| indicators?)?|indicators?|dti'],
  ['micrometer', '(?:inside |outside |depth )?micrometers?|mics?'],
  ['caliper', '(?:vernier |slide )?call?ipers?|vernier'],
  ['plastic-strip', '(?:plastic |gau?ging )?strips?'],
]
const anyName = names.map(([, name]) => name).join('|')
const amount = `${NUMBER}(?: ?${UNIT})?`
const behindWord = `(?:with |by )?(?:an? |the )?(?:${anyName})(?: (?:by|to|of|reading to|in steps of))? ${amount}`
const behindBy = `(?:by|to|reading to|in steps of) ${amount}(?: (?:steps )?(?:with )?(?:${anyName}))?`
const before = `${amount} (?:${anyName})`
const whole = new RegExp(`^(?:${behindWord}|${behindBy}|${before})$`, 'iu')

const inLine = [
  behindWord,
  `by ${amount}(?: (?:steps )?(?:with )?(?:${anyName}))?`,
  // A comma between two figures is a decimal one.
  `(?<=[,;] |;|(?<!\\d),)${before}`,
  `(?:with )?(?:an? |the )?(?:${anyName})`,
].join('|')

/** Where an instrument stands in a line; `0.02 dial` is one behind a comma only, for else it may be a reading. */
export const INSTRUMENT_IN_LINE = new RegExp(`(?:^|[\\s,;]+)(${inLine})(?=$|[\\s,;:])`, 'iu')

// A tape measure has whole millimetres; nothing coarser is an instrument.
const coarsestMm = 1

/** Reads what was measured with: `by 0.01`, `feeler 0.01`, `0.02 dial`, `by 0.0001 in micrometer`. */
export function readInstrument(text: string): Reading<ReadInstrument, MeasuringFault> {
  const form = joined(text)
  const typed = text.trim()
  if (form === '') return notUnderstood('empty', '', 'by 0.01')
  const kind = names.find(([, name]) =>
    new RegExp(`(?<![\\p{L}])(?:${name})(?![\\p{L}])`, 'iu').test(form),
  )?.[0]
  const number = whole.test(form) ? form.split(' ').flatMap((word) => numberFrom(word) ?? [])[0] : undefined
  const resolutionMm = number && millimetresOf(number)
  if (number === undefined || resolutionMm === undefined || resolutionMm <= 0 || resolutionMm > coarsestMm) {
    return notUnderstood('resolution', typed, kind ? `${kind.replace('-', ' ')} by 0.01` : 'by 0.01')
  }
  return understood({
    instrument: { resolutionMm, typed, ...(kind && { kind }) },
    isBare: number.unit === '',
    inches: isInches(number.unit) ? number.unit : '',
  })
}
