/** Where in a job work was broken off. */
const PLACES = [
  'in a strip step',
  'while bolts are eased',
  'between steps coming off',
  'while waiting',
  'between steps going back',
  'in a step going back',
  'between two bolts of a lot',
  'in a torque pass',
  'in an angle pass',
  'in a pass of witness marks',
  'in a recount',
] as const

export type BreakPlace = (typeof PLACES)[number]

/** How it was broken off. */
const HOWS = [
  'the program is gone',
  'a stop with a note',
  'the screens left at once',
  'the screens left with a note',
  'the power goes before the write',
  'the power goes in half of the write',
  'the power goes after the write',
  'the power goes after the flush',
] as const

export type BreakHow = (typeof HOWS)[number]

export interface Tally {
  interruptions: number
  wrong: number
}

/** What came of breaking off work again and again, as plain JSON. Each fault names the seed of its job. */
export interface BreakOffReport {
  jobs: number
  cleared: number
  interruptions: number
  byPlace: Record<BreakPlace, Tally>
  byHow: Record<BreakHow, Tally>
  /** Taken up again on the command line and on the screens. */
  onTheLine: number
  onTheScreens: number
  /** By somebody else than who broke off. */
  byOthers: number
  /** Entries that were said to be recorded; those that are not there afterwards; records that were not whole. */
  acknowledged: number
  lost: string[]
  broken: string[]
  /** Recorded, and the power went before it could be said. */
  untold: number
  /** What the card or the screens named that was not next. */
  wrongNext: string[]
  /** Words that do not name what they are about. */
  vague: string[]
  /** Jobs that did not go on. */
  stuck: string[]
  /** How often so many keys were pressed on the screens up to the first thing recorded; words that tell a reason or an amount count as one. */
  keys: Record<number, number>
}

export function emptyReport(): BreakOffReport {
  const tallies = <Key extends string>(keys: readonly Key[]) =>
    Object.fromEntries(keys.map((key) => [key, { interruptions: 0, wrong: 0 }])) as Record<Key, Tally>
  return {
    jobs: 0,
    cleared: 0,
    interruptions: 0,
    byPlace: tallies(PLACES),
    byHow: tallies(HOWS),
    onTheLine: 0,
    onTheScreens: 0,
    byOthers: 0,
    acknowledged: 0,
    lost: [],
    broken: [],
    untold: 0,
    wrongNext: [],
    vague: [],
    stuck: [],
    keys: {},
  }
}

/** Adds what came of one more run. */
export function addTo(sum: BreakOffReport, more: BreakOffReport): void {
  for (const key of [
    'jobs',
    'cleared',
    'interruptions',
    'onTheLine',
    'onTheScreens',
    'byOthers',
    'acknowledged',
    'untold',
  ] as const)
    sum[key] += more[key]
  for (const key of ['lost', 'broken', 'wrongNext', 'vague', 'stuck'] as const) sum[key].push(...more[key])
  for (const place of PLACES) addTally(sum.byPlace[place], more.byPlace[place])
  for (const how of HOWS) addTally(sum.byHow[how], more.byHow[how])
  for (const [keys, times] of Object.entries(more.keys))
    sum.keys[Number(keys)] = (sum.keys[Number(keys)] ?? 0) + times
}

function addTally(sum: Tally, more: Tally): void {
  sum.interruptions += more.interruptions
  sum.wrong += more.wrong
}
