import type { Into } from '../journal/command.ts'
import { placesOf } from '../ledger/ledger.ts'
import { belongsInToolbox, type PieceId } from '../ledger/piece.ts'
import { containerOf, type NamedPlace, type Place, slotOf } from '../ledger/place.ts'
import type { DifferenceFacts } from '../plan/facts.ts'
import { entriesInForce } from './in-force.ts'
import type { Session } from './session.ts'

/** Where the record has a piece that may be the one found too many in a container. */
export interface Suspect {
  piece: PieceId
  place: Place
  /** The place as a command names it. */
  other: Into
}

/**
 * Which pieces a count's surplus may be: those that lay in the container once and that the record has elsewhere now, on
 * the machine above all, in the number that is too many. Last taken out first.
 */
export function suspectsOf(
  session: Session,
  { container, piece, expected, counted }: DifferenceFacts,
): Suspect[] {
  const over = counted - expected
  if (over <= 0) return []
  const candidates = piece === null ? tookOut(session, container) : [piece]
  const { accounts } = session.state.ledger
  return candidates.flatMap((id) => {
    const account = accounts.get(id)
    if (!account || belongsInToolbox(account.piece)) return []
    return placesOf(session.state.ledger, id)
      .filter(({ place, count }) => count >= over && containerOf(place) !== container)
      .map(({ place }) => ({ piece: id, place, other: asNamed(place) }))
  })
}

function asNamed(place: Place): Into {
  const no = containerOf(place)
  if (no === null) return { kind: 'place', place: place as NamedPlace }
  return { kind: 'container', no, slot: slotOf(place) ?? undefined }
}

function tookOut(session: Session, container: number): PieceId[] {
  const found = new Set<PieceId>()
  for (const entry of entriesInForce(session).reverse()) {
    if (!('moves' in entry)) continue
    for (const { piece, from } of entry.moves) if (containerOf(from) === container) found.add(piece)
  }
  return [...found]
}
