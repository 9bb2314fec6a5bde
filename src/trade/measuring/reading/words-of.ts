import { notUnderstood, type Reading, understood } from '../../reading.ts'
import type { MeasuringFault } from './measuring-fault.ts'

/**
 * The words of a line of readings. A comma with a space, a letter or an end beside it parts words. Between digits it
 * is a decimal comma, unless some number has a decimal point: then it parts numbers that have points themselves, and
 * is in doubt otherwise, as are two in one word.
 */
export function wordsOf(text: string): Reading<string[], MeasuringFault> {
  const rough = text
    .replace(/\s*[:=]+\s*/gu, ': ')
    .replace(/[;\n]/gu, ' ')
    .replace(/,(?=\s|$)|(?<=\s|^),(?=\D)|,(?=[\p{L}"])|(?<=[\p{L}"]),/gu, ' ')
    .split(/\s+/u)
    .filter((word) => word !== '')
  const hasPoint = rough.some((word) => /^[+-]?\d*\.\d/.test(word))
  const words: string[] = []
  for (const word of rough) {
    const parts = partsOf(word, hasPoint)
    if (!parts.understood) return parts
    words.push(...parts.value)
  }
  return understood(words)
}

function partsOf(word: string, hasPoint: boolean): Reading<string[], MeasuringFault> {
  const parts = word.split(',')
  if (parts.length === 1) return understood([word])
  if (/^\p{L}/u.test(word)) {
    // `I1,0.14`: behind a label.
    const [label = '', ...rest] = parts
    const number = partsOf(rest.join(','), hasPoint)
    return number.understood ? understood([label, ...number.value]) : number
  }
  if (/^[+-]?\d{1,3}(?:,\d{3})+\.\d/.test(word)) return notUnderstood('comma', word, word.replaceAll(',', ''))
  const isEachDecimal = parts.every((part) => /^[+-]?\d*\.\d+\D*$/.test(part))
  if (isEachDecimal) return understood(parts)
  if (parts.length === 2 && !hasPoint) return understood([word])
  if (parts.length === 2 && !word.includes('.')) return notUnderstood('comma', word, word.replace(',', '.'))
  return notUnderstood('comma', word, spaced(parts, word))
}

/** `0,02,0,03` was meant as `0,02 0,03`, as far as one can tell. */
function spaced(parts: readonly string[], word: string): string {
  const isPairs = !word.includes('.') && parts.length % 2 === 0 && parts.some((part) => part.length > 1)
  return parts
    .map((part, at) => (isPairs && at % 2 === 0 ? `${part},` : `${part} `))
    .join('')
    .trim()
}
