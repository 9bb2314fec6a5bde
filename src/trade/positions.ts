import { notUnderstood, type Reading, understood } from './reading.ts'

/**
 * Why positions were not understood: nothing there, no form of a position, a range whose ends do not belong
 * together, a position named twice, or more than 200.
 */
export type PositionsFault = 'empty' | 'form' | 'range' | 'duplicate' | 'too-many'

const mostPositions = 200

interface Label {
  before: string
  number: number
  /** How many digits it is written with, at least: 2 for `01`. */
  digits: number
  after: string
}

/**
 * Reads the positions of matched pieces or of holes: `I1..I4`, `I1..4`, `E1-E4`, `1..3,5`, `A1,A2,B1`, `1L 2L`,
 * `A..D`. A descending range keeps its order; letters are kept as typed.
 */
export function readPositions(text: string): Reading<string[], PositionsFault> {
  const parts = text
    .replace(/…|\.{2,}| to /gu, '..')
    .replace(/[\u2010-\u2015\u2212]/gu, '-')
    .replace(/ ?(\.\.|-) ?/g, '$1')
    .split(/[,\s]+/u)
    .filter((part) => part !== '')
  if (parts.length === 0) return notUnderstood('empty', '', 'I1..I4')
  const positions: string[] = []
  for (const part of parts) {
    const expanded = expand(part)
    if (!expanded.understood) return expanded
    positions.push(...expanded.value)
    if (positions.length > mostPositions) return tooMany(part, parts)
  }
  return twice(positions) ?? understood(positions)
}

function expand(part: string): Reading<string[], PositionsFault> {
  const [from = '', to, ...more] = part.split(/\.\.|-/)
  if (to === undefined) return isLabel(from) ? understood([from]) : unformed(part)
  if (more.length > 0 || !isLabel(from) || !isLabel(to)) return unformed(part)
  const first = numbered(from)
  const last = numbered(to)
  if (!first && !last) return expandLetters(from, to, part)
  if (!first) return notUnderstood('range', part, `${from}${to}`)
  if (!last || !belongTogether(first, last)) return notUnderstood('range', part, likeFirst(from, first, last))
  const count = Math.abs(last.number - first.number) + 1
  if (count > mostPositions) {
    const direction = last.number < first.number ? -1 : 1
    const end = first.number + direction * (mostPositions - 1)
    return notUnderstood('too-many', part, `${from}..${first.before}${end}${first.after}`)
  }
  return understood(range(first, last).map((number) => labelText(first, number)))
}

function expandLetters(from: string, to: string, part: string): Reading<string[], PositionsFault> {
  if (!/^[A-Za-z]$/.test(from) || !/^[A-Za-z]$/.test(to)) return notUnderstood('range', part, 'A..D')
  const first = from.charCodeAt(0)
  const last = to.charCodeAt(0)
  if (first <= 90 !== last <= 90) return notUnderstood('range', part, `${from}..${sameCase(to, from)}`)
  const letter = (code: number): Label => ({ before: '', number: code, digits: 0, after: '' })
  return understood(range(letter(first), letter(last)).map((code) => String.fromCharCode(code)))
}

function likeFirst(from: string, first: Label, last: Label | undefined): string {
  const isNear = last !== undefined && Math.abs(last.number - first.number) < mostPositions
  const end = isNear ? last.number : first.number + 3
  return `${from}..${labelText(first, end)}`
}

function range(first: Label, last: Label): number[] {
  const step = last.number < first.number ? -1 : 1
  return Array.from({ length: Math.abs(last.number - first.number) + 1 }, (_, i) => first.number + step * i)
}

/** Letters or digits with no sign between them, as they fit on a tag. */
function isLabel(text: string): boolean {
  return /^[\p{L}\p{N}_]{1,16}$/u.test(text)
}

function numbered(text: string): Label | undefined {
  const match = /^([^\d]*)(\d{1,6})([^\d]*)$/.exec(text)
  if (!match) return undefined
  const [, before = '', digits = '', after = ''] = match
  return { before, number: Number(digits), digits: digits.startsWith('0') ? digits.length : 1, after }
}

/** The letters of the second end may be left out: `I1..4`. */
function belongTogether(first: Label, last: Label): boolean {
  const before = last.before === '' || last.before.toLowerCase() === first.before.toLowerCase()
  const after = last.after === '' || last.after.toLowerCase() === first.after.toLowerCase()
  return before && after
}

function labelText(like: Label, number: number): string {
  return `${like.before}${String(number).padStart(like.digits, '0')}${like.after}`
}

function sameCase(letter: string, like: string): string {
  return like === like.toUpperCase() ? letter.toUpperCase() : letter.toLowerCase()
}

function unformed(part: string): Reading<string[], PositionsFault> {
  const letters = part.replace(/[^\p{L}\p{N}]/gu, '').slice(0, 4)
  return notUnderstood('form', part, /\d/.test(letters) ? letters : `${letters.slice(0, 1) || 'I'}1`)
}

function tooMany(part: string, parts: readonly string[]): Reading<string[], PositionsFault> {
  return notUnderstood('too-many', part, parts[0] === part ? '1..200' : (parts[0] ?? '1..200'))
}

function twice(positions: readonly string[]): Reading<string[], PositionsFault> | undefined {
  const seen = new Set<string>()
  const repeated: string[] = []
  for (const position of positions) {
    const key = position.toLowerCase()
    if (seen.has(key)) repeated.push(position)
    seen.add(key)
  }
  if (repeated.length === 0) return undefined
  const once = positions.filter((position, i) => positions.findIndex((p) => sameLabel(p, position)) === i)
  return notUnderstood('duplicate', repeated.join(','), once.join(','))
}

function sameLabel(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase()
}
