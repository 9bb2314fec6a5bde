import { isSameScreen, type Screen } from '../navigation.ts'
import type { Page } from '../page.ts'
import { brief, type Line, line, spread, strong, widthOf } from '../text/line.ts'
import { nextChoice } from './next.ts'
import { type Hall, perVersion, type Scene } from './scene.ts'

export interface FootFacts {
  screen: Screen
  page: Page
  /** Whether there is somewhere to go back to. */
  hasWay: boolean
  /** Whether not all rows have room. */
  isLong: boolean
  isLarge: boolean
}

export interface Foot {
  /** Each thing on a row of its own. */
  apart: readonly Line[]
  /** All on one row, in brief: where an answer takes the room. */
  together: Line
}

/**
 * What stands at the very bottom: the next sensible thing of the job where Enter does something else, and the keys that
 * work now. Of the keys there are as many as there is room for, those that are needed most first.
 */
export function footOf(scene: Hall | Scene, facts: FootFacts): Foot {
  const { width } = scene
  const next = 'session' in scene ? nextElsewhere(scene, facts) : null
  const keys = keysNow(scene, facts)
  const alone = line(' ', ...fitting(keys, width - 1))
  if (next === null) return { apart: [alone], together: alone }
  const told = line(' ', strong('Next'), ` ${next}`)
  const least = fitting(keys.slice(0, FEWEST), width)
  const said = brief(told, width - widthOf(least) - GAP)
  return {
    apart: [brief(told, width), alone],
    together: spread(said, fitting(keys, width - widthOf(said) - GAP), width),
  }
}

const GAP = 3

/** So many keys stand there however long the next thing is. */
const FEWEST = 2

/** What comes next in the job; null where Enter leads to it, and on its own page, which says it better. */
function nextElsewhere(scene: Scene, { page: { enter }, screen }: FootFacts): string | null {
  const { says, act } = perVersion(scene.session, 'next choice', () => nextChoice(scene))
  const isHere = act.do === 'go' && screen.at !== 'off' && isSameScreen(act.to, screen)
  // Where the thing itself can be done, Enter says it without the way there.
  return isHere || (enter && (enter.says === says || enter.says === says.replace(/^go on: /, '')))
    ? null
    : says
}

function keysNow(
  scene: Hall | Scene,
  { screen, page, hasWay, isLong, isLarge }: FootFacts,
): [string, string][] {
  const isJob = 'session' in scene
  const keys: [string, string, boolean][] = [
    // The name of a job and of its machine may hold anything.
    ['?', 'all keys', screen.at !== 'help' && screen.at !== 'new-job'],
    // The way out of large letters comes before what is done more rarely.
    ['*', 'small', isLarge],
    ['0', 'takes back', isJob && scene.session.state.inForce.length > 1 && !isAnswer('0', page)],
    ['*', 'large', !isLarge && page.large !== null],
    ['+ -', 'rows', isLong && !isLarge],
    ['Backspace', 'back', hasWay],
  ]
  return keys.flatMap(([key, does, works]) => (works ? [[key, does] as [string, string]] : []))
}

/** Whether a question takes what elsewhere is a key: none in a bag, a note of one sign. */
function isAnswer(text: string, { question }: Page): boolean {
  return (question?.take(text) ?? null) !== null
}

function fitting(keys: readonly (readonly [string, string])[], width: number): Line {
  let row: Line = []
  for (const [key, does] of keys) {
    const longer = line(...row, row.length === 0 ? '' : ' '.repeat(GAP), strong(key), ` ${does}`)
    if (widthOf(longer) <= width) row = longer
  }
  return row
}
