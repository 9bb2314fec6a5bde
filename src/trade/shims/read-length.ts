import { readDecimal } from '../number.ts'
import { readLength } from '../quantity.ts'

/** A length in millimetres. `isBare`: without a unit, so that it may be what is etched on a shim. */
export interface TypedLength {
  mm: number
  isBare: boolean
  typed: string
}

const unit = '(?:mm|in|inch|inches|thou|")'

/** Signs as a keyboard without special ones gives them, and numbers joined with their units: `0.098in`. */
export function joined(text: string): string {
  return text
    .replace(/[\u201c-\u201f\u2033]/gu, '"')
    .replace(/[\u2010-\u2015\u2212]/gu, '-')
    .replace(/…|\.{3,}/gu, '..')
    .replace(/\s+/gu, ' ')
    .replace(new RegExp(`(\\d) (?=${unit}(?![\\p{L}\\d]| steps?))`, 'giu'), '$1')
    .trim()
}

/** Whether a text, joined, has a number in inches. */
export function hasInches(text: string): boolean {
  return /\d(?:in|inch|inches|thou|")(?![\p{L}\d])/iu.test(text)
}

/** Whether a word has the look of a length, understood or not. */
export function looksLikeLength(word: string): boolean {
  return new RegExp(`^[+-]?[\\d.,]*\\d[\\d.,]*${unit}?$`, 'i').test(word)
}

/** Reads a word as a length, in millimetres where it has no unit; undefined when it is none. */
export function lengthFrom(word: string): TypedLength | undefined {
  const bare = readDecimal(word)
  if (bare !== undefined) return { mm: bare, isBare: true, typed: word }
  if (!new RegExp(`^\\d*[.,]?\\d+${unit}$`, 'i').test(word)) return undefined
  const length = readLength(word)
  return length.understood ? { mm: length.value.millimetres, isBare: false, typed: word } : undefined
}

/** Writes the unit of the last number to those without one before it: `0.006 0.098in` is inches both. */
export function withLastUnit(words: readonly string[]): string[] {
  const own = (word: string) => (looksLikeLength(word) ? (/[a-z"]+$/i.exec(word)?.[0] ?? '') : '')
  let last = ''
  return [...words]
    .reverse()
    .map((word) => {
      last = own(word) || last
      return looksLikeLength(word) && own(word) === '' ? `${word}${last}` : word
    })
    .reverse()
}
