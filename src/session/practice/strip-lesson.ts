import type { Account } from '../../ledger/account.ts'
import { placesOf } from '../../ledger/ledger.ts'
import { containerOf } from '../../ledger/place.ts'
import type { Session } from '../session.ts'
import type { LessonPlace, LessonThing } from './lesson.ts'

/** What is to come off next: bolts, what they hold, and a rag to keep dirt out. Null once the way back has begun. */
export function stripLesson({ state }: Session, place: LessonPlace): LessonThing | null {
  const steps = [...state.steps.values()]
  if (state.build !== null || steps.some(({ built }) => built !== 'open')) return null
  const all = [...state.ledger.accounts.values()]
  const of = (...kinds: Account['piece']['kind'][]) => all.find(({ piece }) => kinds.includes(piece.kind))
  const bolts = of('fastener')
  if (!bolts && state.strip === null) return { do: 'begin' }
  if (state.strip === null) return null
  const missing: LessonThing | null = !bolts
    ? { do: 'bolts' }
    : !of('part')
      ? { do: 'lid', bag: bagOf(state, bolts) }
      : !of('aid')
        ? { do: 'aid' }
        : null
  // What one writes on a bag is taken for what came off on one screen only.
  if (missing) return place.at === 'off' ? missing : { do: 'go-off' }
  return { do: 'end', byNumber: place.at === 'off' }
}

function bagOf({ ledger }: Session['state'], { piece }: Account): number | null {
  for (const { place } of placesOf(ledger, piece.id)) {
    const container = containerOf(place)
    if (container !== null) return container
  }
  return null
}
