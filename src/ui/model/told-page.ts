import type { News } from '../desk/errand-out.ts'
import { BACK, type Choice, goTo, NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { chip } from '../signs.ts'
import { line, strong } from '../text/line.ts'
import { indented, toldRows } from './rows.ts'
import type { Scene } from './scene.ts'

/** All that came of the last errand: more than there is room for under the line. */
export function toldPage({ errand: { last }, width }: Scene): Page {
  return {
    title: line(strong('WHAT CAME OF IT'), ...(last?.answer.sign ? ['  ', chip(last.answer.sign)] : [])),
    top: [],
    rows: rowsOf(
      last
        ? last.lines.flatMap((text) => toldRows(text, width))
        : indented('Nothing was printed or imported since the screens were opened.', width),
    ),
    enter: last ? afterIt(last) : BACK,
    choice: NO_CHOICES,
    large: null,
  }
}

function afterIt({ of, isOk }: News): Choice {
  return of.errand === 'photos-import' && isOk ? goTo('the pictures', { at: 'photos', of: null }) : BACK
}
