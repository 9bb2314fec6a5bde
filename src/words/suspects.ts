import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import type { DifferenceFacts } from '../plan/facts.ts'
import { stepName } from './names.ts'
import { countedPiece, countedPieces } from './pieces.ts'
import { containerPlace, whereName } from './places.ts'

/** Where the record has a piece that may be the one found too many in a container. */
export interface Suspect {
  piece: PieceId
  place: Place
}

/**
 * Which pieces a count's surplus may be: those that lay in the container once and that the record has elsewhere now, on
 * the machine above all, in the number that is too many. Last taken out first.
 */
export function suspectsOf(
  state: State,
  { container, piece, expected, counted }: DifferenceFacts,
): Suspect[] {
  const over = counted - expected
  if (over <= 0) return []
  const candidates = piece === null ? [...(state.takenFrom.get(container)?.keys() ?? [])].reverse() : [piece]
  return candidates.flatMap((id) => {
    const account = state.ledger.accounts.get(id)
    if (!account || account.piece.kind === 'aid' || account.piece.kind === 'tool') return []
    return [...account.at]
      .filter(([place, count]) => count >= over && containerPlace(place)?.container !== container)
      .map(([place]) => ({ piece: id, place }))
  })
}

/** What it may be, in few words, with what explains it so. What is of one set is told together. */
export function suspectsTold(state: State, difference: DifferenceFacts): { text: string; typed: string }[] {
  const over = difference.counted - difference.expected
  const sets = new Map<string, Suspect[]>()
  for (const suspect of suspectsOf(state, difference)) {
    const { piece, home } = state.ledger.accounts.get(suspect.piece) ?? {}
    const set = home?.position === undefined ? suspect.piece : `${piece?.name} ${home.at}`
    const key = `${set} ${suspect.place}`
    sets.set(key, [...(sets.get(key) ?? []), suspect])
  }
  return [...sets.values()].flatMap((set) => {
    const [suspect] = set
    if (!suspect) return []
    const { piece, place } = suspect
    if (set.length === 1)
      return [
        { text: suspectText(state, suspect, over), typed: `${piece} from ${placeToType(state, place)}` },
      ]
    const pieces = countedPieces(state, set.map((each) => ({ piece: each.piece, count: 1 })).reverse())
    return [
      {
        text: `one of ${pieces}, recorded ${whereRecorded(state, suspect)}`,
        typed: `PIECE from ${placeToType(state, place)}`,
      },
    ]
  })
}

/** What it may be, and where the record has that: `1 × seat bolt M6x25, recorded as fitted in step 1, seat`. */
export function suspectText(state: State, suspect: Suspect, count: number): string {
  return `${countedPiece(state, suspect.piece, count)}, recorded ${whereRecorded(state, suspect)}`
}

function whereRecorded(state: State, { piece, place }: Suspect): string {
  const { step = 0 } = state.ledger.accounts.get(piece)?.piece ?? {}
  return place === 'machine' ? `as fitted in ${stepName(state, step)}` : whereName(state, place)
}

/** A place as it is typed behind "from" in an explanation. */
function placeToType(state: State, place: Place): string {
  const inside = containerPlace(place)
  if (!inside) return place
  const kind = state.containers.get(inside.container)?.kind ?? 'bag'
  return `${kind} ${inside.container}${inside.slot === undefined ? '' : `/${inside.slot}`}`
}
