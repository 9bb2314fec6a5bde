import type { Command } from '../../journal/command.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { layoutFor, layoutOf, patternOf } from '../../plan/pattern.ts'
import type { Pass } from '../../plan/tightening.ts'
import type { PositionLayout } from '../../trade/position-layout/position-layout.ts'
import { readLayout } from '../../trade/position-layout/read-layout.ts'
import { readPositions } from '../../trade/positions.ts'
import { proposeOrder } from '../../trade/tightening-order/order.ts'
import { readLoosening } from '../../trade/tightening-passes/read-loosening.ts'
import { findPieces } from '../find-piece.ts'
import type { Line } from '../line.ts'
import { lineOfTheirs } from '../take-wrench.ts'
import type { Verb } from '../verb.ts'

export const looseningVerbs: readonly Verb[] = [
  {
    words: ['loosen', 'ease'],
    topic: 'tightening',
    forms: ['loosen PIECE 2x4: 90 deg, 90 deg, free [order 8,7,...]'],
    says: 'Sets the steps in which fasteners are eased: before they come off, the reverse of the tightening order.',
    examples: [
      'loosen head bolts 2x4: 1/4 turn, 1/2 turn, free',
      'loosen cap bolts row 6: 1/2 turn, free order 1,6,2,5,3,4',
      'loosen flange bolts circle 12 in 3 steps',
    ],
    read(line): Command {
      const order = line.take(/,? (?:in )?order:? (.+)$/i)?.[0]
      const steps = line.take(/,? in (\d{1,2}) steps?$/i)?.[0]
      const [words = '', typed = ''] = line.take(/^([^:]*?) ?(?:: ?(.*))?$/) ?? []
      if (words === '') line.missing('PIECE')
      const { name, positions, layout } = fasteners(line, words)
      const given = order === undefined ? undefined : readPositions(order)
      if (given && !given.understood) {
        const wrong = given.code === 'duplicate' ? (order ?? '') : given.part
        return line.notUnderstood(given.part || order || '', lineOfTheirs(line, wrong, given.nearest))
      }
      const ruled = layout ? proposeOrder(layout).order.toReversed() : positions.toReversed()
      return {
        do: 'set-loosening',
        name,
        passes: passesOf(line, typed, steps),
        order: given ? given.value : ruled,
        layout,
      }
    },
  },
]

interface Fasteners {
  name: string
  positions: string[]
  layout: PositionLayout | undefined
}

/** Those of the record with their drawing, or those that are still on the machine and only counted. */
function fasteners(line: Line, words: string): Fasteners {
  const { said, form } = withLayout(words)
  const known = form === undefined ? recorded(line, said) : undefined
  if (known) return known
  if (form === undefined) return line.missing('2x4')
  const [, count, rest = said] = /^(\d{1,3}) (.+)$/.exec(said) ?? []
  const { name, named } = withPositions(rest)
  const positions = named ?? numbersTo(count === undefined ? placesIn(form) : Number(count))
  const read = readLayout(form.replace(/ \d+$/, ''), positions)
  if (!read.understood || positions.length === 0)
    return line.notUnderstood(form, `loosen ${said} 2x4: 90 deg, free`)
  return { name, positions, layout: read.value }
}

/** Takes a form of a layout off the end: `head bolts 2x4`, `flange bolts circle 12`, `cap bolts in a row of 6`. */
function withLayout(words: string): { said: string; form?: string } {
  const [, said, form, count] =
    /^(.+?),? (?:in a |on a )?(\d{1,2} ?[x×] ?\d{1,2}|(?:circle|row)(?: (?:of )?(\d{1,3}))?)$/i.exec(words) ??
    []
  if (said === undefined || form === undefined) return { said: words }
  return { said, form: count === undefined ? form : `${form.split(' ')[0]} ${count}` }
}

/** How many places a form has by itself. */
function placesIn(form: string): number {
  const [, rows, columns] = /^(\d+) ?[x×] ?(\d+)$/.exec(form) ?? []
  return rows === undefined ? Number(/\d+$/.exec(form)?.[0] ?? 0) : Number(rows) * Number(columns)
}

function withPositions(words: string): { name: string; named?: string[] } {
  const [, name, text] = /^(.+?) @?((?:\S*\d\S*)(?:[ ,]+\S*\d\S*)*)$/.exec(words) ?? []
  if (name === undefined || text === undefined) return { name: words }
  const read = readPositions(text)
  return read.understood && read.value.length > 1 ? { name, named: read.value } : { name: words }
}

function recorded(line: Line, words: string): Fasteners | undefined {
  const [first] = findPieces(words, line.state, ({ should }) => should > 0) as [PieceId | undefined]
  const account = first && line.account(first)
  if (!account) return undefined
  const pattern = patternOf(line.state, account.piece.id)
  const positions =
    'code' in pattern ? numbersTo(account.should) : pattern.places.map(({ position }) => position)
  const layout = layoutFor(layoutOf(line.state, account.piece.id), positions)
  return { name: account.piece.name, positions, layout: layout as PositionLayout | undefined }
}

function numbersTo(count: number): string[] {
  return Array.from({ length: count }, (_, index) => String(index + 1))
}

/** Each step as so much of a turn back, the last mostly free; without any the steps are only counted. */
function passesOf(line: Line, typed: string, steps: string | undefined): Pass[] {
  if (typed === '') {
    const count = Number(steps ?? 2)
    if (count < 1 || count > 20)
      return line.notUnderstood(String(count), `${line.whole.replace(/ in .*$/, '')} in 3 steps`)
    return Array.from({ length: count }, (_, index) => ({
      kind: 'back-off',
      typed: index === count - 1 ? 'free' : `ease, step ${index + 1}`,
    }))
  }
  const read = readLoosening(typed)
  if (read.understood) return read.value
  return line.notPasses(
    read,
    line.whole.replace(typed, () => read.nearest),
  )
}
