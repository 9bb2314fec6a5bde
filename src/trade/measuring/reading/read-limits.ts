import { tidy } from '../../number.ts'
import { notUnderstood, type Reading, understood } from '../../reading.ts'
import { exact } from '../bounds.ts'
import type { MeasuredLimits } from '../measurement.ts'
import { withoutTwins } from './dual-units.ts'
import {
  isInches,
  isMeasurable,
  joined,
  millimetresOf,
  NUMBER,
  numberFrom,
  type TypedNumber,
  UNIT,
  withUnit,
} from './lengths.ts'
import type { MeasuringFault } from './measuring-fault.ts'

export interface Limits {
  limits: MeasuredLimits
  isBare: boolean
  /** The unit of inches that some number has; empty where none has. */
  inches: string
}

/**
 * Reads limits: `0.13..0.17`, `0.13 to 0.17 mm`, `max 0.05`, `min 6.9`, `0.15 ± 0.02`, `0.10 mm (0.004 in)`,
 * `0.005 in per 6 in and 0.010 in overall`, `75.99..76.01, out-of-round max 0.02, taper max 0.03`. One bare number is
 * the most where `bareIsMost`, and is asked about otherwise. Figures printed in both units have to agree.
 */
export function readLimits(
  text: string,
  { bareIsMost }: { bareIsMost: boolean },
): Reading<Limits, MeasuringFault> {
  const typed = text.trim()
  if (typed === '') return notUnderstood('empty', '', 'max 0.05')
  const single = withoutTwins(tidy(text))
  if (!single.understood) return single
  const found: Found = {}
  for (const clause of clausesOf(joined(single.value))) {
    const parts = readClause(clause, bareIsMost)
    if (!parts.understood) return parts
    const isTwice = Object.keys(parts.value).some((part) => Object.hasOwn(found, part))
    if (isTwice) return notUnderstood('limits', clause, nearestForm(clause))
    Object.assign(found, parts.value)
  }
  return inMillimetres(found, typed)
}

type Part = 'least' | 'most' | 'mostInSpan' | 'span' | 'outOfRoundMost' | 'taperMost'
type Found = Partial<Record<Part, TypedNumber>>

const amount = `(${NUMBER}${UNIT}?)`
const most =
  '(?:(?:at )?most|max(?:imum)?\\.?|up to|not over|no more than|less than|under|<=|≤|<|(?:service |wear )?limits?(?: is)?)'
const least = '(?:(?:at )?least|min(?:imum)?\\.?|not under|no less than|more than|>=|≥|>)'
const pattern = (form: string) => new RegExp(`^${form}$`, 'iu')

const range = pattern(`(?:limits? |between |from )?${amount} ?(?:\\.\\.|-|to|and) ?${amount}`)
const either = pattern(`(?:limits? )?${amount} ?(?:±|\\+/-|\\+-) ?${amount}`)
const apart = pattern(`(?:limits? )?${amount} \\+${amount} ?/? ?-${amount}`)
const inSpan = pattern(
  `(?:limits? )?(?:${most} )?${amount} (?:max )?(?:per|within|over|in any|in) (?:any )?${amount}(?: in any direction)?`,
)
const overall = pattern(
  `(?:limits? )?(?:overall |total )?(?:${most} )?${amount}(?: max)? (?:overall|total|in all|anywhere)`,
)
const atMost = pattern(`(?:limits? )?(?:overall |total )?${most} ?${amount}`)
const atMostBehind = pattern(`(?:limits? )?${amount} (?:max(?:imum)?\\.?|or less|at most)`)
const atLeast = pattern(`(?:limits? )?${least} ?${amount}`)
const atLeastBehind = pattern(`(?:limits? )?${amount} (?:min(?:imum)?\\.?|or more|at least)`)
const outOfRound = pattern(
  `(?:out[ -]of[ -]round(?:ness)?|ovality|roundness) (?:${most} )?${amount}(?: max)?`,
)
const taper = pattern(`taper (?:${most} )?${amount}(?: max)?`)
const bare = pattern(amount)

