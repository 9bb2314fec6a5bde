import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { fitWords, homeWords, say, sendWords, shortageWords, usedWords } from '../cures.ts'
import { isAre, joined } from '../grammar.ts'
import { liesAt } from '../lookups.ts'
import { stepName } from '../names.ts'
import { agree, countedPiece, homeName, liesText, pieceName, positionName } from '../pieces.ts'
import { whereName } from '../places.ts'
import { type Told, told } from '../told.ts'
import { holdsShort, noHome, notOfTheMachine } from './law.ts'
import type { RefusalOf, Tellers } from './tellers.ts'

/** What concerns pieces, their homes and where they lie. */
export const pieceRefusals: Tellers<
  | 'home-exists'
  | 'which-position'
  | 'not-in-step'
  | 'not-for-home'
  | 'one-by-one'
  | 'piece-used'
  | 'home-already'
  | 'not-within-reach'
  | 'nothing-there'
  | 'which-place'
  | 'through-a-step'
  | 'too-many-left-off'
  | 'not-lost'
  | 'not-single-use'
  | 'not-matched'
  | 'home-taken'
  | 'name-taken'
  | 'no-such-position'
  | 'already-fitted'
> = {
  'home-exists': (state, { piece, position }) =>
    told(
      `${positionName(position)} is taken: ${pieceName(state, piece)} came off there and is ${liesText(state, piece)}`,
      `look at the mark on the part; if the earlier entry was wrong, ${say('undo')} takes back the last one`,
    ),
  'which-position': (_, { name, positions }) =>
    told(
      `${name} ${positions.join(', ')}: some are missing or broken, and the number does not say which`,
      'take off the whole ones by their positions, then the others one by one',
    ),
  'not-in-step': (state, { piece, step, own }) =>
    told(
      `${pieceName(state, piece)} ${agree(state, piece, 'belongs', 'belong')} to ${stepName(state, own)}, not to ${stepName(state, step)}`,
      state.steps.get(own)?.built === 'underway'
        ? `that step is under way too: ${fitWords(state, piece)}`
        : `leave ${agree(state, piece, 'it', 'them')} until then: ${say(`take ${own}`)}`,
    ),
  'not-for-home': (state, { piece }) => {
    const kind = state.ledger.accounts.get(piece)?.piece.kind
    return kind === 'aid' || kind === 'tool' ? notOfTheMachine(state, piece) : noHome(state, piece)
  },
  'one-by-one': (state, { pieces }) => {
    const [first] = pieces
    if (pieces.length === 1 && first) {
      return told(
        `${pieceName(state, first)} has one home, and the record still has the old one ${liesText(state, first)}: another has no home`,
        `if it takes the place of the old one: ${say(`new ${first} instead`)}`,
      )
    }
    return told(
      `${joined(pieces.map((piece) => pieceName(state, piece)))} each have a home of their own, so they go home one by one`,
      first ? `first ${fitWords(state, first)}, then the next` : 'fit one, then the next',
    )
  },
  'piece-used': (state, { piece }) =>
    told(
      `${pieceName(state, piece)} ${agree(state, piece, 'is single-use and used: a new one goes in', 'are single-use and used: new ones go in')}`,
      usedWords(state, piece),
    ),
  'home-already': (state, { piece }) =>
    told(allHome(state, piece), `look where the one in your hand belongs: ${say('left')}`),
  'not-within-reach': reachTold,
  'nothing-there': (state, { piece }) =>
    told(`${pieceName(state, piece)}: none to be moved from there`, nothingCure(state, piece), [
      liesText(state, piece),
    ]),
  'which-place': (state, { piece, lies: places }) =>
    told(
      `${pieceName(state, piece)} ${agree(state, piece, 'lies', 'lie')} in ${places.length} places, so the number is needed`,
      `say how many: ${sendWords(state, 'move', piece, places[0]?.place ?? 'bench', { to: 'PLACE' })}`,
      places.map(({ place, count }) => `${count} ${whereName(state, place)}`),
    ),
  'through-a-step': (state, { piece, step }) =>
    told(
      `${pieceName(state, piece)} ${agree(state, piece, 'goes', 'go')} home by fitting in ${stepName(state, step)}, not by a move`,
      `put ${agree(state, piece, 'it', 'them')} home: ${fitWords(state, piece)}`,
    ),
  'too-many-left-off': (state, { piece, wanted, owed }) =>
    owed <= 0
      ? told(
          `${pieceName(state, piece)}: none is missing on the machine, so none can be left off`,
          'nothing needs doing',
        )
      : told(
          `${pieceName(state, piece)}: ${owed} not on the machine, ${wanted} to be left off: ${wanted - owed} too many`,
          'say the number again',
        ),
  'not-lost': (state, { piece }) =>
    told(`${pieceName(state, piece)}: none is lost without a decision`, lostCure(state, piece), [
      liesText(state, piece),
    ]),
  'not-single-use': (state, { piece }) =>
    told(
      `${pieceName(state, piece)}: not single-use, or not used yet, so no decision is due`,
      `nothing needs doing: ${agree(state, piece, 'it goes', 'they go')} home as ${agree(state, piece, 'it is', 'they are')}`,
    ),
  'not-matched': (state, { piece }) =>
    told(
      `${pieceName(state, piece)}: any of them fits any position, so there is none to change`,
      `nothing needs doing: ${agree(state, piece, 'it goes', 'they go')} home to ${homeName(state, piece)}`,
    ),
  'home-taken': (state, { position, piece }) =>
    told(
      `${positionName(position)} is the home of ${pieceName(state, piece)}`,
      `name both, so that they change homes with each other: ${say(`swap PIECE and ${piece} because ...`)}`,
    ),
  'name-taken': (state, { name, piece }) =>
    told(
      `the name '${name}' is taken: ${pieceName(state, piece)} (${piece}) belongs to the same home`,
      'give it a name that tells the two apart',
    ),
  'no-such-position': (_, { position, known }) =>
    told(`there is no ${positionName(position)} in this set`, `its positions are ${joined(known)}`),
  'already-fitted': (state, { piece }) => {
    const step = state.ledger.accounts.get(piece)?.piece.step ?? 0
    return told(
      `${pieceName(state, piece)} ${agree(state, piece, 'is', 'are')} on the machine`,
      `take ${agree(state, piece, 'it', 'them')} off first: ${say(`reopen ${step} because ...`)}`,
    )
  },
}

