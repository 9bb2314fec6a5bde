import type { Command, Into } from '../../journal/command.ts'
import type { Account } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { hereOf, openOf, ordersFor } from '../../plan/buying/order-lines.ts'
import { heirs } from '../../plan/succession.ts'
import type { OrderFacts } from '../../plan/waiting/waiting-facts.ts'
import { readDecimal, readWhole } from '../../trade/number.ts'
import { amountAndName } from '../bought-lines.ts'
import { noSuchOrder, openOrders, orderNumber, ordersNamed } from '../find-order.ts'
import { takeKitLines } from '../kit-lines.ts'
import type { Line } from '../line.ts'
import type { Verb } from '../verb.ts'

type Receive = Extract<Command, { do: 'receive' }>

export const arrivalVerbs: readonly Verb[] = [
  {
    words: ['arrived'],
    topic: 'buying and arrivals',
    forms: [
      'arrived o1 [COUNT [spare COUNT]] [size SIZE] [into PLACE]',
      'arrived [COUNT] PIECE [into PLACE]',
      'arrived all [into PLACE]',
    ],
    says: 'Says that what was ordered is here: a line, or all lines of a piece; a part of it by its number.',
    examples: [
      'arrived o1',
      'arrived o1 6 into new bag',
      'arrived o1 10 spare 2',
      'arrived head bolts',
      'arrived all',
    ],
    read(line) {
      const placed = line.placeAfter('into')
      const into = placed ?? BENCH
      const size = line.take(/,? size (.+)$/i)?.[0]
      const [spareText] = line.take(/,? spare (\d{1,4})$/i) ?? []
      const asked = line.takeRest('o1')
      if (/^all$/i.test(asked)) {
        const open = openOrders(line.state).filter(({ ordered }) => ordered)
        if (open.length === 0) noSuchOrder(line, '')
        return open.map(({ id }) => ({ do: 'receive', order: id, into }))
      }
      const [, id = '', amount] = /^(o\d+)(?: ([\d.,]+))?$/i.exec(asked) ?? []
      const order = orderNumber(id)
      if (order === null) return onlyPieces(line, placed, receiveNamed(line, asked, { into, size }))
      const count = amount === undefined ? undefined : readDecimal(amount)
      if (amount !== undefined && count === undefined) line.notUnderstood(amount)
      const spare = spareText === undefined ? undefined : Number(spareText)
      return onlyPieces(line, placed, [{ do: 'receive', order, count, spare, into, size }])
    },
  },
  {
    words: ['cancel'],
    topic: 'buying and arrivals',
    forms: ['cancel o1 because REASON'],
    says: 'Says that the rest of an order is not wanted any more.',
    examples: ['cancel o1 because the old one can be ground'],
    read(line) {
      const reason = line.reason()
      const words = line.takeRest('o1')
      const order = orderNumber(words) ?? onlyOne(line, words, openOrders(line.state))
      return { do: 'change-order', order, cancelled: reason }
    },
  },
  {
    words: ['send back'],
    topic: 'buying and arrivals',
    forms: ['send back o1 [COUNT] because REASON', 'send back [COUNT] PIECE because REASON'],
    says: 'Sends what came back to where it was bought; what was ordered is still to come then, until it is cancelled.',
    examples: [
      'send back o1 because it is for the other side',
      'send back 2 head bolts because they are too short',
    ],
    read(line) {
      const reason = line.reason()
      const asked = line.takeRest('o1')
      const [, id = '', amount] = /^(o\d+)(?: ([\d.,]+))?$/i.exec(asked) ?? []
      const order = orderNumber(id)
      if (order === null) return sendBackNamed(line, asked, reason)
      const count = amount === undefined ? undefined : readDecimal(amount)
      if (amount !== undefined && count === undefined) line.notUnderstood(amount)
      return { do: 'return-order', order, count, reason }
    },
  },
  {
    words: ['kit'],
    topic: 'buying and arrivals',
    forms: ['kit NAME: COUNT THING, COUNT THING [into PLACE]'],
    says: 'Counts a kit in: what is owed goes to its homes, what is left over is spare.',
    examples: ['kit top end gaskets: 1 head gasket, 4 O-rings into new bag'],
    meant: /:/,
    read(line) {
      const into = intoOf(line)
      const [name = ''] = line.take(/^([^:]+):/) ?? line.missing('NAME:')
      const ordered = openOrders(line.state).find(
        (order) => order.piece === undefined && order.name.toLowerCase() === name.trim().toLowerCase(),
      )
      return { do: 'count-in', name: name.trim(), lines: takeKitLines(line), into, order: ordered?.id }
    },
  },
]

const BENCH: Into = { kind: 'place', place: 'bench' }

function intoOf(line: Line): Into {
  return line.placeAfter('into') ?? BENCH
}

