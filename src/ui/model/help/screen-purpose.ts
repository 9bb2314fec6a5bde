import { SCREENS } from '../../keys.ts'
import type { ScreenName } from '../../navigation.ts'

/** What a screen is for, in a few words. */
export function screenPurpose(at: ScreenName): string {
  const main = SCREENS.find(({ screen }) => screen.at === at)
  return main ? `${main.name}: ${main.says}` : (OTHERS[at] ?? '')
}

const OTHERS: Partial<Record<ScreenName, string>> = {
  jobs: 'the jobs of this home, to open one or begin another',
  'new-job': 'a name for a new job',
  step: 'a step of the way back: what it needs, what comes next in it, what holds it up',
  finish: 'when the machine is together at the earliest, and what can be done meanwhile',
  found: 'where something that turned up may belong',
  judge: 'what is asked of a piece, and what is decided about it',
  compare: 'a new piece beside the old one, point by point',
  buy: 'what is to buy, and how what was ordered stands',
  arrivals: 'a parcel, ticked line by line as it is unpacked',
  order: 'a line that is wanted or ordered',
  outing: 'what went out together, and what comes back of it',
  scan: 'what a label is for, and whether it goes on now',
  qr: 'a label, to be written off the screen, printed or scanned',
  count: 'a blind count: the record keeps its number to itself until yours is given',
  differences: 'where a count and the record do not agree, to be explained',
  proposals: 'steps and checks that the record suggests, taken by number',
  which: 'several pieces answer to the words: one is to be chosen',
  paste: 'several lines at once, looked through before they are taken',
  photos: 'the pictures, and what they show',
  sum: 'what a sum comes to, with the figures that went in',
  draw: 'where the positions of a set lie on the machine',
  told: 'all that came of the last print or import',
  leave: 'a word for whoever goes on, before you leave',
  wait: 'something is still under way: to be waited for, or left',
}
