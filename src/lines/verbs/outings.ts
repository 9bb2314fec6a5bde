import type { Command, Into } from '../../journal/command.ts'
import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { isAllBack, outingsWith } from '../../plan/waiting/outings.ts'
import type { OutingFacts, OutingId } from '../../plan/waiting/waiting-facts.ts'
import type { Errand } from '../errand.ts'
import { findPieces } from '../find-piece.ts'
import { countedPieces, namesAny } from '../find-pieces.ts'
import type { Line } from '../line.ts'
import { readGoing } from '../read-going.ts'
import { readPlace } from '../read-place.ts'
import { readTakenOut } from '../read-taken-out.ts'
import type { Verb } from '../verb.ts'
import { isElsewhere, sends } from './pieces.ts'

const BENCH: Into = { kind: 'place', place: 'bench' }

/** Without a word to whom it is a plain move, as it always was. */
const plain = sends('out', 'Sends pieces out.', ['out cylinder head'])

export const outingVerbs: readonly Verb[] = [
  {
    words: ['out'],
    topic: 'pieces',
    forms: [
      'out PIECE, PIECE to WHOM [for WHAT] [due DATE] [expect RESULT] [without PIECES]',
      ...plain.forms,
    ],
    says: 'Sends pieces out, as to a machine shop: what sits on them goes along. "came back" says that they are here again.',
    examples: [
      'out cylinder head to the machine shop for skimming due in 5 days expect flat within 0.05',
      'out cylinder head, 3 exhaust studs to Miller without cam caps',
      'out cylinder head',
    ],
    read(line) {
      if (/ to$/i.test(line.rest)) line.missing('to WHOM')
      const split = splitTo(line)
      return split === null ? plain.read(line) : sendOut(line, split)
    },
  },
  {
    words: ['came back'],
    topic: 'pieces',
    forms: ['came back b1 [into PLACE][: RESULT; took out WHAT]', 'came back [COUNT] PIECE [into PLACE]'],
    says: 'Says that what was sent out is here again: all of it or some, and what was taken out of it there.',
    examples: [
      'came back b1',
      'came back cylinder head into new bag',
      'came back b1: skimmed by 0.1 mm; took out 2 gallery plugs back, 4 guides not back',
    ],
    read: cameBack,
  },
  {
    words: ['took out'],
    topic: 'pieces',
    forms: ['took out b1: nothing', 'took out b1: COUNT PIECE back, COUNT PIECE not back'],
    says: 'Says what a shop took out of what is back; of each, whether it is here or still there.',
    examples: ['took out b1: nothing', 'took out b1: 2 gallery plugs back, 4 guides not back'],
    read(line) {
      const { head, tail = '' } = cut(line.takeRest('b1: WHAT'))
      const outing = meantOuting(line, head)
      const there = outing?.pieces.map(({ piece }) => piece) ?? []
      return {
        do: 'come-back',
        outing: outing?.id ?? idOf(head) ?? line.missing('b1'),
        pieces: [],
        into: BENCH,
        tookOut: readTakenOut(line, tail, there),
      }
    },
  },
  {
    words: ['borrow'],
    topic: 'pieces',
    forms: ['borrow [COUNT] PIECE from job N [for PIECE] [instead] [into PLACE]'],
    says: 'Takes pieces out of another job for this one: there they are lent, here they are new. They go back with "came back" there.',
    examples: [
      'borrow 2 valve cover bolts from job 12',
      'borrow M6x20 bolts from job 3 for valve cover bolts into bag 1',
    ],
    read: borrow,
  },
]

function sendOut(line: Line, { pieces, tail }: { pieces: string; tail: string }): Command {
  line.rest = tail
  const because = line.reasonIfAny()
  const going = readGoing(line, line.takeRest('WHOM'))
  // A place of this job is nobody who could bring anything back.
  if (readPlace(going.to, line.state))
    line.notUnderstood(`to ${going.to}`, `move ${pieces.trim()} to ${going.to}`)
  return {
    do: 'send-out',
    ...going,
    why: going.why ?? because,
    pieces: countedPieces(line, pieces, isElsewhere('out')),
  }
}

/** The words for pieces before the first `to` behind which a person may be named; null without one. */
function splitTo({ rest, ...line }: Line): { pieces: string; tail: string } | null {
  const all = [...rest.matchAll(/ to /gi)]
  const cuts = all.map(({ index }) => ({ pieces: rest.slice(0, index), tail: rest.slice(index + 4) }))
  const named = cuts.find(({ pieces }) =>
    pieces.split(/\s*,\s*|\s+and\s+/i).every((part) => findPieces(part, line.state).length > 0),
  )
  return named ?? cuts[0] ?? null
}

