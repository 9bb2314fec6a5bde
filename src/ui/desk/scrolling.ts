import { scrolled, windowAt } from '../controls/list-window.ts'
import type { Page } from '../page.ts'
import type { Way } from './way.ts'

/**
 * How far the rows of a page are scrolled: of each place on the way for itself; of rows that the line narrows, as long
 * as the same words stand in it.
 */
export class Scrolling {
  readonly #way: Way
  #narrowed = { by: '', row: 0 }

  constructor(way: Way) {
    this.#way = way
  }

  /** The first row that is in sight; null where the page chooses its own beginning. */
  row({ isNarrowed }: Page, typed: string): number | null {
    if (!isNarrowed) return this.#way.scroll
    return this.#narrowed.by === typed ? this.#narrowed.row : 0
  }

  /** Moves the rows of a page, of which so many are in sight. */
  move(
    by: { pages: number } | { rows: number },
    page: Page,
    { typed, height }: { typed: string; height: number },
  ): void {
    const { rows, start = 0 } = page
    const window = windowAt(rows.length, height, this.row(page, typed) ?? start)
    const row = scrolled(window, by, rows.length, height)
    if (page.isNarrowed) this.#narrowed = { by: typed, row }
    else this.#way.scrollTo(row)
  }
}
