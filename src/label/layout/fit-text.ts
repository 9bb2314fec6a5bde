import type { Weight } from '../drawing.ts'
import type { Typeface } from '../typeface.ts'
import { bottomOf, type Column, type Span, spanAt } from './column.ts'
import { lettersOf, shorten } from './shorten.ts'
import { ascent, pitch } from './type-sizes.ts'

export interface Style {
  typeface: Typeface
  size: number
  weight: Weight
  /** Left free on each side of a line, for the ground of reversed text. */
  pad?: number | undefined
  /** Words too long for any line may be broken, which is for the smallest size only; `anywhere` before they move down. */
  breaks?: boolean | 'anywhere' | undefined
}

export interface SetLine {
  text: string
  x: number
  baseline: number
  width: number
  /** All the line may take, from side to side. */
  span: Span
  top: number
}

export interface SetText {
  lines: SetLine[]
  bottom: number
  shortened: boolean
}

/**
 * Sets a text from the top of the column down, in at most so many lines; what does not fit is shortened. Null when not
 * even that fits, or nothing may be cut.
 */
export function fitText(
  text: string,
  style: Style,
  column: Column,
  most = Number.POSITIVE_INFINITY,
): SetText | null {
  const whole = setText(text, style, column, most)
  if (whole) return whole
  const short = shorten(text, (candidate) => setText(candidate, style, column, most) !== null)
  const set = short === null ? null : setText(short, style, column, most)
  return set && { ...set, shortened: true }
}

/** Sets a text from the top of the column down, each line as wide as the column is there; null when it does not fit. */
export function setText(
  text: string,
  style: Style,
  column: Column,
  most = Number.POSITIVE_INFINITY,
): SetText | null {
  const { typeface, size, weight, pad = 0, breaks = true } = style
  const height = size * pitch
  const widthOf = (part: string) => typeface.widthOf(part, size, weight)
  const lines: SetLine[] = []
  let rest = unitsOf(text)
  let top = column.area.y
  while (rest.length > 0) {
    if (lines.length >= most) return null
    if (top + height > bottomOf(column) + tolerance) return null
    const span = spanAt(column, top, top + height)
    const room = span.width - 2 * pad
    const line = takeLine(rest, { room, widest: column.area.width - 2 * pad, breaks, widthOf })
    if (line) {
      const { text, width } = line
      lines.push({ text, x: span.x + pad, baseline: top + ascent * size, width, span, top })
      rest = line.rest
      top += height
    } else {
      // Too narrow between two symbols: the next place down may be wider.
      top += 0.5
    }
  }
  return { lines, bottom: top, shortened: false }
}

// Lengths come from sums of parts; a micrometre is no overlap.
const tolerance = 0.001

/** What stays on one line where it can: a count with its name, a word with its number, a sign with its word. */
function unitsOf(text: string): string[] {
  const units: string[] = []
  let glue = false
  for (const word of text.split(' ')) {
    const previous = units.at(-1)
    const number = /^\p{N}{1,3}[,.;]?$/u.test(word)
    // A number that begins something counts what follows; another one belongs to the word before.
    const counts = number && (previous === undefined || previous.endsWith('·'))
    const joins = glue || word === '×' || word === '·' || (number && !counts)
    if (previous !== undefined && joins && previous.length + word.length < 20) {
      units[units.length - 1] = `${previous} ${word}`
    } else if (word !== '') units.push(word)
    glue = counts || ['×', '→', '↔', '!'].includes(word)
  }
  return units
}

interface Measure {
  /** What the line holds. */
  room: number
  /** What a line holds that nothing stands beside. */
  widest: number
  breaks: boolean | 'anywhere'
  widthOf: (text: string) => number
}

interface TakenLine {
  text: string
  width: number
  rest: string[]
}

function takeLine(units: readonly string[], measure: Measure): TakenLine | null {
  const { room, widthOf } = measure
  let text = ''
  let taken = 0
  for (const unit of units) {
    const longer = text === '' ? unit : `${text} ${unit}`
    if (widthOf(longer) > room) break
    text = longer
    taken++
  }
  if (taken > 0) return { text, width: widthOf(text), rest: units.slice(taken) }
  return takeLetters(units, measure)
}

/** Breaks a unit that is wider than any line: at a space, else after a hyphen or a slash, else within the word. */
function takeLetters([unit = '', ...others]: readonly string[], measure: Measure): TakenLine | null {
  const { room, widest, breaks, widthOf } = measure
  const fitsBelow = breaks !== 'anywhere' && widthOf(unit) <= widest
  const words = unit.split(' ')
  if (words.length > 1) return fitsBelow ? null : takeLine([...words, ...others], measure)
  const letters = lettersOf(unit)
  const good = fittingLetters(letters, room, widthOf)
  // A line of one or two letters is no reading.
  if (good < 3) return null
  const seam = letters.slice(3, good).findLastIndex((letter) => /[-–/,.]/.test(letter))
  const long = letters.length > longWord
  const atSeam = long && seam !== -1
  if (!atSeam && (fitsBelow || !breaks)) return null
  const kept = seam === -1 ? Math.min(good, Math.max(3, letters.length - 3)) : seam + 4
  const text = letters.slice(0, kept).join('')
  return { text, width: widthOf(text), rest: [letters.slice(kept).join(''), ...others] }
}

// A longer word is better broken at its hyphen than moved down past a symbol.
const longWord = 15

function fittingLetters(letters: readonly string[], room: number, widthOf: (text: string) => number): number {
  let [good, bad] = [0, letters.length + 1]
  while (bad - good > 1) {
    const middle = (good + bad) >> 1
    if (widthOf(letters.slice(0, middle).join('')) <= room) good = middle
    else bad = middle
  }
  return good
}
