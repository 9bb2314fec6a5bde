import { inchesToMillimetres, inchText, readDecimal, readFraction, tidy } from './number.ts'
import { notUnderstood, type Reading, understood } from './reading.ts'

/** What a wrench, key or driver bit takes hold of. Sizes are across flats; `inch` is set when typed in inches. */
export type Drive =
  | (FlatSize & {
      kind: 'hex'
      /** The small hexagon of JIS B 1180, when the line says JIS. */
      series?: 'jis'
    })
  | (FlatSize & { kind: 'hex-key' | 'twelve-point' | 'square' })
  /** ISO 10664, by size number: T30 inside, E10 outside. */
  | { kind: 'hexalobular' | 'external-hexalobular'; size: number }
  /** ISO 4757, type H or type Z, by size number. */
  | { kind: 'cross-recess'; form: 'H' | 'Z'; size: number }
  | { kind: 'slot' }

export interface FlatSize {
  acrossFlatsMm: number
  /** The size as written in inches, such as `1/2`. */
  inch?: string
}

/** Why a drive was not understood: nothing there, no form of a drive, or a size that no such drive has. */
export type DriveFault = 'empty' | 'form' | 'size'

type FlatKind = Extract<Drive, FlatSize>['kind']

const flatNames: Record<string, FlatKind> = {
  hex: 'hex',
  hexagon: 'hex',
  'hex head': 'hex',
  af: 'hex',
  'a/f': 'hex',
  'hex key': 'hex-key',
  'hex-key': 'hex-key',
  allen: 'hex-key',
  'allen key': 'hex-key',
  socket: 'hex-key',
  'hex socket': 'hex-key',
  'socket hex': 'hex-key',
  'internal hex': 'hex-key',
  'int hex': 'hex-key',
  inhex: 'hex-key',
  '12pt': 'twelve-point',
  '12 pt': 'twelve-point',
  '12-pt': 'twelve-point',
  '12point': 'twelve-point',
  '12 point': 'twelve-point',
  '12-point': 'twelve-point',
  'bi-hex': 'twelve-point',
  bihex: 'twelve-point',
  square: 'square',
  sq: 'square',
}

const flatText: Record<FlatKind, string> = {
  hex: 'hex',
  'hex-key': 'hex key',
  'twelve-point': '12-point',
  square: 'square',
}

const flatExample: Record<FlatKind, string> = {
  hex: 'hex 10',
  'hex-key': 'hex key 5',
  'twelve-point': '12-point 14',
  square: 'square 8',
}

// Smallest and largest size made, in mm: common practice, from a jeweller's key to a hub nut.
const flatLimits: Record<FlatKind, readonly [number, number]> = {
  hex: [2, 110],
  'hex-key': [0.7, 46],
  'twelve-point': [3, 80],
  square: [2, 60],
}

// ISO 10664 has T6 to T100; the smaller ones, T7, T9 and T27 are common practice, as are all E sizes.
const hexalobularSizes = [
  1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 15, 20, 25, 27, 30, 40, 45, 47, 50, 55, 60, 70, 80, 90, 100,
]
const externalSizes = [4, 5, 6, 7, 8, 10, 11, 12, 14, 16, 18, 20, 22, 24, 28, 32]
const crossSizes = [0, 1, 2, 3, 4]

const names = Object.keys(flatNames)
  .sort((a, b) => b.length - a.length)
  .join('|')
const unit = '(?: ?(?:mm|in|inch|"))?'
const flatForms = [
  new RegExp(`^(?:jis )?(?<name>${names})(?: (?<size>[\\d ./,-]{1,12}))?${unit}(?: jis)?$`),
  new RegExp(`^(?:jis )?(?<size>[\\d./,][\\d ./,-]{0,11}?)${unit} (?<name>${names})(?: jis)?$`),
]

/**
 * Reads the drive of a fastener as a mechanic writes it: `hex 10`, `10 mm hex`, `hex 1/2`, `hex key 5`, `T30`,
 * `E10`, `12-point 14`, `PH2`, `slotted`, `square 8`, `JIS 12 hex`.
 */