function cameBack(line: Line): Command | Command[] {
  const { head, tail } = cut(line.takeRest('b1'))
  line.rest = head
  const into = line.placeAfter('into|onto|to') ?? BENCH
  const words = line.takeRest('b1')
  const outing = idOf(words)
  if (outing !== null) return { do: 'come-back', outing, into, ...saidOf(line, tail, outing) }
  const pieces = countedPieces(line, words, isOut)
  const by = new Map<OutingId | undefined, typeof pieces>()
  for (const each of pieces) {
    const id = outingsWith(line.state, each.piece)[0]?.id
    by.set(id, [...(by.get(id) ?? []), each])
  }
  // What is said of the work is said of one outing.
  if (tail !== undefined && by.size > 1) line.notUnderstood(tail)
  return [...by].flatMap(([id, some]): Command[] =>
    id === undefined && tail === undefined
      ? some.map((each) => backWithoutOuting(line, each, into))
      : [{ do: 'come-back', outing: id, pieces: some, into, ...saidOf(line, tail, id) }],
  )
}

/** What went out without a word to whom comes back by a move; what is not out at all is refused with who has what. */
function backWithoutOuting(
  line: Line,
  { piece, count }: { piece: PieceId; count?: number | undefined },
  into: Into,
): Command {
  const isThere = line.account(piece)?.at.has('out') ?? false
  return isThere
    ? { do: 'move', piece, count, from: 'out', into, reason: undefined }
    : { do: 'come-back', pieces: [{ piece, count }], into }
}

/** What came of the work, and what was taken out: `skimmed by 0.1 mm; took out nothing`. */
function saidOf(
  line: Line,
  tail: string | undefined,
  id: OutingId | undefined,
): Pick<Extract<Command, { do: 'come-back' }>, 'result' | 'tookOut'> {
  if (tail === undefined) return {}
  const [, before = tail, taken] = /^(.*?)(?:^|[;,] ?)took out:? ?(.*)$/i.exec(tail) ?? []
  const result = before.replace(/[;,]\s*$/, '').trim()
  const there = id === undefined ? [] : (line.state.outings.get(id)?.pieces ?? [])
  return {
    ...(result !== '' && { result }),
    ...(taken !== undefined && {
      tookOut: readTakenOut(
        line,
        taken,
        there.map(({ piece }) => piece),
      ),
    }),
  }
}

/** The outing that is named, or has the piece that is named; without words the only one that is still asked. */
function meantOuting(line: Line, words: string): OutingFacts | undefined {
  const all = [...line.state.outings.values()]
  const id = idOf(words)
  if (id !== null) return line.state.outings.get(id)
  if (words === '') {
    const asked = all.filter((outing) => outing.tookOut === null && outing.job === undefined)
    const back = asked.filter(isAllBack)
    const [only, another] = back.length > 0 ? back : asked
    return another === undefined ? only : undefined
  }
  const piece = line.piece(words.replace(/^of (?:the )?/i, ''))
  return all.findLast(({ pieces }) => pieces.some((each) => each.piece === piece))
}

function borrow(line: Line): Errand {
  const into = line.placeAfter('into|onto') ?? BENCH
  const instead = line.take(/,? instead$/i) !== null
  const own = line.take(/ for (?!.* for )(.+)$/i)?.[0]
  const [job] = line.take(/ from (?:the )?job (\d{1,3})$/i) ?? line.missing('from job N')
  const [, number, rest] = /^(\d{1,4}) (.+)$/.exec(line.rest) ?? []
  const said = line.takeRest('PIECE')
  // `10 mm dowel` is a name, of which one is borrowed.
  const isCount = number !== undefined && !namesAny(line, said)
  const words = number !== undefined && (isCount || namesAny(line, rest ?? '')) ? (rest ?? said) : said
  const count = words === said ? 1 : Number(number)
  return {
    errand: 'borrow',
    job: Number(job),
    words,
    count,
    piece: takesIt(line, own ?? words, own !== undefined),
    instead,
    into,
  }
}

/** The piece of this job whose home waits for what is borrowed. */
function takesIt(line: Line, words: string, isSaid: boolean): PieceId {
  if (!isSaid && !namesAny(line, words)) line.missing('for PIECE')
  const isWanted = ({ should }: Account) => should > 0
  const isShort = ({ should, at }: Account) => should > 0 && (at.get('machine') ?? 0) < should
  return line.piece(words, isWanted, isShort)
}

function cut(text: string): { head: string; tail?: string | undefined } {
  const at = text.indexOf(':')
  return at < 0 ? { head: text.trim() } : { head: text.slice(0, at).trim(), tail: text.slice(at + 1).trim() }
}

function idOf(words: string): OutingId | null {
  const number = /^b([1-9]\d{0,8})$/i.exec(words.trim())?.[1]
  return number === undefined ? null : `b${Number(number)}`
}

function isOut({ at }: Account): boolean {
  return at.has('out')
}
