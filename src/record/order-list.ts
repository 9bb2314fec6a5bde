import type { State } from '../journal/state.ts'
import { shoppingView } from '../session/shopping-view.ts'
import { minorDigits } from '../trade/currency.ts'
import { priceText } from '../trade/price.ts'
import { pieceName } from '../words/pieces.ts'
import { wantSum } from '../words/waiting/shopping-text.ts'
import { csvTable } from './csv.ts'

type Price = NonNullable<ReturnType<typeof shoppingView>['lines'][number]['price']>

/** What to buy and what was ordered as a table: one line each, with the days as `2026-12-04`. */
export function orderList(state: State): string {
  const { lines, orders } = shoppingView(state)
  const toBuy = lines
    .filter(({ order }) => order === undefined)
    .map((line, index) => ({
      ...line,
      name: line.piece === undefined ? line.name : pieceName(state, line.piece),
      line: String(index + 1),
      standing: 'to buy',
      why: [line.group, wantSum(line)].filter(Boolean).join(': '),
      due: '',
      arrived: 0,
    }))
  const ordered = orders.map(({ order, standing, here }) => ({
    ...order,
    line: order.id as string,
    standing: standing as string,
    why: order.cancelled ?? '',
    due: order.due ?? '',
    arrived: here,
  }))
  return csvTable([
    HEAD,
    ...[...toBuy, ...ordered].map(({ line, standing, name, count, unit, arrived, due, why, ...rest }) => {
      const { partNo, source, price } = rest
      return [
        line,
        standing,
        name,
        String(count),
        unit ?? '',
        String(arrived),
        partNo ?? '',
        price ? figures(price) : '',
        price?.currency ?? '',
        price ? (price.inAll ? 'in all' : 'each') : '',
        source ?? '',
        due,
        why,
      ]
    }),
  ])
}

const HEAD = [
  'line',
  'standing',
  'what',
  'count',
  'unit',
  'arrived',
  'part number',
  'price',
  'currency',
  'price for',
  'source',
  'due',
  'why',
]

function figures({ minor, currency }: Price): string {
  return priceText({ minor, digits: minorDigits(currency), currency: null, of: null })
}
