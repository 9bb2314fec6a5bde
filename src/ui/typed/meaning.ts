import type { Told } from '../../words/told.ts'
import type { Act } from '../act.ts'
import type { Hall, Scene } from '../model/scene.ts'
import type { Screen } from '../navigation.ts'
import type { Page } from '../page.ts'
import { type Line, line } from '../text/line.ts'

/** What Enter would do with the line as it stands; shown while it is typed, done when Enter comes. */
export type Meaning =
  | {
      kind: 'act'
      act: Act
      says: readonly Line[]
      /** What stays in the line, where a scan came behind words. */
      keep?: Typed | undefined
    }
  /** `drop`: nothing in the line is worth mending, so it is emptied for what is typed next. */
  | { kind: 'not-understood'; told: Told; drop?: boolean }
  | { kind: 'nothing' }

/** The line: what stands before the cursor and after it. */
export interface Typed {
  before: string
  after: string
}

/** What is on the screen while the line is read. */
export interface Shown {
  scene: Hall | Scene
  screen: Screen
  page: Page
}

/** Something to be done, in a few words. */
export function act(what: Act, says: string): Meaning {
  return { kind: 'act', act: what, says: [line(says)] }
}

/** A screen to go to. */
export function go(says: string, to: Screen): Meaning {
  return act({ do: 'go', to }, says)
}

/** Nothing to be done, and why. */
export function no(what: string, cure: string): Meaning {
  return { kind: 'not-understood', told: { what, lines: [], cure } }
}

/** A number that chooses nothing: the next one is typed afresh. */
export function noNumber(what: string, cure: string): Meaning {
  return { kind: 'not-understood', told: { what, lines: [], cure }, drop: true }
}
