import { plainText } from '../../label/plain-text.ts'
import { NO_CHOICES, type Page, rowsOf } from '../page.ts'
import { cut, line, strong } from '../text/line.ts'
import type { Scene } from './scene.ts'

/** Several lines at once are shown before any is taken. */
export function pastePage({ width }: Pick<Scene, 'width'>, pasted: readonly string[]): Page {
  const lines = pasted.map(plainText).filter((text) => text !== '')
  return {
    title: line(strong('PASTED'), `  ${lines.length} lines, none of them taken yet`),
    top: [],
    rows: rowsOf(
      lines.map((text, index) => cut(line(strong(String(index + 1).padStart(5)), '  ', text), width)),
    ),
    enter: { says: `take the ${lines.length} lines one after the other`, act: { do: 'lines', lines } },
    choice: NO_CHOICES,
    large: null,
  }
}
