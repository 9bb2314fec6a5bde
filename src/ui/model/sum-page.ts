import type { Sum } from '../../lines/sum.ts'
import { workOut } from '../../session/work-out.ts'
import { sumText } from '../../words/sum-text.ts'
import { BACK, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { line, strong } from '../text/line.ts'
import { toldRows } from './rows.ts'
import type { Scene } from './scene.ts'

/** What a computation comes to. */
export function sumPage({ session: { state }, width }: Scene, sum: Sum): Page {
  return {
    title: line(strong('WORKED OUT')),
    top: [],
    rows: rowsOf(sumText(state, workOut(state, sum)).flatMap((text) => toldRows(text, width))),
    enter: BACK,
    choice: NO_CHOICES,
    large: null,
  }
}
