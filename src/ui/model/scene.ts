import type { JobSummary } from '../../session/jobs.ts'
import type { ScannedPiece } from '../../session/scan.ts'
import type { Session } from '../../session/session.ts'
import { type Card, cardOf } from '../../session/views.ts'
import type { News } from '../errand-out.ts'

export type State = Session['state']
export type PieceId = ScannedPiece['piece']
export type PlaceOfPiece = ScannedPiece['place']
export type Entry = ReturnType<Session['entries']>[number]

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

/** Where the job stands. */
export function cardNow(session: Session): Card {
  return perVersion(session, 'card', () => cardOf(session))
}

/** Whether something is under way that a note would help with. */
export function isUnderWay({ strip, build, card }: State): boolean {
  return card === null && (strip !== null || build !== null)
}

const kept = new WeakMap<Session, { version: number; values: Map<string, unknown> }>()

/** A value worked out once for each version of a session's state. */
export function perVersion<Value>(session: Session, key: string, compute: () => Value): Value {
  let cache = kept.get(session)
  if (!cache || cache.version !== session.version) {
    cache = { version: session.version, values: new Map() }
    kept.set(session, cache)
  }
  if (!cache.values.has(key)) cache.values.set(key, compute())
  return cache.values.get(key) as Value
}
