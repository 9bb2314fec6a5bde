import type { JobSummary } from '../../session/jobs.ts'
import type { ScannedPiece } from '../../session/scan.ts'
import type { Session } from '../../session/session.ts'
import { type Card, cardOf } from '../../session/views.ts'
import type { News } from '../desk/errand-out.ts'

export type State = Session['state']
export type PieceId = ScannedPiece['piece']
export type PlaceOfPiece = ScannedPiece['place']
export type OrderId = KeyOf<State['orders']>
export type OutingId = KeyOf<State['outings']>
export type Entry = ReturnType<Session['entries']>[number]

type KeyOf<Facts> = Facts extends ReadonlyMap<infer Key, unknown> ? Key : never

/** What there is to show before a job is open. */
export interface Hall {
  jobs: readonly JobSummary[]
  home: string
  width: number
  height: number
  now: Date
  colour: boolean
  /** The errand that is out, and what came of the last one. */
  errand: { progress: string | null; last: News | null }
}

/** What there is to show of an open job. `height` is that of the terminal. */
export interface Scene extends Hall {
  session: Session
  /** The container that the next line fills, when the screen says so and not the record. */
  hand: number | null
}

/** The same with another container in hand. What is read from the disk when it is asked for is not read for that. */
export function withHand(scene: Scene, hand: number): Scene {
  const same = Object.getOwnPropertyDescriptors(scene)
  return Object.defineProperties({}, { ...same, hand: { value: hand, enumerable: true } }) as Scene
}

/** Where the job stands. */
export function cardNow(session: Session): Card {
  return perVersion(session, 'card', () => cardOf(session))
}

/** Whether something is under way that a note would help with. */
export function isUnderWay({ strip, build, card }: State): boolean {
  return card === null && (strip !== null || build !== null)
}

type Gates = ReturnType<Session['gates']>
const kept = new WeakMap<Session, { version: number; gates: Gates; values: Map<string, unknown> }>()

/** A value worked out once for each version of a session's state, and anew when a time that holds something up is over. */
export function perVersion<Value>(session: Session, key: string, compute: () => Value): Value {
  let cache = kept.get(session)
  const gates = session.gates()
  if (!cache || cache.version !== session.version || cache.gates !== gates) {
    cache = { version: session.version, gates, values: new Map() }
    kept.set(session, cache)
  }
  if (!cache.values.has(key)) cache.values.set(key, compute())
  return cache.values.get(key) as Value
}
