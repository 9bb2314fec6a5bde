import type { Session } from '../../session/session.ts'
import { roomBetweenRules } from '../layout.ts'
import { aboveRows } from '../model/above-rows.ts'
import { type Foot, footOf } from '../model/foot.ts'
import { KeptPage } from '../model/kept-page.ts'
import type { Hall, Scene } from '../model/scene.ts'
import { timerTexts } from '../model/timer-rows.ts'
import type { Screen } from '../navigation.ts'
import type { Page } from '../page.ts'
import type { Line } from '../text/line.ts'
import type { Meaning, Typed } from '../typed/meaning.ts'
import { meaningOf } from '../typed/read-typed.ts'
import { Once } from './once.ts'

/** Where one stands: all that decides what is shown. */
interface Standing {
  /** Changes whenever anything happens. */
  readonly version: number
  readonly session: Session | null
  readonly screen: Screen
  /** Whether there is somewhere to go back to. */
  readonly hasWay: boolean
  readonly isLarge: boolean
  scene(): Hall | Scene
  typed(): Typed
}

/** What is shown where one stands. A frame asks for the same more than once: it is worked out once until something happens. */
export class Showing {
  readonly #standing: Standing
  readonly #kept = new KeptPage()
  readonly #once = new Once()

  constructor(standing: Standing) {
    this.#standing = standing
  }

  page(): Page {
    const { screen } = this.#standing
    return this.#oncePer('page', () =>
      this.#kept.of(this.#standing.scene(), screen, { typed: this.#text(), times: this.times() }),
    )
  }

  /** What stands above every screen of the job. */
  above(): readonly Line[] {
    const { screen } = this.#standing
    return this.#oncePer('above', () => aboveRows(this.#standing.scene(), screen, this.page()))
  }

  /** What can be done now, for the last rows. */
  foot(): Foot {
    const { screen, hasWay, isLarge } = this.#standing
    return this.#oncePer('foot', () => {
      const scene = this.#standing.scene()
      const page = this.page()
      const room = roomBetweenRules(scene.height) - this.above().length
      const isLong = page.top.length + page.rows.length > room
      return footOf(scene, { screen, page, hasWay, isLong, isLarge })
    })
  }

  /** What the line means as it stands. */
  meaning(): Meaning {
    return this.#oncePer('meaning', () => this.meaningOf(this.#standing.typed()))
  }

  /** What a line would mean here. */
  meaningOf(typed: Typed): Meaning {
    const { screen } = this.#standing
    return meaningOf(typed, { scene: this.#standing.scene(), screen, page: this.page() })
  }

  /** What the times that run say now. */
  times(): string {
    const { session } = this.#standing
    return session ? timerTexts({ session }).join('\n') : ''
  }

  /** Something happened of which nobody was told yet. */
  forget(): void {
    this.#once.forget()
  }

  #oncePer<Value>(what: string, compute: () => Value): Value {
    const { version, session } = this.#standing
    return this.#once.of(`${version} ${session?.version} ${this.#text()}`, what, compute)
  }

  #text(): string {
    const { before, after } = this.#standing.typed()
    return before + after
  }
}
