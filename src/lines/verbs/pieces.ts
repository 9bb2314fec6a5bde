import type { Command } from '../../journal/command.ts'
import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import type { NamedPlace, Place } from '../../ledger/place.ts'
import { wordsOf } from '../../trade/bag-line/name-words.ts'
import { namesPosition } from '../find-piece.ts'
import type { Line } from '../line.ts'
import { oneOfSet } from '../one-set.ts'
import type { Verb } from '../verb.ts'

export const pieceVerbs: readonly Verb[] = [
  {
    words: ['move'],
    topic: 'pieces',
    forms: ['move [COUNT] PIECE [from PLACE] to PLACE [because REASON]'],
    says: 'Says where pieces that are off the machine went.',
    examples: [
      'move 2 valve cover bolts to bag 2',
      'move cylinder head from out to bench',
      'move p4 to tray 3/5',
    ],
    read(line) {
      const reason = line.reasonIfAny()
      const into = line.placeAfter('to|into') ?? noPlace(line)
      const from = line.placeAfter('from')
      const lies = ({ at }: Account) => [...at.keys()].some((place) => place !== 'machine')
      const { count, piece } = line.countAndOnePiece(lies)
      return { do: 'move', piece, count, from: from && line.placeOf(piece, from), into, reason }
    },
  },
  {
    words: ['rename'],
    topic: 'pieces',
    forms: ['rename PIECE to NAME'],
    says: 'Gives a piece another name; a set keeps together.',
    examples: ['rename rag to blue rag', 'rename p4 to valve cover studs'],
    read(line) {
      const name = line.take(/ (?:to|into) (.+)$/i)?.[0] ?? line.missing('to NAME')
      const words = line.takeRest('PIECE')
      if (/^(?:bag|bin|tray|tag|shelf|label) ?\d/i.test(words)) line.notUnderstood(words)
      const piece = oneOfSet(line, words)
      if (isEndAlone(line, piece, words)) {
        const end = line.pieces(words)[0] ?? piece
        line.notUnderstood(words, `rehome ${end} to ${name} because it was written wrongly`)
      }
      return { do: 'rename-piece', piece, name }
    },
  },
  sends('scrap', 'Throws pieces away for good.', ['scrap old head gasket']),
  sends('spare', 'Declares pieces surplus: they belong nowhere and may stay.', ['spare 2 valve cover bolts']),
  sends('lost', 'Says that pieces are lost, and why.', [
    'lost 1 valve cover bolt because it fell behind the bench',
  ]),
  {
    words: ['take out'],
    topic: 'pieces',
    forms: ['take out [COUNT] AID'],
    says: 'Takes an aid out of the machine: a rag, say, goes back to the toolbox.',
    examples: ['take out rag inlet port 1'],
    read: (line) => backToToolbox(line, 'machine'),
  },
  {
    words: ['return'],
    topic: 'pieces',
    forms: ['return [COUNT] TOOL'],
    says: 'Puts a tool back into the toolbox.',
    examples: ['return crank locking pin'],
    read: (line) => backToToolbox(line, undefined),
  },
]

/** Sends pieces to a place that has a verb of its own. */
export function sends(place: NamedPlace, says: string, examples: string[]): Verb {
  const needsReason = place === 'lost'
  const reason = needsReason ? 'because REASON' : '[because REASON]'
  return {
    words: [place],
    topic: 'pieces',
    forms: [`${place} [COUNT] PIECE [from PLACE] ${reason}`],
    says,
    examples,
    read(line) {
      const reason = needsReason ? line.reason() : line.reasonIfAny()
      const from = line.placeAfter('from')
      // Once a new one is here, the name alone does not say whether it or the old one is thrown away.
      line.everToo = true
      const { count, piece } = line.countAndOnePiece(isElsewhere(place), isInHouse)
      return {
        do: 'move',
        piece,
        count,
        from: from && line.placeOf(piece, from),
        into: { kind: 'place', place },
        reason,
      }
    },
  }
}

function backToToolbox(line: Line, from: Place | undefined): Command {
  const isOut = ({ piece, at }: Account) =>
    (piece.kind === 'aid' || piece.kind === 'tool') && [...at.keys()].some((place) => place !== 'toolbox')
  const { count, piece } = line.countAndOnePiece(isOut)
  line.end()
  const place = line.account(piece)?.at.has('machine') ? from : undefined
  return { do: 'move', piece, count, from: place, into: { kind: 'place', place: 'toolbox' } }
}

/** Some of it lies off the machine and not yet where it is sent. */
export function isElsewhere(to: NamedPlace) {
  return ({ at }: Account) => [...at.keys()].some((place) => place !== to && place !== 'machine')
}

/** What is at a supplier or gone is hardly meant where another of that name lies here. */
function isInHouse({ at }: Account): boolean {
  return [...at.keys()].some((place) => !['machine', 'supplier', 'scrap', 'lost'].includes(place))
}

/** The end of a hose, and not the hose: a new name for that is no name for the hose. */
function isEndAlone(line: Line, piece: PieceId, words: string): boolean {
  const account = line.account(piece)
  if (account?.piece.kind !== 'connection' || /^p\d+$/i.test(words)) return false
  // A radiator hose on the radiator: who says only what both are called means the hose.
  const name = wordsOf(account.piece.name)
  return (
    namesPosition(words, account) && wordsOf(account.home.position ?? '').some((word) => !name.includes(word))
  )
}

function noPlace(line: Line): never {
  const [, place] = /(?:^| )(?:to|into) (.+)$/i.exec(line.rest) ?? []
  if (place === undefined) line.missing('to PLACE')
  line.place(place)
  line.missing('to PLACE')
}