function reachTold(
  state: State,
  { piece, wanted, there, lies: places }: RefusalOf<'not-within-reach'>,
): Told {
  const [only] = places
  const what =
    places.length === 1 && only
      ? holdsShort(state, only.place, there, wanted)
      : `${there === 0 ? 'none' : there} within reach, ${wanted} wanted: ${wanted - there} short`
  const elsewhere = liesAt(state, piece).filter(({ place }) => !places.some((known) => known.place === place))
  return told(
    `${pieceName(state, piece)}: ${what}`,
    reachCure(state, piece, wanted),
    [...places.slice(places.length === 1 ? 1 : 0), ...elsewhere].map(
      ({ place, count }) => `${countedPiece(state, piece, count)} ${isAre(count)} ${whereName(state, place)}`,
    ),
  )
}

function reachCure(state: State, piece: PieceId, wanted: number): string {
  const should = state.ledger.accounts.get(piece)?.should ?? 0
  if (wanted > should) return 'count what is in your hand, and say that number'
  const lying = liesAt(state, piece)
  const away = lying.find(({ place }) => place === 'out' || place === 'supplier')
  if (away) return homeWords(state, piece, away.count, away.place)
  const had = lying.filter(({ place }) => place !== 'scrap' && place !== 'lost')
  const short = should - had.reduce((sum, { count }) => sum + count, 0)
  return short > 0
    ? `look for the rest first; then ${shortageWords(state, piece, short)}`
    : 'say the number that is there, or where else they lie'
}

function nothingCure(state: State, piece: PieceId): string {
  const account = state.ledger.accounts.get(piece)
  return account?.at.has('machine')
    ? `what is on the machine comes off with its step: ${say(`reopen ${account.piece.step} because ...`)}`
    : 'say where it is'
}

function lostCure(state: State, piece: PieceId): string {
  const off = liesAt(state, piece).filter(({ place }) => !['machine', 'lost'].includes(place))
  if (off.length === 0) return 'nothing needs doing'
  const words = off.length === 1 ? `lost ${piece} because ...` : `lost 1 ${piece} from PLACE because ...`
  return `if it cannot be found, ${say(words)} first`
}

function allHome(state: State, piece: PieceId): string {
  const should = state.ledger.accounts.get(piece)?.should ?? 1
  return should > 1
    ? `all ${countedPiece(state, piece, should).replace(' × ', ' ')} are home already`
    : `${pieceName(state, piece)} is home already`
}
