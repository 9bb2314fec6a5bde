import type { Told } from '../words/told.ts'
import type { Act } from './act.ts'
import type { Screen } from './navigation.ts'
import type { Sign } from './signs.ts'
import type { Line } from './text/line.ts'

/** What a screen shows, ready to be drawn: the same for every screen. */
export interface Page {
  /** What this is, on the row under the screens' names. */
  title: Line
  /** Rows that stay above those that scroll. */
  top: readonly Line[]
  rows: Rows
  /** Whether the words in the line narrow the rows: then these begin at the top. */
  isNarrowed?: boolean | undefined
  /** The row with which the screen begins. */
  start?: number | undefined
  /** What Enter on an empty line does, in words; null where nothing is sensible. */
  enter: Choice | null
  choice(no: number): Choice | undefined
  /** A question that takes the line for its answer. */
  question?: Question | undefined
  /** What keys do on an empty line here, where they do something of their own. */
  keys?: Partial<Record<'up' | 'right' | 'down' | 'left' | 'back', Act>> | undefined
  /** What large letters say, with a few words under them. */
  large: Large | null
  /** The verdict that this page gives: heard when one comes to it. */
  verdict?: Sign | undefined
}

/** Rows that are made when they are shown. */
export interface Rows {
  length: number
  at(index: number): Line
}

export interface Choice {
  says: string
  act: Act
  /** How many alike pieces it puts home: of several it could be fewer. */
  fits?: number | undefined
}

export interface Question {
  /** What the answer is taken for, or why it cannot be; null for what is no answer and means what it does elsewhere. */
  take(text: string): Choice | { cannot: Told } | null
}

export interface Large {
  letters: string
  /** At most twelve words, each part on a row where there is room. */
  under: readonly Line[]
  /** So many of the first parts are large too where there is room. */
  more?: number
}

/** Rows that are there already. */
export function rowsOf(lines: readonly Line[]): Rows {
  return { length: lines.length, at: (index) => lines[index] ?? [] }
}

/** Choices by their numbers. */
export function choicesOf(numbered: ReadonlyMap<number, Choice>): (no: number) => Choice | undefined {
  return (no) => numbered.get(no)
}

export const NO_CHOICES = (): undefined => undefined

/** To where one came from. */
export const BACK: Choice = { says: 'back', act: { do: 'back' } }

/** Going to a screen, as a choice. */
export function goTo(says: string, to: Screen): Choice {
  return { says, act: { do: 'go', to } }
}
