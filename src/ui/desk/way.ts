import { placeOf, type Screen, type ScreenName, type Trail, walk } from '../navigation.ts'

/** Where one is among the screens, and the way one came. */
export class Way {
  #trail: Trail

  constructor(start: Screen) {
    this.#trail = [{ screen: start, scroll: null }]
  }

  get screen(): Screen {
    return placeOf(this.#trail).screen
  }

  /** Rows scrolled down; null where the screen chooses its own beginning. */
  get scroll(): number | null {
    return placeOf(this.#trail).scroll
  }

  /** Whether there is somewhere to go back to. */
  get isLong(): boolean {
    return this.#trail.length > 1
  }

  go(to: Screen): void {
    this.#trail = walk(this.#trail, { go: to })
  }

  /** The same place shows something else. */
  turn(to: Screen): void {
    this.#trail = walk(this.#trail, { turn: to })
  }

  /** To where one came from, or beyond all screens of that name. */
  back(past?: ScreenName): void {
    this.#trail = walk(this.#trail, { back: true, past })
  }

  scrollTo(row: number): void {
    this.#trail = walk(this.#trail, { scroll: row })
  }

  /** Another beginning, with nothing to go back to. */
  start(at: Screen): void {
    this.#trail = walk(this.#trail, { start: at })
  }
}
