import type { Command } from '../journal/command.ts'
import type { Account } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import { type ShoppingLine, shopping } from '../plan/buying/shopping.ts'
import type { PartNotes } from '../plan/waiting/waiting-facts.ts'
import { asOne } from '../trade/bag-line/nouns.ts'
import { readDecimal } from '../trade/number.ts'
import type { Line } from './line.ts'
import { misread } from './stopped.ts'

type OrderLine = Extract<Command, { do: 'line-orders' }>['lines'][number]
type Notes = PartNotes & { due?: string | undefined; size?: string | undefined }

/** Orders lines of the list by their numbers there, or all of it. */
export function buyListed(line: Line, asked: string, notes: Notes): Command[] {
  const list = shopping(line.state)
  const numbers = /^all$/i.test(asked) ? list.map((_, index) => index + 1) : line.numbers(asked)
  if (numbers.length === 0) misread({ code: 'no-such-want', part: asked, count: 0 })
  const chosen = [...new Set(numbers)].map(
    (number) =>
      list[number - 1] ?? misread({ code: 'no-such-want', part: String(number), count: list.length }),
  )
  const ofOne = notes.price?.typed ?? notes.partNo ?? notes.size
  if (chosen.length > 1 && ofOne !== undefined) line.notUnderstood(ofOne)
  return buy(
    line,
    chosen.map((each) => ({ wanted: each, count: each.count })),
    notes,
  )
}

/** Orders a number of a piece, or of something in the list that goes by these words. */
export function buyNamed(line: Line, words: string, notes: Notes): Command[] {
  const list = shopping(line.state)
  const listed = named(list, words)
  if (listed) return buy(line, [listed], notes)
  line.rest = words
  const { count, words: name, pieces } = line.countAndPiece(({ should }) => should > 0)
  const short = pieces.filter((piece) => list.some((each) => each.piece === piece))
  const lot = areAlike(line, pieces) ? (short.length > 0 ? short : pieces) : pieces
  const [first] = lot
  if (first === undefined || (lot.length > 1 && !areAlike(line, pieces))) line.which(name, pieces)
  if (lot.length === 1) {
    const wanted = list.find(({ piece }) => piece === first)
    return buy(
      line,
      [{ piece: first, count: count ?? wanted?.count ?? line.account(first)?.should ?? 1 }],
      notes,
    )
  }
  const some = lot.slice(0, count ?? lot.length)
  return buy(
    line,
    some.map((piece) => ({ piece, count: 1 })),
    notes,
  )
}

/** What a piece is called in a shop: its name with the size that is ordered, or with the position that it is for. */
function shopName({ piece, home }: Account, size = piece.size): string {
  const { name } = piece
  const called = home.position === undefined ? name : `${asOne(name)} ${home.position}`
  return size === undefined || called.endsWith(size) ? called : `${called} ${size}`
}

/** An amount in front of a name: `2 tubes grease`, `5 L oil`, `1 gasket paper`. One where no number is said. */
export function amountAndName(line: Line, words: string): { count: number; unit?: string; name: string } {
  const [, number = '1', rest = words] = /^([\d.,]+) ?(?=\D)(.+)$/.exec(words) ?? []
  const count = readDecimal(number)
  if (count === undefined) line.notUnderstood(number)
  const [, unit, name] = UNIT.exec(rest) ?? []
  if (unit === undefined || name === undefined) return { count, name: rest }
  return { count, unit: /^(?:l|litres?|liters?)$/i.test(unit) ? 'L' : unit, name }
}

// What such things are sold by: common practice.
const UNIT =
  /^(tubes?|cans?|tins?|bottles?|jars?|cartridges?|rolls?|sheets?|boxes|box|packs?|sets?|pairs?|kg|g|ml|m|l|litres?|liters?|metres?|meters?) (?:of )?(.+)$/i

/** A line of the list, or a piece beyond it. */
type Bought = { wanted: ShoppingLine; count: number } | { piece: PieceId; count: number }

function buy(line: Line, bought: readonly Bought[], notes: Notes): Command[] {
  const lines: OrderLine[] = []
  const changes: Command[] = []
  for (const each of bought) {
    const { count } = each
    const wanted = 'wanted' in each ? each.wanted : undefined
    const piece = 'piece' in each ? each.piece : wanted?.piece
    const account = piece === undefined ? undefined : line.account(piece)
    if (notes.size !== undefined && (piece === undefined || wanted?.order !== undefined))
      line.notUnderstood(`size ${notes.size}`)
    if (wanted?.order !== undefined) {
      const more = count === wanted.count ? {} : { count }
      changes.push({ do: 'change-order', order: wanted.order, ordered: true, ...more, ...notes })
    } else {
      const name = account ? shopName(account, notes.size) : (wanted?.name ?? '')
      lines.push({ piece, name, unit: wanted?.unit, count, ...notes })
    }
  }
  return [...(lines.length > 0 ? [{ do: 'line-orders' as const, lines, ordered: true }] : []), ...changes]
}

/** A line of the list that is for no piece, by its name and with the number in front of it, if one is there. */
function named(list: readonly ShoppingLine[], words: string): { wanted: ShoppingLine; count: number } | null {
  const [, number, rest = words] = /^([\d.,]+) ?(?=\D)(.+)$/.exec(words) ?? []
  const bare = UNIT.exec(rest)?.[2] ?? rest
  const same = (name: string) => [words, rest, bare].some((said) => said.toLowerCase() === name.toLowerCase())
  const wanted = list.find((each) => each.piece === undefined && same(each.name))
  if (!wanted) return null
  return { wanted, count: (number === undefined ? undefined : readDecimal(number)) ?? wanted.count }
}

/** Whether pieces are of one set, as the eight seals of eight valves. */
function areAlike(line: Line, pieces: readonly PieceId[]): boolean {
  const accounts = pieces.map((piece) => line.account(piece))
  return accounts.every(
    (each) => each?.piece.name === accounts[0]?.piece.name && each?.home.at === accounts[0]?.home.at,
  )
}
