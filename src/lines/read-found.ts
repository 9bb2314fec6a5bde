import { type FoundPiece, foundPiece } from '../plan/found/found-piece.ts'
import type { BagFault } from '../trade/bag-line/bag-item.ts'
import { readBagLine } from '../trade/bag-line/read-bag-line.ts'
import { readDecimal, readWhole } from '../trade/number.ts'
import type { Line } from './line.ts'

/** What turned up, as far as it was said. */
export interface Found {
  /** In the user's own words. */
  words: string
  count: number
  piece: FoundPiece
}

/** Reads the rest of a line as pieces that turned up: `M6x25 hex 10`, `2 cover bolts`, `a bolt 25 mm long under the bench`. */
export function readFound(line: Line): Found {
  const words = line.takeRest('PIECE')
  const [, told = ''] =
    /^(?:an? |the |one )?(.*?)(?:,? (?:under|below|behind|beside|on|in|near) the .*)?$/i.exec(words) ?? []
  const { lengthMm, rest } = splitLength(told)
  const bare = rest === '' ? 'bolt' : rest
  const bag = readBagLine(bare, { units: line.state.job.units })
  if (!bag.understood) {
    if (MEASURED.has(bag.code)) line.notUnderstood(bag.part, `found ${bag.nearest}`)
    return { words, ...namedOnly(bare), ...(lengthMm !== undefined && { piece: { name: bare, lengthMm } }) }
  }
  const [item, second] = bag.items
  if (second && second.kind !== 'note') line.notUnderstood(words, `found ${rest.split(';')[0]?.trim()}`)
  if (item?.kind !== 'fastener' && item?.kind !== 'part') return { words, ...namedOnly(bare) }
  const piece = foundPiece(item)
  // A size with no name is read as that of bolts; nobody has said so.
  const isNamed = rest.toLowerCase().includes(item.name.toLowerCase())
  const known = { ...piece, ...(lengthMm !== undefined && { lengthMm }) }
  return { words, count: item.count, piece: isNamed ? known : { ...known, name: undefined } }
}

/** Faults of what was measured: here a guess would look in the wrong place. */
const MEASURED: ReadonlySet<BagFault> = new Set<BagFault>(['count', 'thread', 'class', 'drive', 'positions'])

/** `25 mm long`, which on a bag would be a name. */
function splitLength(text: string): { lengthMm: number | undefined; rest: string } {
  const match = /(?:^|,? )(\d+(?:[.,]\d+)?) ?mm long(?=,| |$)/i.exec(text)
  const lengthMm = match === null ? undefined : readDecimal(match[1] ?? '')
  if (match === null || lengthMm === undefined) return { lengthMm: undefined, rest: text }
  return { lengthMm, rest: text.replace(match[0], ' ').replace(/\s+/g, ' ').trim() }
}

function namedOnly(text: string): { count: number; piece: FoundPiece } {
  const [, first = '', rest = ''] = /^(\S+) (.+)$/.exec(text) ?? []
  const count = readWhole(first)
  return count === undefined || count < 1
    ? { count: 1, piece: { name: text } }
    : { count, piece: { name: rest } }
}
