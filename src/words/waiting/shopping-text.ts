import type { State } from '../../journal/state.ts'
import type { ShoppingGroup, ShoppingLine } from '../../plan/buying/shopping.ts'
import type { ShoppingView, Totals } from '../../session/shopping-view.ts'
import { counted, joined } from '../grammar.ts'
import { countedPiece } from '../pieces.ts'
import { amountOf, amountText, notesText } from './order-words.ts'

/** What stands over the lines of a group: `Judged to be replaced`. */
export function groupHeading(group: ShoppingGroup): string {
  const heading = GROUPS[group]
  return heading.charAt(0).toUpperCase() + heading.slice(1)
}

const GROUPS: Record<ShoppingGroup, string> = {
  replace: 'judged to be replaced',
  wrong: 'the wrong one came',
  'single-use': 'single-use, and used',
  broken: 'broken or scrapped',
  lost: 'lost',
  missing: 'not there at the start',
  'put-on': 'put on in a step',
  fluid: 'fluids that came out',
  wanted: 'wanted besides',
}

/** What to buy, in short: `3 × head bolts M11`, `2.1 L coolant`, `grey sealant on the sump face, 1 tube`. */
export function wantText(state: State, line: ShoppingLine): string {
  const { group, piece, name, count, unit, amounts } = line
  if (piece !== undefined) return countedPiece(state, piece, count)
  if (group === 'put-on') return amounts.length > 0 ? `${name}, ${joined(amounts)}` : name
  return amountOf(count, unit, name)
}

/** How the number comes about: `2 broken and 1 lost: 3, less 1 ordered`. Empty where the group says it all. */
export function wantSum(line: ShoppingLine): string {
  const { parts, needed, ordered, here, unit } = line
  const why = parts.map(({ why, count }) => `${count} ${WHYS[why]}`)
  const less = [
    ordered > 0 ? `${amountText(ordered, unit)} ordered` : '',
    here > 0 ? `${amountText(here, unit)} here` : '',
  ].filter(Boolean)
  const isPlain = why.length < 2 && less.length === 0
  if (isPlain) return ''
  const all = why.length > 0 ? `${joined(why)}: ${needed}` : amountText(needed, unit)
  return less.length > 0 ? `${all}, less ${joined(less)}` : all
}

/** How much must be bought, in one row: `3 lines not ordered yet, 25.60 EUR; 2 lines without a price`. */
export function toBuyText({ lines, toBuy }: Pick<ShoppingView, 'lines' | 'toBuy'>): string {
  const sum = toBuy.sums.length === 0 ? '' : `, ${totalsText(toBuy)}`
  return `${counted(lines.length, 'line')} not ordered yet${sum}`
}

/** What is known about buying it, for the end of its line. */
export function wantNotes(line: ShoppingLine): string[] {
  return notesText(line)
}

/** What lines come to: `25.60 EUR and $4.50; 2 lines without a price`. */
export function totalsText({ sums, unpriced }: Totals): string {
  const without = unpriced === 0 ? '' : `${counted(unpriced, 'line')} without a price`
  return [joined(sums), without].filter(Boolean).join('; ')
}

const WHYS: Record<ShoppingLine['parts'][number]['why'], string> = {
  replace: 'judged to be replaced',
  wrong: 'wrong',
  'single-use': 'used',
  broken: 'broken or scrapped',
  lost: 'lost',
  missing: 'never there',
}
