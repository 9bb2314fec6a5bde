import { readDecimal, withoutNoise } from '../number.ts'

const number = '\\d{1,9}(?:[.,]\\d{1,9})?'
const unit = '[^\\d\\s.,/+±-][^\\d±]*?'
const tolerance = new RegExp(
  `^\\+? ?(${number}) ?(${unit})? ?(?:±|\\+ ?/ ?-) ?(${number}) ?(%|${unit})?$`,
  'i',
)
const range = new RegExp(
  `^\\+? ?(${number}) ?(${unit})? ?(?:\\.\\.|-|\\bto\\b) ?(${number}) ?(${unit})$`,
  'i',
)

/**
 * The middle of a tolerance or a range, with its unit: `40 Nm` of `40 ± 4 Nm`, `40 Nm ± 10 %`, `36..44 Nm`, `36-44 Nm`.
 * Undefined where a text is neither; `wrong` where the units differ, the ends are the wrong way round or the tolerance
 * is as large as the value. For texts that are tidied.
 */
export function middleOf(form: string): string | 'wrong' | undefined {
  const plusMinus = tolerance.exec(form)
  if (plusMinus) return ofTolerance(plusMinus)
  const ends = range.exec(form)
  return ends ? ofRange(ends) : undefined
}

/** The figures of a text, each with its unit: the ends of a range, the value of a tolerance, else the text itself. */
export function endsOf(form: string): string[] {
  const [, low, , high, unit] = range.exec(form) ?? []
  if (low !== undefined && high !== undefined) return [`${low} ${unit}`, `${high} ${unit}`]
  return [middleOf(form) ?? form]
}

function ofTolerance([, middle = '', first, by = '', last]: RegExpExecArray): string {
  const [value, off] = [readDecimal(middle), readDecimal(by)]
  const isShare = last === '%'
  const unit = first ?? (isShare ? undefined : last)
  if (value === undefined || off === undefined || unit === undefined) return 'wrong'
  if (off >= (isShare ? 100 : value)) return 'wrong'
  if (last !== undefined && !isShare && !isSame(unit, last)) return 'wrong'
  return `${middle} ${unit}`
}

function ofRange([, lowest = '', first, highest = '', last = '']: RegExpExecArray): string {
  const [low, high] = [readDecimal(lowest), readDecimal(highest)]
  if (low === undefined || high === undefined || low >= high) return 'wrong'
  if (first !== undefined && !isSame(first, last)) return 'wrong'
  return `${withoutNoise((low + high) / 2)} ${last}`
}

function isSame(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase()
}
