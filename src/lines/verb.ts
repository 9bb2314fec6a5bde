import type { Command } from '../journal/command.ts'
import type { Errand } from './errand.ts'
import type { Line } from './line.ts'
import type { Ask, Reading } from './reading.ts'

/** What a line can begin with. The table of these is what help, the palette and near misses are made of. */
export interface Verb {
  /** The words that begin the line, the usual one first. */
  words: readonly string[]
  topic: Topic
  /** How it is written: capitals stand for the user's own words, brackets for what may be left out. */
  forms: readonly [string, ...string[]]
  /** What it does, in one line. */
  says: string
  examples: readonly string[]
  /** What follows its words, where these may begin a bag line as well: where things come off, that goes before. */
  meant?: RegExp
  /** Reads the rest of the line. Stops the reading when it is not understood. */
  read(line: Line): Command | Command[] | Ask | Errand | Reading
}

export const TOPICS = [
  'strip-down',
  'containers',
  'labels and pictures',
  'pieces',
  'parts and decisions',
  'buying and arrivals',
  'checking and judging',
  'plan',
  'build-up',
  'tightening',
  'measuring',
  'arithmetic',
  'counting',
  'job',
  'questions',
] as const
export type Topic = (typeof TOPICS)[number]
