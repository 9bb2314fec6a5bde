import type { SeenLine } from './lines.ts'
import { type ReadLot, readLot } from './read-lot.ts'

/** What a piece of paper says of one container. */
export interface ReadContainer {
  kind: string
  no: number
  code: string
  /** The word for all of it. */
  status: string
  lots: ReadLot[]
  homes: { home: string; step: number }[]
  /** Containers that stand in it, such as `bin 2`. */
  holds: string[]
}

const HEADING = /^(BAG|BIN|TRAY|TAG|SHELF) (\d+)\b/
const CODE = /^\d{3} \d{4} \d{2}$/
const STATUSES = [
  'FIT AGAIN',
  'MIXED',
  'NEW',
  'USED, DO NOT FIT',
  'OLD, DO NOT FIT',
  'TOOL',
  'TO DECIDE',
  'HOLDS OTHERS',
  'EMPTY',
  'VOID',
]

/** Reads one label: its heading, its code, and the lines between. */
export function readLabel(lines: readonly SeenLine[]): ReadContainer | null {
  const heading = lines.find(({ text }) => HEADING.test(text))
  const code = lines.find(({ text }) => CODE.test(text))
  if (!heading || !code) return null
  const between = lines.filter(({ y }) => y > heading.y && y < code.y).map(({ text }) => text)
  const texts = between.filter((text) => !STATUSES.includes(text))
  const homes = joined(texts).flatMap((text) => (text.startsWith('→ ') ? text.slice(2).split('; ') : []))
  // It stands under the heading, or beside it.
  const status = lines.find(({ text }) => STATUSES.includes(text))?.text ?? ''
  return {
    ...named(heading.text),
    code: digits(code.text),
    status,
    ...readTexts(texts),
    homes: homes.flatMap(readHome),
  }
}

/** Reads the list of containers of the printed plan, which has two columns, over all its pages. */
export function readContainerList(pages: readonly (readonly SeenLine[])[]): ReadContainer[] {
  return entriesOf(pages, 'What lies in the containers', 'What lies elsewhere').flatMap(({ left, right }) => {
    const code = left.find((text) => CODE.test(text))
    if (code === undefined) return []
    const texts = right.filter((text) => !STATUSES.includes(text))
    const homes = joined(texts).flatMap((text) => (text.startsWith('→ ') ? [text.slice(2)] : []))
    return [
      {
        ...named(left[0] ?? ''),
        code: digits(code),
        status: right.find((text) => STATUSES.includes(text)) ?? '',
        ...readTexts(texts),
        homes: homes.flatMap(readHome),
      },
    ]
  })
}

/** Reads what the printed plan says of pieces that lie in no container, by the heading they stand under. */
export function readElsewhere(pages: readonly (readonly SeenLine[])[]): { place: string; lots: ReadLot[] }[] {
  return entriesOf(pages, 'What lies elsewhere', null).map(({ left, right }) => ({
    place: left[0] ?? '',
    lots: readTexts(right).lots,
  }))
}

/** The entries of a part of the plan: what stands on the left begins one, but where it only goes on. */
function entriesOf(
  pages: readonly (readonly SeenLine[])[],
  from: string,
  to: string | null,
): { left: string[]; right: string[] }[] {
  const all = pages.flatMap((page) => page.slice(2))
  const first = all.findIndex(({ text }) => text === from)
  const last = to === null ? -1 : all.findIndex(({ text }) => text === to)
  if (first < 0) return []
  const lines = all.slice(first + 1, last < 0 ? undefined : last)
  const margin = Math.min(...lines.map(({ x }) => x))
  const entries: { left: string[]; right: string[] }[] = []
  for (const { text, x } of lines) {
    const isLeft = x < margin + 20
    if (isLeft && text.endsWith(', continued')) continue
    const begins = isLeft && (to === null || HEADING.test(text))
    if (begins) entries.push({ left: [], right: [] })
    const entry = entries.at(-1)
    if (isLeft) entry?.left.push(text)
    else entry?.right.push(text)
  }
  return entries
}

function readTexts(texts: readonly string[]): { lots: ReadLot[]; holds: string[] } {
  const whole = joined(texts)
  return {
    lots: whole.flatMap((text) => readLot(text) ?? []),
    holds: whole.flatMap((text) => /^(?:bag|bin|tray|tag|shelf) \d+/.exec(text)?.[0] ?? []),
  }
}

const BEGINS =
  /^(?:\d+ × |USED, |OLD, |TO DECIDE|NEW: |TOOL: |→ |! |and \d+ more|(?:bag|bin|tray|tag|shelf) \d+(?: \(|$))/

/** Lines put together again that were broken for want of room. */
function joined(texts: readonly string[]): string[] {
  const whole: string[] = []
  for (const text of texts) {
    if (BEGINS.test(text) || whole.length === 0) whole.push(text)
    else whole[whole.length - 1] += ` ${text}`
  }
  return whole
}

function readHome(text: string): { home: string; step: number }[] {
  const [, home = '', step] = /^(.+?), step (\d+)(?: \([^)]*\))*$/.exec(text) ?? []
  return step === undefined ? [] : [{ home, step: Number(step) }]
}

function named(heading: string): { kind: string; no: number } {
  const [, kind = '', no] = HEADING.exec(heading) ?? []
  return { kind: kind.toLowerCase(), no: Number(no) }
}

function digits(code: string): string {
  return code.replaceAll(' ', '')
}
