import { type Answer, answerRows } from './answer.ts'
import type { Meaning, Typed } from './meaning.ts'
import { type Line, line, wrap } from './text/line.ts'

/** Columns and rows of the terminal. */
export interface Size {
  width: number
  height: number
}

/** Rows above the screen's own: the job, the screens' names, a rule. */
const HEAD = 3
/** A rule and the line. */
const LINE = 2
const LEAST_BELOW = 3

export const SMALLEST: Size = { width: 64, height: 18 }

interface Speaking {
  answer(): Answer | null
  meaning(): Meaning
  typed(): Typed
}

/** What is said under the line: the answer to the last one, or how the one being typed is understood. */
export function belowLine({ width, height }: Size, desk: Speaking): Line[] {
  const most = Math.max(LEAST_BELOW, Math.floor(height / 2) - LINE)
  const rows = said(width, most, desk).slice(0, most)
  return [...rows, ...Array<Line>(Math.max(0, LEAST_BELOW - rows.length)).fill([])]
}

/** The rows between the two rules. */
export function bodyHeight(size: Size, desk: Speaking): number {
  return Math.max(1, size.height - HEAD - LINE - belowLine(size, desk).length)
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
