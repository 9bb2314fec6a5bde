import type { State } from '../../journal/state.ts'
import type { OutingId } from '../../plan/waiting/waiting-facts.ts'
import { say } from '../cures.ts'
import { daysLate, dayText } from '../days.ts'
import { counted } from '../grammar.ts'
import { agree, countedPiece, liesText, pieceName } from '../pieces.ts'
import { told } from '../told.ts'
import { awayPieces, backWords, holderText, outingStanding } from '../waiting/out-words.ts'
import type { Tellers } from './tellers.ts'

/** Refusals about days to come, and about what is out of the house. */
export const outingRefusals: Tellers<
  | 'date-past'
  | 'out-already'
  | 'goes-and-stays'
  | 'not-out'
  | 'back-already'
  | 'too-many-back'
  | 'taken-out-already'
> = {
  'date-past': (_, { day, today }) =>
    told(
      `${dayText(day, today)} is ${counted(daysLate(day, today), 'day')} ago: today is ${dayText(today, day)}`,
      'say it again with a day that is still to come',
    ),
  'out-already': (state, { piece, outing: id }) => {
    const outing = id === null ? undefined : state.outings.get(id)
    const where = outing ? `, ${outingStanding(state, outing)}` : ''
    return told(
      `${pieceName(state, piece)} ${agree(state, piece, 'is', 'are')} out already${where}`,
      `once back, ${say(backWords(state, piece) ?? `came back ${piece}`)}`,
    )
  },
  'goes-and-stays': (state, { piece }) =>
    told(
      `${pieceName(state, piece)} cannot go out and stay here`,
      `say ${agree(state, piece, 'it', 'them')} once: as going out, or behind the word without`,
    ),
  'not-out': (state, { piece, outing: id }) => {
    const outing = id === null ? undefined : state.outings.get(id)
    const name = pieceName(state, piece)
    return outing
      ? told(
          `${name} did not go out with ${outing.id}, but ${agree(state, piece, 'is', 'are')} ${liesText(state, piece)}`,
          `say it without that piece: ${say(`came back ${outing.id}`)}`,
          [wentText(state, outing.id)],
        )
      : told(
          `${name} ${agree(state, piece, 'is', 'are')} not out, but ${liesText(state, piece)}`,
          'look which piece came back, and say that',
          awayLines(state),
        )
  },
  'back-already': (state, { outing: id, piece }) => {
    const outing = state.outings.get(id)
    const away = outing ? awayPieces(state, outing) : ''
    const what = piece === null ? `all that went out as ${id}` : pieceName(state, piece)
    const isMany = piece !== null && agree(state, piece, 'is', 'are') === 'are'
    return told(
      `${what} ${isMany ? 'are' : 'is'} back already`,
      away === '' ? 'nothing needs doing' : `say what came back now: ${say(`came back ${id}`)}`,
      away === '' ? [wentText(state, id)] : [`still away: ${away}`],
    )
  },
  'too-many-back': (state, { outing, piece, away, wanted }) =>
    told(
      `${pieceName(state, piece)}: ${away} away with ${outing}, ${wanted} said to be back: ${wanted - away} too many`,
      'count what came back, and say that number',
    ),
  'taken-out-already': (state, { outing, piece }) =>
    told(
      `${countedPiece(state, piece, state.ledger.accounts.get(piece)?.entered ?? 1)} taken out there ${agree(state, piece, 'is', 'are')} in the record already (${outing}), ${liesText(state, piece)}`,
      'if these are others, give them a name that tells the two apart',
    ),
}

/** What went out, and where it is now. */
function wentText(state: State, id: OutingId): string {
  const pieces = state.outings.get(id)?.pieces ?? []
  return pieces
    .map(({ piece, count }) => `${countedPiece(state, piece, count)}: ${liesText(state, piece)}`)
    .join('; ')
}

/** All that is out, a line for each outing. */
function awayLines(state: State): string[] {
  return [...state.outings.values()]
    .filter(({ pieces }) => pieces.some(({ away }) => away > 0))
    .map((outing) => `${awayPieces(state, outing)}, ${holderText(outing)}`)
}
