import { SIGNS } from '../signs.ts'
import { type Line, textOf } from '../text/line.ts'

/** A part of a row that is read by itself; with its number where typing one chooses it. */
export interface SpokenPart {
  no: number | null
  text: string
}

/** What a row says to the ear: nothing where it is there for the eye alone. Choices beside each other come apart. */
export function spokenRow(row: Line): SpokenPart[] {
  if (row.some(({ tone }) => FOR_THE_EYE.has(tone))) return []
  const parts: { no: number | null; text: string }[] = []
  for (const { text, tone } of row) {
    const isNumber = tone === 'strong' && /^\s*\d{1,4}$/.test(text)
    const last = parts.at(-1)
    // A number is a choice where a row begins, or after a gap.
    if (isNumber && (!last || last.text.endsWith('  '))) parts.push({ no: Number(text), text: '' })
    else if (last) last.text += last.text.trim() === '' ? label(text, tone) : text
    else parts.push({ no: null, text: label(text, tone) })
  }
  return parts
    .map(({ no, text }) => ({ no, text: spokenText(text) }))
    .filter(({ no, text }) => no !== null || text !== '')
}

/** A word in capitals that stands out before the rest of its row says what the row is. */
function label(text: string, tone: string): string {
  return tone === 'strong' && /^\s*[A-Z]{2}[A-Z ]*$/.test(text) ? `${text.trim().toLowerCase()}: ` : text
}

/** Letters, symbols and drawings that are made of characters. */
const FOR_THE_EYE = new Set(['large', 'raw', 'drawn'])

/** Whether a row is the heading of those under it: a few words in capitals, standing out. */
export function isHeading(row: Line): boolean {
  const [first] = row
  return (
    row.length === 1 && first?.tone === 'strong' && !/^\s/.test(first.text) && /^[A-Z]{2}/.test(first.text)
  )
}

/** A heading or a title without its capitals, which some voices spell out. */
export function spokenHeading(row: Line): string {
  return row
    .map(({ text, tone }) =>
      tone === 'strong' ? text.replace(/^\s*[A-Z]{2}[A-Z ]*(?![a-z])/, (word) => word.toLowerCase()) : text,
    )
    .join('')
}

/** Words in place of signs, commas in place of columns. */
function spokenText(text: string): string {
  return withoutSigns(text)
    .replace(/^\s*[·-]\s+/, '')
    .replace(/\s+·\s+/g, ', ')
    .replace(/\s{2,}/g, ', ')
    .replace(/(?:,\s*)+,\s*/g, ', ')
    .replace(/([.:;!?]),\s/g, '$1 ')
    .replace(/\s+,/g, ',')
    .replace(/^[\s,]+|[\s,]+$/g, '')
}

/** The text as a sentence: begun large, and ended. */
export function sentence(text: string): string {
  const spoken = spokenText(text)
  if (spoken === '') return ''
  const whole = /[.!?:]["')]?$/.test(spoken) ? spoken : `${spoken}.`
  return whole.charAt(0).toUpperCase() + whole.slice(1)
}

/** A whole row as one sentence. */
export function rowSentence(row: Line): string {
  return row.some(({ tone }) => FOR_THE_EYE.has(tone)) ? '' : sentence(textOf(row))
}

/** Every state by its word alone. Its sign says the same to the eye. */
function withoutSigns(text: string): string {
  return text
    .replace(CHIP, (_, before: string, word: string) => `${before}  ${word.toLowerCase()}  `)
    .replace(/(^|\s)✓ /g, '$1done ')
    .replace(/(^\s*|\s{2,})> (?=\d)/g, '$1now ')
}

const CHIP = new RegExp(
  `(^|\\s)(?:${[...new Set(Object.values(SIGNS).map(({ sign }) => escaped(sign)))].join('|')}) (${[
    ...new Set(Object.values(SIGNS).map(({ word }) => word)),
  ]
    .sort((a, b) => b.length - a.length)
    .join('|')})(?=\\s|$)`,
  'g',
)

function escaped(sign: string): string {
  return sign.replace(/[-^$*+?.()|[\]{}]/g, '\\$&')
}
