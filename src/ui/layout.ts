import { type Answer, answerRows } from './answer.ts'
import type { News } from './desk/errand-out.ts'
import type { Foot } from './model/foot.ts'
import { chip, SIGNS } from './signs.ts'
import { cut, type Line, line, wrap } from './text/line.ts'
import type { Meaning, Typed } from './typed/meaning.ts'

/** Columns and rows of the terminal. */
export interface Size {
  width: number
  height: number
}

/** Rows above the screen's own: the job, the screens' names, a rule. */
const HEAD = 3
/** A rule and the line. */
const LINE = 2
/** What is said, and the foot. */
const LEAST_BELOW = 3
const FOOT = 1

export const SMALLEST: Size = { width: 64, height: 18 }

export function isTooSmall({ width, height }: Size): boolean {
  return width < SMALLEST.width || height < SMALLEST.height
}

interface Speaking {
  answer(): Answer | null
  /** What came of an errand, until it was seen; and how far the one is that is out. */
  news(): News | null
  progress(): string | null
  meaning(): Meaning
  typed(): Typed
  /** What stands above every screen of the job. */
  above(): readonly Line[]
  /** What the last rows say. */
  foot(): Foot
}

/**
 * What is said under the line: the answer to the last one, or how the one being typed is understood; what came of an
 * errand; and at the very bottom what can be done now, or how far the errand is that is out.
 */
export function belowLine({ width, height }: Size, desk: Speaking): Line[] {
  const progress = desk.progress()
  const foot = progress === null ? desk.foot() : progressFoot(progress, width)
  const room = mostBelow(height) - FOOT
  const rows = withNews(said(width, room, desk), width, room, desk).slice(0, room)
  const free = Math.max(0, LEAST_BELOW - rows.length)
  const under = foot.apart.length <= free ? foot.apart : [foot.together]
  return [...rows, ...Array<Line>(Math.max(0, free - under.length)).fill([]), ...under]
}

function progressFoot(progress: string, width: number): Foot {
  const row = cut(line(chip(SIGNS.underway), ' ', progress), width)
  return { apart: [row], together: row }
}

/** Whether an answer has room under the line, whole. */
export function hasRoom({ width, height }: Size, answer: Answer): boolean {
  return answerRows(answer, width).length <= mostBelow(height) - FOOT
}

/** The rows between the two rules. */
export function bodyHeight(size: Size, desk: Speaking): number {
  return Math.max(1, size.height - HEAD - desk.above().length - LINE - belowLine(size, desk).length)
}

/** The same where nothing but the usual is said under the line. */
export function roomBetweenRules(height: number): number {
  return Math.max(1, height - HEAD - LINE - LEAST_BELOW)
}

function mostBelow(height: number): number {
  return Math.max(LEAST_BELOW, Math.floor(height / 2) - LINE)
}

/** Beside what somebody does, news is short: "told" has all of it. */
const MOST_NEWS = 6

/** News on one row while something is typed, whole as soon as the line is empty. */
function withNews(rows: readonly Line[], width: number, most: number, desk: Speaking): Line[] {
  const news = desk.news()
  if (!news) return [...rows]
  const isTyping = desk.typed().before + desk.typed().after !== ''
  const whole = answerRows(
    news.answer,
    width,
    isTyping ? most : Math.min(MOST_NEWS, most - Math.min(rows.length, most - 2)),
  )
  const [first = []] = whole
  const shown = isTyping ? [whole.length > 1 ? cut(line(first, ' ..'), width) : first] : whole
  return [...rows.slice(0, most - Math.min(shown.length, 2)), ...shown]
}

function said(width: number, most: number, desk: Speaking): Line[] {
  const answer = desk.answer()
  if (answer) return answerRows(answer, width, most)
  const { before, after } = desk.typed()
  if (before + after === '') return []
  const meaning = desk.meaning()
  if (meaning.kind === 'nothing') return []
  // While words are still coming nothing is refused: it only is not understood yet.
  if (meaning.kind === 'not-understood') return answerRows({ sign: null, told: meaning.told }, width, most)
  return meaning.says.flatMap((row) => wrap(line('   ', row), width, 3))
}
