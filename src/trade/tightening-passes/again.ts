import { readWhole } from '../number.ts'
import type { TighteningPass } from './tightening-pass.ts'

/** That passes are to be done once more, and how many, where that is said. */
export interface Again {
  count: number | null
}

const what = '(?:the |all )*(?:(\\S+) )?(?:passes|stages|steps)'
const forms = [
  /^(?:again|repeat|tighten again)(?: all)?$/,
  new RegExp(`^repeat ${what}$`),
  new RegExp(`^again ${what}$`),
  new RegExp(`^(?:repeat )?${what} again$`),
]

/** Reads `again`, `repeat`, `the three passes again`, `repeat all passes`; null for anything else. */
export function readAgain(text: string): Again | null {
  const form = text.toLowerCase().replace(/\s+/g, ' ')
  const match = forms.map((each) => each.exec(form)).find((each) => each !== null)
  if (!match) return null
  const [, word] = match
  if (word === undefined || word === 'same' || word === 'all') return { count: null }
  const count = readWhole(word)
  return count === undefined ? null : { count }
}

/** The passes that a repetition right after backing off repeats: snug, torque and angle since the backing off before. */
export function passesBefore(passes: readonly TighteningPass[]): TighteningPass[] {
  if (passes.at(-1)?.kind !== 'back-off') return []
  const turned = passes.slice(0, passes.findLastIndex(({ kind }) => kind !== 'back-off') + 1)
  const since = turned.slice(turned.findLastIndex(({ kind }) => kind === 'back-off') + 1)
  return since.filter(({ kind }) => kind === 'snug' || kind === 'torque' || kind === 'angle')
}
