import { inchesToMillimetres, inchText, readFraction } from './number.ts'
import { notUnderstood, type Reading, understood } from './reading.ts'
import type { Thread, ThreadFault } from './thread.ts'
import { type InchSeries, taperPipeSeries, unifiedSeries } from './thread-series.ts'

const shortestInches = 1 / 32
const longestInches = 40

const inchForm =
  /^(#|no\.? ?)?((?:\d{1,2}[ -])?\d{1,2}\/\d{1,2}|\d{1,2})(?:-(\d{1,3}(?:\.5|-1\/2)?))?(?:[ -]?(unc|unf|unef|uns|un|nptf?))?(?:x([\d ./,-]{1,12}))?$/

/**
 * Reads a unified or taper pipe thread in its tidy form, such as `3/8-16x1-1/2` or `1/4 npt`. Called by `readThread`.
 * A size without its threads per inch is taken as coarse only where a length or `UNC` shows that it is a thread.
 * @param form lower case, with no spaces around `-` and `x`
 */
export function readInchThread(form: string, typed: string): Reading<Thread, ThreadFault> {
  const match = inchForm.exec(form.replace(/"|(?<=\d) ?in(?:ch)?(?=[x-]|$)/g, ''))
  if (!match) return notUnderstood('form', typed, '3/8-16x1-1/2')
  const [, number, sizeText = '', perInchText, series, lengthText] = match
  const perInch = perInchText === undefined ? undefined : readFraction(perInchText)
  if (series?.startsWith('npt')) return readTaperPipe(sizeText, perInch, lengthText, typed)
  const size = unifiedSize(number !== undefined, sizeText, perInch)
  if (!size) return notUnderstood('size', typed, nearestSize(number !== undefined, sizeText))
  return readUnified(size, perInch, series, lengthText, typed)
}

function readUnified(
  size: InchSeries,
  perInch: number | undefined,
  series: string | undefined,
  lengthText: string | undefined,
  typed: string,
): Reading<Thread, ThreadFault> {
  const usual = size.coarse ?? size.fine
  const named = series === 'unc' ? size.coarse : series === 'unf' ? size.fine : undefined
  // A bare whole number or fraction is a measure of anything; `1x2` is no thread.
  const isThread = perInch ?? named ?? (size.size.length > 1 ? lengthText : undefined)
  const isMatch = named === undefined || perInch === undefined || named === perInch
  if (isThread === undefined || !isMatch || (perInch !== undefined && (perInch < 3 || perInch > 100))) {
    return notUnderstood('pitch', typed, `${size.size}-${named ?? usual}`)
  }
  const stated = perInch ?? named
  const pitch = stated ?? usual
  const length = lengthText === undefined ? undefined : inchLength(lengthText)
  if (lengthText !== undefined && length === undefined) {
    return notUnderstood('length', typed, `${size.size}-${pitch}x${nearestLength(lengthText)}`)
  }
  return understood({
    system: 'unified',
    size: size.size,
    diameterMm: inchesToMillimetres(size.diameterInches),
    ...(pitch !== undefined && { pitchMm: 25.4 / pitch }),
    pitchAssumed: stated === undefined,
    ...(length !== undefined && { lengthMm: inchesToMillimetres(length) }),
    typed,
  })
}

function readTaperPipe(
  sizeText: string,
  perInch: number | undefined,
  lengthText: string | undefined,
  typed: string,
): Reading<Thread, ThreadFault> {
  const size = taperPipeSeries.get(lowestTerms(sizeText))
  if (size?.coarse === undefined) return notUnderstood('size', typed, '1/4 NPT')
  if (perInch !== undefined && perInch !== size.coarse) {
    return notUnderstood('pitch', typed, `${size.size} NPT`)
  }
  if (lengthText !== undefined) return notUnderstood('length', typed, `${size.size} NPT`)
  return understood({
    system: 'npt',
    size: size.size,
    diameterMm: inchesToMillimetres(size.diameterInches),
    pitchMm: 25.4 / size.coarse,
    pitchAssumed: false,
    typed,
  })
}

/** `10-32` without its `#` is a numbered size where that size has these threads: there is no 10 inch screw. */
function unifiedSize(isNumbered: boolean, sizeText: string, perInch?: number): InchSeries | undefined {
  const numbered = unifiedSeries.get(`#${sizeText}`)
  if (isNumbered) return numbered
  if (numbered && perInch !== undefined && [numbered.coarse, numbered.fine].includes(perInch)) return numbered
  return unifiedSeries.get(lowestTerms(sizeText))
}

function lowestTerms(sizeText: string): string {
  const inches = readFraction(sizeText)
  return inches === undefined ? sizeText : inchText(inchesToMillimetres(inches))
}

/** A decimal number, or a fraction of a rule: halves to sixty-fourths. */
function inchLength(text: string): number | undefined {
  const inches = readFraction(text.trim())
  const denominator = /\/(\d+)$/.exec(text.trim())?.[1]
  if (denominator !== undefined && !/^(?:2|4|8|16|32|64)$/.test(denominator)) return undefined
  return inches !== undefined && inches >= shortestInches && inches <= longestInches ? inches : undefined
}

function nearestLength(text: string): string {
  const millimetres = readFraction(text.trim())
  return millimetres === undefined || millimetres <= longestInches
    ? '1-1/2'
    : inchText(closeInches(millimetres))
}

// Someone who writes 1/4-20x50 means 50 mm: nearest in eighths of an inch.
function closeInches(millimetres: number): number {
  const inches = Math.min(longestInches, Math.round((millimetres / 25.4) * 8) / 8)
  return inchesToMillimetres(inches)
}

function nearestSize(isNumbered: boolean, sizeText: string): string {
  const number = readFraction(sizeText) ?? 0
  // ASME B1.1: a numbered size is 0.060 in and 0.013 in more for each number.
  const wanted = isNumbered ? 0.06 + 0.013 * number : number
  let near = '3/8-16'
  let distance = Number.POSITIVE_INFINITY
  for (const { size, diameterInches, coarse } of unifiedSeries.values()) {
    if (size.startsWith('#') !== isNumbered || coarse === undefined) continue
    if (Math.abs(diameterInches - wanted) >= distance) continue
    distance = Math.abs(diameterInches - wanted)
    near = `${size}-${coarse}`
  }
  return near
}
