import type { State } from '../../journal/state.ts'
import type { Violation } from '../../ledger/laws.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { Place } from '../../ledger/place.ts'
import { asideWords, fitWords, homeWords, say, toolboxWords } from '../cures.ts'
import { liesAt, mateAt, successorOf } from '../lookups.ts'
import { agree, homeName, liesText, pieceName, positionName } from '../pieces.ts'
import { containerPlace, placeName, whereName } from '../places.ts'
import { type Told, told } from '../told.ts'
import type { Tellers } from './tellers.ts'

/** What would break a law of the ledger. */
export const lawRefusals: Tellers<'law'> = {
  law: (state, { violation }) => violationTold(state, violation),
}

/** How much a place holds against what is wanted of it: `bag 5 holds 4, 6 wanted: 2 short`. */
export function holdsShort(state: State, place: Place, there: number, wanted: number): string {
  const count = there === 0 ? 'none' : there
  const holds = containerPlace(place)
    ? `${placeName(state, place)} holds ${count}`
    : `${count} ${whereName(state, place)}`
  return `${holds}, ${wanted} wanted: ${wanted - there} short`
}

function violationTold(state: State, violation: Violation): Told {
  const { piece } = violation
  const name = pieceName(state, piece)
  switch (violation.law) {
    case 'unknown-piece':
      return told(`there is no piece ${piece} in this job`, `${say('where')} shows every piece`)
    case 'account-twice':
      return told(
        `${name} ${agree(state, piece, 'is', 'are')} in the record already`,
        'say it again; nothing was changed',
      )
    case 'not-whole':
      return told(`${name}: ${violation.count} is no number of pieces`, 'count once more and say the number')
    case 'same-place':
      return told(
        `${name} cannot go from ${placeName(state, violation.place)} to the same place`,
        'say where else',
      )
    case 'carried-by-itself':
      return told(
        `${name} cannot sit on ${pieceName(state, violation.carrier)}, which sits on it`,
        'say what it is taken off first',
      )
    case 'no-carrier':
      return told(
        `${name} cannot sit on ${violation.carrier}: there is no such piece`,
        `${say('where')} shows every piece`,
      )
    case 'more-than-there':
      return told(
        `${name}: ${holdsShort(state, violation.place, violation.there, violation.wanted)}`,
        'count what is in your hand, and say that number',
      )
    case 'not-its-position':
      return wrongPosition(state, violation)
    case 'position-not-said':
      if (isUnwanted(state, piece)) return noHome(state, piece)
      return told(
        `${name} belongs to one position only, and none was said`,
        `its home is ${homeName(state, piece)}: ${fitWords(state, piece)}`,
      )
    case 'home-full':
      return violation.should === 0 ? noHome(state, piece) : full(state, violation)
    case 'not-conserved':
      return told(
        `${name}: ${violation.entered} entered the record, ${violation.found} are found in it`,
        'the record is damaged: make a copy of the job folder, and change nothing in it',
      )
    default:
      return violation satisfies never
  }
}

function wrongPosition(
  state: State,
  { piece, own, tried }: Extract<Violation, { law: 'not-its-position' }>,
): Told {
  if (isUnwanted(state, piece)) return noHome(state, piece)
  const home = state.ledger.accounts.get(piece)?.home
  if (home?.position === undefined) {
    return told(
      `${pieceName(state, piece)} ${agree(state, piece, 'does', 'do')} not belong at ${positionName(tried)}`,
      `positions: ${own}`,
    )
  }
  return told(
    `not at ${positionName(tried)}: ${pieceName(state, piece)} goes home to ${homeName(state, piece)} only`,
    `put it there: ${fitWords(state, piece)}; should it change homes for good, ${swapWords(state, piece, tried)}`,
  )
}

function full(
  state: State,
  { piece, should, there, wanted }: Extract<Violation, { law: 'home-full' }>,
): Told {
  return told(
    `${pieceName(state, piece)}: ${should} belong there, ${there + wanted} would be there: ${there + wanted - should} too many`,
    `look where the rest belongs: ${say('left')}; what is surplus, ${say(`spare ${there + wanted - should} ${piece}`)}`,
  )
}

/** A piece that was replaced or left off: nothing on the machine waits for it. */
export function noHome(state: State, piece: PieceId): Told {
  const name = pieceName(state, piece)
  const successor = successorOf(state, piece)?.piece.id
  const lying = liesAt(state, piece).find(({ place }) => isPassing(place))
  const aside = lying && asideWords(state, piece, lying.place)
  if (!successor) {
    const them = agree(state, piece, 'it', 'them')
    const cure = aside ? `put ${them} out of the way: ${aside}` : 'nothing needs doing'
    return told(`nothing on the machine waits for ${name}`, cure)
  }
  const fresh = liesAt(state, successor).find(({ place }) => isPassing(place))
  const { should = 0, at } = state.ledger.accounts.get(successor) ?? {}
  const owed = should - (at?.get('machine') ?? 0)
  const isDue = state.comparisons.get(successor)?.verdict === 'due'
  const cures = [
    fresh && owed > 0
      ? `fit the new: ${homeWords(state, successor, Math.min(fresh.count, owed), fresh.place)}`
      : '',
    aside && !isDue ? `put the old out of the way: ${aside}` : '',
  ]
  return told(
    `${name} (${piece}) ${agree(state, piece, 'was replaced, and does', 'were replaced, and do')} not go back`,
    cures.filter(Boolean).join('; ') || 'nothing needs doing',
    [`in its place: ${successor}, ${liesText(state, successor)}`],
  )
}

/** An aid or a tool is no part of the machine. */
export function notOfTheMachine(state: State, piece: PieceId): Told {
  const away = liesAt(state, piece).find(({ place }) => place === 'machine' || isPassing(place))
  return told(
    `${pieceName(state, piece)} ${agree(state, piece, 'does not stay on the machine: it belongs', 'do not stay on the machine: they belong')} in the toolbox`,
    away ? `${toolboxWords(state, piece, away)} when out` : 'nothing needs doing',
  )
}

/** Whether a place is one that a piece is meant to leave again. */
function isPassing(place: Place): boolean {
  return !['machine', 'toolbox', 'scrap', 'lost', 'spare'].includes(place)
}

/** A decision that gives a piece another home: by a swap where that home has a piece of its own. */
function swapWords(state: State, piece: PieceId, position: string): string {
  const mate = mateAt(state, piece, position)
  return mate
    ? say(`swap ${piece} and ${mate} because ...`)
    : say(`rehome ${piece} to ${position} because ...`)
}

function isUnwanted(state: State, piece: PieceId): boolean {
  return state.ledger.accounts.get(piece)?.should === 0
}
