import type { State } from '../../journal/state.ts'
import type { OrderHeed } from '../../session/order-heeds.ts'
import { say, sendWords } from '../cures.ts'
import { isAre, joined, sentence } from '../grammar.ts'
import { countedPiece, pieceName } from '../pieces.ts'
import { orderName } from './names.ts'

/** What is worth a look when new pieces are here, in one line. */
export function orderHeedText(state: State, heed: OrderHeed): string {
  if (heed.heed === 'kit-short') {
    const { name, count, short } = heed
    return sentence(
      `the kit held ${count} ${name}, and ${short} more ${isAre(short)} owed: ${say('to buy')} shows what is still needed`,
    )
  }
  if (heed.heed === 'over-ordered') {
    const { order, piece, open, short } = heed
    return sentence(
      `${countedPiece(state, piece, open)} ${isAre(open)} to come, and ${short} ${isAre(short)} needed: ${open - short} too many; if that was a slip, ${say(`cancel ${order} because ...`)}`,
    )
  }
  if (heed.heed === 'too-many') {
    const { piece, count, should, place } = heed
    return sentence(
      `${should + count} ${pieceName(state, piece)} are here and ${should} ${should === 1 ? 'belongs' : 'belong'} on the machine: ${count} too many; ${say('undo')} if that was a slip, else ${sendWords(state, 'spare', piece, place, { count })}`,
    )
  }
  const { orders } = heed
  const [first = 'o0'] = orders
  const names = joined(orders.map((id) => orderName(state, id)))
  return sentence(
    `${names}, ${orders.length === 1 ? 'is' : 'are'} still to come, and nothing waits for ${orders.length === 1 ? 'it' : 'them'} any more: ${say(`cancel ${first} because ...`)}, or ${say('undo')} and ${say(`arrived ${first}`)} if that is what came`,
  )
}
