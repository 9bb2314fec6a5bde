import { liesText, pieceName } from '../../words/pieces.ts'
import type { Supply } from '../facts/supplies.ts'
import { type Line, line } from './line.ts'
import { dated, history, numbered, type Telling } from './telling.ts'

/** New pieces: what they replace, where they are now, and where the old ones went. */
export function supplyText(telling: Telling, supply: Supply): Line[] {
  return [suppliedText(telling, supply), ...comparedText(telling, supply)]
}

function suppliedText(telling: Telling, { fresh, old, count, entry }: Supply): Line {
  const { state } = telling
  const what = `new: ${numbered(state, fresh, count)} (${fresh})${sourceText(entry)}`
  if (old === null) {
    // What a kit held beyond every home is a piece of its own.
    const isStranger = entry.pieces.some(({ id }) => id === fresh)
    const why = isStranger ? 'that no home waits for' : 'for a home that was short'
    return dated(telling, entry, `${what} ${why}; all ${fresh}: ${liesText(state, fresh)}`)
  }
  const stead = `in place of ${pieceName(state, old)} (${old})`
  return dated(
    telling,
    entry,
    `${what} ${stead}; the new: ${liesText(state, fresh)}; the old: ${liesText(state, old)}`,
  )
}

/** Where it came from, as far as the entry says. */
function sourceText({ order, borrowed, kit }: Supply['entry']): string {
  const facts = [
    order ? `by order ${order.id}` : '',
    kit ? `in the kit ${kit.name}` : '',
    borrowed ? `borrowed from job ${borrowed.job}, ${borrowed.name}` : '',
  ].filter(Boolean)
  return facts.length > 0 ? `, ${facts.join(', ')},` : ''
}

/** How it was held beside the old one, or that it was not. */
function comparedText(telling: Telling, { old, comparison, compared }: Supply): Line[] {
  const told = compared.map((entry) => history(telling, entry, 4))
  if (comparison === null || comparison.verdict !== 'due' || old === null) return told
  const what = `not ${compared.length > 0 ? 'all of it ' : ''}compared with the old one`
  return [...told, line(`${what}, ${pieceName(telling.state, comparison.old)} (${comparison.old})`, 4)]
}
