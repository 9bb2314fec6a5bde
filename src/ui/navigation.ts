import type { Found } from '../lines/read-found.ts'
import type { PicturesAbout } from '../lines/reading.ts'
import type { Sum } from '../lines/sum.ts'
import type { LayoutView } from '../session/layout-view.ts'
import type { PositionSet } from '../session/position-cells.ts'
import type { Direction, Placing } from './controls/placing.ts'
import type { OrderId, OutingId, PieceId } from './model/scene.ts'

/** A screen with what it shows. Everything a screen needs to be shown again is in here. */
export type Screen =
  | { at: 'jobs' }
  /** A new job is named; `name` is null until it is given. */
  | { at: 'new-job'; name: string | null }
  | { at: 'now' }
  | { at: 'off' }
  /** What lies where; `words` narrow it. */
  | { at: 'lies'; words: string }
  | { at: 'back' }
  | { at: 'step'; step: number }
  | { at: 'left' }
  /** When the machine is together at the earliest, and what can be done meanwhile. */
  | { at: 'finish' }
  /** What happened; `words` narrow it. */
  | { at: 'log'; words?: string | undefined }
  /** Where something that turned up may belong. */
  | { at: 'found'; found: Found }
  /** What is judged and what is awaited. */
  | { at: 'due' }
  /** What is asked of a piece and decided about it; `ofSet`: the pieces of its set, to choose one. */
  | { at: 'judge'; piece: PieceId; ofSet?: true | undefined }
  /** A new piece beside the old one; `how` while a number says of a feature that it is not alike. */
  | { at: 'compare'; piece: PieceId; how?: 'differs' | 'wrong' | undefined }
  /** What is to buy, and how what was ordered stands. */
  | { at: 'buy' }
  /** What was ordered is ticked as it comes out of the parcel. */
  | { at: 'arrivals' }
  /** One line that is wanted or ordered. */
  | { at: 'order'; order: OrderId }
  /** What went out together. */
  | { at: 'outing'; outing: OutingId }
  | { at: 'scan'; text: string }
  | { at: 'qr'; container: number; invert: boolean }
  /** A blind count; `given` are the numbers told so far, in the order asked. */
  | { at: 'count'; container: number; given: number[] }
  | { at: 'differences'; container: number }
  | { at: 'proposals' }
  | { at: 'which'; words: string; pieces: string[]; lines: string[] }
  | { at: 'paste'; lines: string[] }
  /** All keys and words, or those that answer to `about`; as a list also where one is called so. `from`: where `?` was typed. */
  | { at: 'help'; about: string | null; isList?: true | undefined; from?: ScreenName | undefined }
  /** Pictures of a container, a step or a piece; of the whole job where `of` is null. */
  | { at: 'photos'; of: PicturesAbout | null }
  /** What a computation comes to. */
  | { at: 'sum'; sum: Sum }
  /** Where the positions of a pattern lie; `placing` while they are placed one after the other. */
  | {
      at: 'draw'
      piece: LayoutView['piece']
      set: PositionSet
      placing: (Placing & { arrow?: Direction | undefined }) | null
    }
  /** All that came of the last errand. */
  | { at: 'told' }
  /** Leaving with work under way: a note is asked for. */
  | { at: 'leave' }
  /** Leaving while an errand is out; `isWaiting` once it is settled that it is waited for. */
  | { at: 'wait'; note: string | null; isWaiting: boolean }

export type ScreenName = Screen['at']

export interface Place {
  screen: Screen
  /** Rows scrolled down; null where the screen chooses its own beginning. */
  scroll: number | null
}

/** Where one is and the way one came, the last place last; never empty. */
export type Trail = readonly [...Place[], Place]

export type Step =
  | { go: Screen }
  /** The same place shows something else, as when a dialogue goes on. */
  | { turn: Screen }
  /** `past`: beyond all screens of that name on the way, as back to the work from the last of several scans. */
  | { back: true; past?: ScreenName | undefined }
  | { scroll: number }
  /** Another beginning, with nothing to go back to. */
  | { start: Screen }

/** The place after a step of the way. */
export function walk(trail: Trail, step: Step): Trail {
  const here = placeOf(trail)
  if ('start' in step) return [{ screen: step.start, scroll: null }]
  if ('scroll' in step) return [...trail.slice(0, -1), { ...here, scroll: step.scroll }]
  if ('turn' in step) return turned(trail.slice(0, -1), step.turn)
  if ('back' in step) {
    const before = trail.slice(0, -1)
    while (step.past !== undefined && before.length > 1 && before.at(-1)?.screen.at === step.past)
      before.pop()
    const last = before.at(-1)
    return last ? [...before.slice(0, -1), last] : trail
  }
  if (isSameScreen(here.screen, step.go)) return trail
  // A scan is looked at in between: the question it came into is still to be answered.
  const isBetween = step.go.at === 'scan'
  const kept = trail.slice(-MOST).filter(({ screen }) => isBetween || !isPassing(screen))
  return [...kept.map(startedOver), { screen: step.go, scroll: null }]
}

/** Turned into where one came from, it is that place again, and not there twice. */
function turned(before: readonly Place[], screen: Screen): Trail {
  const last = before.at(-1)
  return last && isSameScreen(last.screen, screen)
    ? [...before.slice(0, -1), last]
    : [...before, { screen, scroll: null }]
}

/** The place one is at. */
export function placeOf(trail: Trail): Place {
  return trail[trail.length - 1] as Place
}

const MOST = 40

/** Whether two are the same screen of the same thing. */
export function isSameScreen(one: Screen, other: Screen): boolean {
  return JSON.stringify(one) === JSON.stringify(other)
}

/** Questions that are over once one has gone on: nobody wants to go back to them. */
function isPassing({ at }: Screen): boolean {
  return at === 'which' || at === 'paste' || at === 'leave' || at === 'wait' || at === 'new-job'
}

/** A count that was broken off starts at nothing. */
function startedOver(place: Place): Place {
  return place.screen.at === 'count' ? { ...place, screen: { ...place.screen, given: [] } } : place
}
