import type { ClassTally, Tally } from './tally.ts'

/** Something that is to be so: how often it was looked at, and how often it was so. */
export interface Goal {
  what: string
  tries: number
  hits: number
  /** Which share is wanted, and of how many at least. */
  least: number
  wanted: number
}

/** Whether it was looked at often enough, and was so often enough. */
export function isMet(goal: Goal): boolean {
  return !isTooFew(goal) && !isMissed(goal)
}

/** Whether it was looked at too seldom to say that it is met. */
export function isTooFew({ tries, wanted }: Goal): boolean {
  return tries < wanted
}

/** Whether it was not so often enough, of however many. */
export function isMissed({ tries, hits, least }: Goal): boolean {
  return hits < least * tries
}

/** No piece at a place that is not its own: it sits there the wrong way round, or is turned before its turn. */
const AT_ITS_OWN = /turned|order/

type Kind = Pick<ClassTally, 'name' | 'group' | 'going'>

/** Whether something is left out that the record has, and nobody says that it was done. */
export function isOmitting({ group, going }: Kind): boolean {
  return group === 'omission' && going === 'left out'
}

/** Whether a piece is said to sit at a place that is not its own. */
export function isMisplacing({ name, group, going }: Kind): boolean {
  return group === 'wrong installation' && going === 'wrong' && !AT_ITS_OWN.test(name)
}

/** What whole jobs come to, with mistakes and without one. */
export function jobGoals(withMistakes: Tally, clean: Tally): Goal[] {
  const { rows } = withMistakes
  const omitted = rows.filter(isOmitting)
  const misplaced = rows.filter(isMisplacing)
  const blocked = new Set(clean.falseBlocks.map(({ seed }) => seed)).size
  return [
    {
      what: 'omissions of what is on record, not said to be done, stopped before the first start',
      tries: made(omitted),
      hits: made(omitted) - passed(omitted),
      least: 0.999,
      wanted: 10_000,
    },
    {
      what: 'wrong positions refused at the first wrong piece',
      tries: made(misplaced),
      hits: misplaced.reduce((sum, { stopped }) => sum + stopped['at once'], 0),
      least: 1,
      wanted: 1000,
    },
    {
      what: 'jobs without a mistake that nothing refused, held up or said to be not yet due',
      tries: clean.jobs,
      hits: Math.min(clean.jobs - blocked, clean.cleared),
      least: 1,
      wanted: 1000,
    },
    {
      what: 'first starts with every piece home by the record, or its lack told below',
      tries: withMistakes.cleared + clean.cleared,
      hits: withMistakes.cleared + clean.cleared - jobsOf(withMistakes) - jobsOf(clean),
      least: 1,
      wanted: 1000,
    },
  ]
}

function made(rows: readonly ClassTally[]): number {
  return rows.reduce((sum, row) => sum + row.made, 0)
}

function passed(rows: readonly ClassTally[]): number {
  return rows.reduce((sum, { asked, unseen }) => sum + asked + unseen, 0)
}

/** In how many jobs something was not at home that nothing explains. */
function jobsOf({ unexplained }: Tally): number {
  return new Set(unexplained.map(({ seed }) => seed)).size
}