function readClause(clause: string, bareIsMost: boolean): Reading<Found, MeasuringFault> {
  const numbers = (form: RegExp) =>
    form
      .exec(clause)
      ?.slice(1)
      .map((word) => numberFrom(word ?? ''))
  const [centre, tolerance] = numbers(either) ?? []
  if (centre && tolerance) return understood(around(centre, tolerance, tolerance))
  const [nominal, plus, minus] = numbers(apart) ?? []
  if (nominal && plus && minus) return understood(around(nominal, plus, minus))
  const [within, span] = numbers(inSpan) ?? []
  if (within && span) return understood({ mostInSpan: within, span })
  const ends = numbers(range) ?? []
  if (ends[0] && ends[1]) return understood({ least: sharing(ends[0], ends[1]), most: ends[1] })
  for (const [form, part] of [
    [outOfRound, 'outOfRoundMost'],
    [taper, 'taperMost'],
    [overall, 'most'],
    [atMost, 'most'],
    [atMostBehind, 'most'],
    [atLeast, 'least'],
    [atLeastBehind, 'least'],
  ] as const) {
    const [only] = numbers(form) ?? []
    const isSingle =
      /^limits? /i.test(clause) && part === 'most' && !new RegExp(`^limits? ${most}`, 'i').test(clause)
    if (only && isSingle && !bareIsMost) return notUnderstood('bare-limit', clause, `max ${only.typed}`)
    if (only) return understood({ [part]: only })
  }
  const [only] = numbers(bare) ?? []
  if (only && bareIsMost) return understood({ most: only })
  if (only) return notUnderstood('bare-limit', clause, `max ${only.typed}`)
  return notUnderstood('limits', clause, nearestForm(clause))
}

/** `min 6.9, max 7.1`; a comma between two digits is a decimal comma, an `and` behind `between` parts nothing. */
function clausesOf(form: string): string[] {
  return form
    .replace(new RegExp(`(\\bbetween ${NUMBER}${UNIT}?) and `, 'giu'), '$1..')
    .replace(/^(limits?):/iu, '$1')
    .replace(/^limits? (?=\D)/iu, '')
    .replace(new RegExp(`(?<=${UNIT}|\\d) (?=${most} |${least} )`, 'giu'), ', ')
    .split(/;|,(?!\d)|(?<!\d),|\band\b|&/iu)
    .map((clause) => clause.replace(/\s+/gu, ' ').trim())
    .filter((clause) => clause !== '')
}

/** Both ends of a range have the unit of the second. */
function sharing(first: TypedNumber, second: TypedNumber): TypedNumber {
  return first.unit === '' ? withUnit(first, second.unit) : first
}

function around(typed: TypedNumber, plus: TypedNumber, minus: TypedNumber): Found {
  const unit = typed.unit || plus.unit || minus.unit
  const nominal = { ...typed, unit }
  const offset = (by: number): TypedNumber => ({ ...nominal, number: exact(nominal.number + by) })
  return { least: offset(-Math.abs(minus.number)), most: offset(Math.abs(plus.number)) }
}

function inMillimetres(found: Found, typed: string): Reading<Limits, MeasuringFault> {
  const numbers = Object.values(found)
  const [inches] = numbers.filter(({ unit }) => isInches(unit))
  const wrong = numbers.find(
    (number) => !isMeasurable(number) || (number === found.span && number.number <= 0),
  )
  if (wrong) return notUnderstood('limits', wrong.typed, 'max 0.05')
  const isBare = ({ unit }: TypedNumber) => unit === ''
  const first = numbers.find(isBare)
  if (inches && first) return notUnderstood('unit', first.typed, `${first.typed} ${inches.unit}`)
  const mm = (number: TypedNumber | undefined) => (number ? millimetresOf(number) : undefined)
  const [leastMm, mostMm] = [mm(found.least), mm(found.most)]
  if (found.least && found.most && leastMm !== undefined && mostMm !== undefined && leastMm > mostMm) {
    return notUnderstood('turned-round', typed, `${found.most.typed}..${found.least.typed}`)
  }
  const parts: [keyof MeasuredLimits, number | undefined][] = [
    ['leastMm', leastMm],
    ['mostMm', mostMm],
    ['mostInSpanMm', mm(found.mostInSpan)],
    ['spanMm', mm(found.span)],
    ['outOfRoundMostMm', mm(found.outOfRoundMost)],
    ['taperMostMm', mm(found.taperMost)],
  ]
  return understood({
    limits: { typed, ...Object.fromEntries(parts.filter(([, value]) => value !== undefined)) },
    isBare: numbers.every(isBare),
    inches: inches?.unit ?? '',
  })
}

/** The figures of a clause in a form that is understood; no other ones, for limits are never made up. */
function nearestForm(clause: string): string {
  const [first, second] = clause
    .split(/[^\d.,/a-z"µμ]+|\.\./iu)
    .flatMap((word) => numberFrom(word) ?? [])
    .map(({ typed }) => typed)
  if (first === undefined) return 'max 0.05'
  return second === undefined ? `max ${first}` : `${first}..${second}`
}
