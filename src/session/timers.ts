import type { State } from '../journal/state.ts'
import { curedAt, isApart, workUntil } from '../plan/waiting/consumables.ts'
import type { ConsumableFacts } from '../plan/waiting/waiting-facts.ts'

/** Something that was put on, and the time that runs for it; times in ISO 8601. */
export interface Timer {
  consumable: ConsumableFacts
  /** `work`: the joint is to be put together. `set`: it is together, and sets. */
  kind: 'work' | 'set'
  from: string
  until: string
  /** Whole minutes, a begun one too; never more than the whole time, should the clock have been set back. */
  minutesLeft: number
  /** The working time has run out, and pieces are still to be fitted. */
  isOver: boolean
}

/** What runs at the moment that the state is asked for: working times first, the shortest first. */
export function timersOf(state: State): Timer[] {
  if (state.closed) return []
  return [...state.consumables.values()]
    .filter(({ id }) => !state.overrides.has(id))
    .flatMap((consumable) => workTimer(state, consumable) ?? setTimer(state, consumable) ?? [])
    .sort((a, b) => rank(a) - rank(b) || (a.until < b.until ? -1 : 1))
}

/** The times at which something runs out by itself, without an entry: what waits for it is worked out anew then. */
export function turningPoints(state: State): string[] {
  return [...state.consumables.values()].flatMap((consumable) =>
    [workUntil(consumable), curedAt(state, consumable)].filter((at) => at !== null),
  )
}

function workTimer(state: State, consumable: ConsumableFacts): Timer | null {
  const until = workUntil(consumable)
  if (until === null || consumable.applied === null || !isApart(state, consumable)) return null
  return timer(state, consumable, 'work', { from: consumable.applied.at, until })
}

function setTimer(state: State, consumable: ConsumableFacts): Timer | null {
  const until = curedAt(state, consumable)
  const { cureMinutes = 0 } = consumable
  if (until === null || until <= state.clock.at || isApart(state, consumable)) return null
  const from = new Date(Date.parse(until) - cureMinutes * 60_000).toISOString()
  return timer(state, consumable, 'set', { from, until })
}

function timer(
  { clock }: State,
  consumable: ConsumableFacts,
  kind: Timer['kind'],
  { from, until }: Pick<Timer, 'from' | 'until'>,
): Timer {
  const now = clock.at < from ? from : clock.at
  const minutesLeft = Math.max(0, Math.ceil((Date.parse(until) - Date.parse(now)) / 60_000))
  return { consumable, kind, from, until, minutesLeft, isOver: kind === 'work' && clock.at >= until }
}

function rank({ kind }: Timer): number {
  return kind === 'work' ? 0 : 1
}