/** What is no piece, such as grease, is in no place that the record knows: a place for it is not passed over in silence. */
function onlyPieces(line: Line, placed: Into | undefined, commands: Receive[]): Receive[] {
  const [first] = commands
  const order = first && line.state.orders.get(first.order)
  if (placed && order && order.piece === undefined) line.notUnderstood('into', `arrived ${order.id}`)
  return commands
}

/** All that is to come for a piece: line by line, the oldest first, where a number is said. */
function receiveNamed(
  line: Line,
  asked: string,
  { into, size }: { into: Into; size: string | undefined },
): Receive[] {
  const { count, lines } = namedLines(line, asked, openOrders(line.state))
  if (count === undefined) return lines.map(({ id }) => ({ do: 'receive', order: id, into, size }))
  const commands: Receive[] = []
  let left = count
  for (const [index, order] of lines.entries()) {
    if (left <= 0) break
    // What is too many for all lines together is said of the last.
    const part = index === lines.length - 1 ? left : Math.min(left, openOf(order))
    commands.push({ do: 'receive', order: order.id, count: part, into, size })
    left -= part
  }
  return commands
}

/** By the line that brought it, or one that is wrong, or the newest of which some is here; what was never ordered goes by a move. */
function sendBackNamed(line: Line, asked: string, reason: string): Command {
  const here = [...line.state.orders.values()].filter((order) => hereOf(order) > 0)
  const { count, lines } = namedLines(line, asked, here, false)
  const words = count === undefined ? asked : splitNumber(line, asked).words
  const last = lineBack(line, words.toLowerCase(), lines)
  if (last) return { do: 'return-order', order: last.id, count, reason }
  line.rest = asked
  const isHere = ({ at }: Account) =>
    [...at.keys()].some((place) => place !== 'machine' && place !== 'supplier')
  const moved = line.countAndOnePiece(isHere)
  const ordered = lineBack(
    line,
    moved.piece,
    ordersFor(line.state, moved.piece).filter((order) => hereOf(order) > 0),
  )
  if (ordered) return { do: 'return-order', order: ordered.id, count: moved.count, reason }
  return { do: 'move', ...moved, into: { kind: 'place', place: 'supplier' }, reason }
}

/** By which of the lines something goes back. A piece that is named by its id never takes along what came for its home since. */
function lineBack(line: Line, words: string, lines: readonly OrderFacts[]): OrderFacts | undefined {
  const id = words as PieceId
  const own = line.state.comparisons.get(id)?.order
  if (own !== undefined) return lines.find((order) => order.id === own)
  const isOld = line.state.ledger.accounts.has(id) && heirs(line.state)(id) !== id
  return isOld ? undefined : (lines.findLast(({ wrong }) => wrong > 0) ?? lines.at(-1))
}

/** The lines that words name, all of one thing, with the number in front of the words if one is there. */
function namedLines(
  line: Line,
  asked: string,
  among: readonly OrderFacts[],
  isNeeded = true,
): { count: number | undefined; lines: OrderFacts[] } {
  const whole = ordersNamed(asked, among, line.state)
  const { number, words } = splitNumber(line, asked)
  const isCount = whole.length === 0 && number !== undefined
  const lines = isCount ? ordersNamed(words, among, line.state) : whole
  if (lines.length === 0 && isNeeded) noSuchOrder(line, isCount ? words : asked)
  const kinds = new Set(lines.map((order) => kindOf(line, order)))
  if (kinds.size > 1) noSuchOrder(line, asked)
  return { count: isCount ? number : undefined, lines }
}

/** `6 head bolts`, `two head bolts`, `2.1 L coolant`, `head bolts 6`. */
function splitNumber(line: Line, text: string): { number: number | undefined; words: string } {
  if (/^[\d.,]*\d ?\D/.test(text)) {
    const { count, name } = amountAndName(line, text)
    return { number: count, words: name }
  }
  const [, first = '', after = ''] = /^(\S+) (.+)$/.exec(text) ?? []
  const [, before = '', last = ''] = /^(.+) (\S+)$/.exec(text) ?? []
  const front = readWhole(first)
  return front === undefined ? { number: readWhole(last), words: before } : { number: front, words: after }
}

/** What a line is of: lines for the positions of one set are of one kind. */
function kindOf(line: Line, { name, piece }: OrderFacts): string {
  const account = piece === undefined ? undefined : line.account(piece)
  return account ? `${account.piece.name} at ${account.home.at}` : name
}

function onlyOne(line: Line, words: string, among: readonly OrderFacts[]): OrderFacts['id'] {
  const found = ordersNamed(words, among, line.state)
  return found.length === 1 && found[0] ? found[0].id : noSuchOrder(line, words)
}
