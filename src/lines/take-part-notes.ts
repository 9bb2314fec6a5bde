import type { PartNotes, PriceFacts } from '../plan/waiting/waiting-facts.ts'
import type { Price } from '../trade/price.ts'
import type { Line } from './line.ts'
import { readDay, readPriced } from './read-said.ts'

// What a price begins with; `at the corner` is none.
const priceStart = String.raw`(?:\p{Sc}|\d|[.,]\d|[a-z]{2,3}\.? ?\d|[a-z]{1,3}\p{Sc})`
// A part number has a digit in it, in its first or its second group.
const numberStart = String.raw`(?:\p{L}{1,5} )?\S*\d`
const next = String.raw`(?=,? (?:from |due |at (?=${priceStart})|(?:part )?no\.? (?=${numberStart}))|$)`

/**
 * Takes what is said about buying away from a line, in whatever order: `no 11-204`, `at 3.20 EUR each`, `from the corner
 * shop`, `due Friday`. `count`: how many a price in all is for, where that is known.
 */
export function takePartNotes(line: Line): PartNotes & { due?: string | undefined } {
  const due = take(line, 'due ')
  const priced = take(line, `at (?=${priceStart})`)
  const partNo = take(line, String.raw`(?:part )?no\.? (?=${numberStart})`)
  const source = take(line, 'from ')
  return {
    ...(partNo !== undefined && { partNo }),
    ...(priced !== undefined && { price: priceFacts(readPriced(line, priced), priced) }),
    ...(source !== undefined && { source }),
    ...(due !== undefined && { due: readDay(line, due) }),
  }
}

/** Takes the size away in which something is ordered, other than that of the old one: `size 2.55`. */
export function takeSize(line: Line): string | undefined {
  return take(line, String.raw`size (?=\S*\d)`)
}

function take(line: Line, keyword: string): string | undefined {
  const [text] = line.take(new RegExp(`(?:^|,? )${keyword}(.+?)${next}`, 'iu')) ?? []
  return text?.trim()
}

/** The words without `each` or `in all`: these are kept beside them. */
function priceFacts({ minor, currency, of }: Price, typed: string): PriceFacts {
  const bare = typed.replace(
    /,? ?(?:\b(?:each|ea\.?|apiece|a piece|per piece|per pc|pc)|\/ ?(?:piece|pc|ea))$/i,
    '',
  )
  const whole = bare.replace(/,? ?\b(?:in all|for all|all together|altogether|together|total|in total)$/i, '')
  return { minor, currency: currency ?? '', typed: whole, ...(of === 'all' && { inAll: true as const }) }
}