export function readDrive(text: string): Reading<Drive, DriveFault> {
  const typed = text.trim()
  const form = tidy(text).toLowerCase()
  if (form === '') return notUnderstood('empty', '', 'hex 10')
  if (/^slot(?:ted)?$/.test(form)) return understood({ kind: 'slot' })
  return readNumbered(form, typed) ?? readFlats(form, typed) ?? notUnderstood('form', typed, 'hex 10')
}

/** A drive as the trade writes it without brand names: `hex 10`, `hex key 5`, `T30`, `12-point 14`, `PH2`. */
export function driveText(drive: Drive): string {
  switch (drive.kind) {
    case 'hexalobular':
      return `T${drive.size}`
    case 'external-hexalobular':
      return `E${drive.size}`
    case 'cross-recess':
      return `P${drive.form}${drive.size}`
    case 'slot':
      return 'slot'
    default: {
      const series = drive.kind === 'hex' && drive.series === 'jis' ? 'JIS ' : ''
      return `${series}${flatText[drive.kind]} ${flatSizeText(drive)}`
    }
  }
}

function flatSizeText(flats: FlatSize): string {
  if (flats.inch === undefined) return String(flats.acrossFlatsMm)
  return flats.inch.includes('/') ? flats.inch : `${flats.inch}"`
}

function readNumbered(form: string, typed: string): Reading<Drive, DriveFault> | undefined {
  const cross = /^p([hz]) ?(\d{1,3})?$/.exec(form) ?? /^cross(?: |-)recess ?()(\d{1,3})?$/.exec(form)
  if (cross) {
    const recess = cross[1] === 'z' ? 'Z' : 'H'
    return sized(crossSizes, cross[2], `P${recess}`, typed, 2, (size) => ({
      kind: 'cross-recess',
      form: recess,
      size,
    }))
  }
  const external =
    /^e ?-?(?:torx )?(\d{1,3})?$/.exec(form) ??
    /^(?:external (?:torx|hexalobular)|torx e) ?e?(\d{1,3})?$/.exec(form)
  if (external) {
    return sized(externalSizes, external[1], 'E', typed, 10, (size) => ({
      kind: 'external-hexalobular',
      size,
    }))
  }
  const inside = /^(?:t|(?:internal )?(?:torx|hexalobular)(?: t)?) ?(\d{1,3})?$/.exec(form)
  if (inside)
    return sized(hexalobularSizes, inside[1], 'T', typed, 30, (size) => ({ kind: 'hexalobular', size }))
  return undefined
}

function sized(
  sizes: readonly number[],
  number: string | undefined,
  prefix: string,
  typed: string,
  example: number,
  drive: (size: number) => Drive,
): Reading<Drive, DriveFault> {
  if (number === undefined) return notUnderstood('size', typed, `${prefix}${example}`)
  const size = Number(number)
  if (sizes.includes(size)) return understood(drive(size))
  const near = sizes.reduce((best, each) => (Math.abs(each - size) < Math.abs(best - size) ? each : best))
  return notUnderstood('size', typed, `${prefix}${near}`)
}

function readFlats(form: string, typed: string): Reading<Drive, DriveFault> | undefined {
  const groups = flatForms.map((pattern) => pattern.exec(form)?.groups).find(Boolean)
  const { name = '', size } = groups ?? {}
  const kind = flatNames[name]
  if (!kind) return undefined
  const [smallest, largest] = flatLimits[kind]
  const flats = readFlatSize(size?.trim(), /(?:in|inch|")(?: |$)/.test(form))
  if (!flats || flats.acrossFlatsMm < smallest || flats.acrossFlatsMm > largest) {
    return notUnderstood('size', typed, flatExample[kind])
  }
  return understood(
    kind === 'hex' && /\bjis\b/.test(form) ? { kind, ...flats, series: 'jis' } : { kind, ...flats },
  )
}

/** A fraction is inches; a decimal number is millimetres unless an inch sign stands behind it. */
function readFlatSize(text: string | undefined, hasInchSign: boolean): FlatSize | undefined {
  if (text === undefined) return undefined
  const size = readFraction(text)
  if (size === undefined || size <= 0) return undefined
  if (readDecimal(text) !== undefined && !hasInchSign) return { acrossFlatsMm: size }
  const acrossFlatsMm = inchesToMillimetres(size)
  return { acrossFlatsMm, inch: inchText(acrossFlatsMm) }
}
