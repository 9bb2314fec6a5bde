import type { Sum } from '../../lines/sum.ts'
import { workOut } from '../../session/work-out.ts'
import { sumText } from '../../words/sum-text.ts'
import { BACK, type Choice, choicesOf, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { numbered, toldRows } from './rows.ts'
import type { Scene } from './scene.ts'

/** What a computation comes to. The lines that carry it out are chosen by number, to be looked at and entered. */
export function sumPage({ session: { state }, width }: Scene, sum: Sum): Page {
  const worked = workOut(state, sum)
  const lines = worked.sum === 'shims' && 'carryOut' in worked.worked ? worked.worked.carryOut.lines : []
  const choices = new Map(
    lines.map((each, index): [number, Choice] => [
      index + 1,
      { says: each, act: { do: 'write', before: each, asks: 'Enter records it.' } },
    ]),
  )
  const rows = sumText(state, worked).flatMap((text) => {
    const no = lines.findIndex((each) => text === `  ${each}`) + 1
    return no > 0 ? numbered(no, text.trim(), width) : toldRows(text, width)
  })
  return {
    title: line(
      strong('WORKED OUT'),
      ['', '  1 writes the line for the record'][lines.length] ??
        `  1 to ${lines.length} write the lines for the record`,
    ),
    top: [],
    rows: rowsOf(rows),
    enter: BACK,
    choice: choicesOf(choices),
    large: null,
  }
}
