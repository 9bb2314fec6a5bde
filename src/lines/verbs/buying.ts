import type { Account } from '../../ledger/account.ts'
import { readDecimal } from '../../trade/number.ts'
import { amountAndName, buyListed, buyNamed } from '../bought-lines.ts'
import type { Errand } from '../errand.ts'
import { orderNumber } from '../find-order.ts'
import type { Ask } from '../reading.ts'
import { takePartNotes, takeSize } from '../take-part-notes.ts'
import type { Verb } from '../verb.ts'

export const buyingVerbs: readonly Verb[] = [
  {
    words: ['to buy'],
    topic: 'buying and arrivals',
    forms: ['to buy'],
    says: 'Shows what must be bought; with the arithmetic, and how what was ordered stands.',
    examples: ['to buy'],
    read(line): Ask {
      line.end()
      return { ask: 'shopping' }
    },
  },
  {
    words: ['buy csv'],
    topic: 'buying and arrivals',
    forms: ['buy csv [FILE]'],
    says: 'Writes what to buy and what is ordered as a CSV file; into the folder of the job.',
    examples: ['buy csv', 'buy csv parts.csv'],
    read: (line): Errand => ({ errand: 'buy-csv', file: line.rest === '' ? null : line.takeRest('FILE') }),
  },
  {
    words: ['buy'],
    topic: 'buying and arrivals',
    forms: [
      'buy 1,3 | all | COUNT PIECE [size SIZE] [from SOURCE] [at PRICE] [no NUMBER] [due DATE]',
      'buy o1 [COUNT] [from SOURCE] [at PRICE] [no NUMBER] [due DATE]',
    ],
    says: 'Says that things were ordered: lines of "to buy" by their numbers, pieces, or what was only wanted so far.',
    examples: [
      'buy 1 from corner shop at 12.50 EUR due Friday',
      'buy all due in 2 weeks',
      'buy 8 head bolts at 3.20 each',
      'buy 1 shim E3 size 2.55',
      'buy o1 10',
    ],
    read(line) {
      const size = takeSize(line)
      const notes = { ...takePartNotes(line), ...(size !== undefined && { size }) }
      const asked = line.takeRest('N')
      if (/^(?:all|(?:\d{1,4}(?:,| and |, | |$))+)$/i.test(asked)) return buyListed(line, asked, notes)
      const [, id = '', amount] = /^(o\d+)(?: ([\d.,]+))?$/i.exec(asked) ?? []
      const order = orderNumber(id)
      if (order === null) return buyNamed(line, asked, notes)
      if (size !== undefined) line.notUnderstood(`size ${size}`)
      const count = amount === undefined ? undefined : readDecimal(amount)
      if (amount !== undefined && count === undefined) line.notUnderstood(amount)
      return { do: 'change-order', order, ordered: true, ...(count !== undefined && { count }), ...notes }
    },
  },
  {
    words: ['want'],
    topic: 'buying and arrivals',
    forms: ['want [COUNT] [UNIT] WORDS [from SOURCE] [at PRICE] [no NUMBER] [due DATE]'],
    says: 'Puts something on the list of what to buy: what the record does not ask for.',
    examples: ['want 2 tubes grease', 'want gasket paper from corner shop'],
    read(line) {
      const notes = takePartNotes(line)
      const wanted = amountAndName(line, line.takeRest('WORDS'))
      return { do: 'line-orders', lines: [{ ...wanted, ...notes }], ordered: false }
    },
  },
  {
    words: ['part'],
    topic: 'buying and arrivals',
    forms: ['part PIECE [no NUMBER] [at PRICE] [from SOURCE]'],
    says: 'Notes what is known about buying a piece: its part number, its price, where it is had.',
    examples: ['part head gasket no 11-204 at 18.40 EUR from corner shop'],
    meant: /(?:^| )(?:no|at|from) /i,
    read(line) {
      const { due, ...notes } = takePartNotes(line)
      if (due !== undefined) line.notUnderstood('due')
      const isWanted = ({ should }: Account) => should > 0
      const piece = line.piece(line.takeRest('PIECE'), isWanted)
      if (Object.keys(notes).length === 0) line.missing('NUMBER')
      return { do: 'note-part', piece, ...notes }
    },
  },
]
