import type { Group, Reading } from './reading.ts'

/** What is read after a line: the whole of another screen; of the same one the answer, and what it says anew. */
export function whatIsNew(now: Reading, before: Reading | null): string[] {
  const isSame = before !== null && now.place === before.place
  const answer = now.answer.filter((text) => !CUSTOM.test(text))
  const above = fresh(now.above, before?.above ?? [])
  const head = fresh(now.head, before?.head ?? [])
  const next = fresh(now.next, before?.next ?? [])
  if (!isSame) return [...answer, ...above, ...now.screen, ...head, ...next, now.enter, ...body(now)]
  return [
    ...answer,
    ...above,
    ...fresh(now.screen, before.screen),
    ...head,
    ...next,
    now.enter,
    ...freshGroups(now.choices, before.choices),
    ...freshRows(now.rows, before.rows),
  ]
}

/** All of it, from the beginning. */
export function wholeReading(reading: Reading): string[] {
  const { answer, above, screen, head, next, enter } = reading
  return [...answer, ...above, ...screen, ...head, ...next, enter, ...body(reading)]
}

/** So many rows are read in one go; "+" reads on. */
export const ROWS_AT_ONCE = 12

/** The rows from one on, as many as are read in one go, and how to hear the rest. */
export function rowsFrom(groups: readonly Group[], first: number): string[] {
  const all = flat(groups)
  const part = all.slice(first, first + ROWS_AT_ONCE)
  const left = all.length - first - part.length
  return [...part.flatMap(([heading, text]) => (heading === '' ? [text] : [heading, text])), ...more(left)]
}

function more(left: number): string[] {
  return left > 0 ? [`${left} more: + reads on.`] : []
}

function body({ choices, rows }: Reading): string[] {
  const said = new Set(choices.map(({ heading }) => heading))
  return [
    ...choices.flatMap(({ heading, sentences }) => [...named(heading), ...sentences]),
    // What stood among the choices needs no second heading.
    ...rowsFrom(rows, 0).filter((text) => !said.has(text)),
  ]
}

/** "OR" says nothing to the ear. */
function named(heading: string): string[] {
  return heading === '' || heading === 'Or:' ? [] : [heading]
}

/** Each row, with its heading where it is the first under it. */
function flat(groups: readonly Group[]): [string, string][] {
  return groups.flatMap(({ heading, sentences }) =>
    sentences.map((text, index): [string, string] => [index === 0 ? (named(heading)[0] ?? '') : '', text]),
  )
}

function fresh(now: readonly string[], before: readonly string[]): string[] {
  const known = new Set(before)
  return now.filter((text) => !known.has(text))
}

function freshGroups(now: readonly Group[], before: readonly Group[]): string[] {
  const known = new Set(before.flatMap(({ sentences }) => sentences))
  return now.flatMap(({ heading, sentences }) => {
    const said = sentences.filter((text) => !known.has(text))
    return said.length === 0 ? [] : [...named(heading), ...said]
  })
}

/** A few rows are read where they changed. Where many did, or one grew, the answer has said what happened. */
function freshRows(now: readonly Group[], before: readonly Group[]): string[] {
  const known = before.flatMap(({ sentences }) => sentences)
  const said = now
    .map(({ heading, sentences }) => ({
      heading,
      sentences: sentences.filter((text) => !known.includes(text) && !known.some((old) => grew(text, old))),
    }))
    .filter(({ sentences }) => sentences.length > 0)
  const count = said.reduce((sum, { sentences }) => sum + sentences.length, 0)
  return count > MOST_CHANGED
    ? []
    : said.flatMap(({ heading, sentences }) => [...named(heading), ...sentences])
}

const MOST_CHANGED = 3

function grew(text: string, old: string): boolean {
  return text.startsWith(old.replace(/\.$/, ''))
}

/** What ends every answer, but for its number: the greeting and the help have said it. */
const CUSTOM = /^0 takes entry \d+ back\.$/
