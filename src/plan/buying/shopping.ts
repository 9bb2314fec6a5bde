import type { PieceId } from '../../ledger/piece.ts'
import type { FluidId, PlanFacts } from '../facts.ts'
import { heirs } from '../succession.ts'
import type { ConsumableId, OrderFacts, OrderId, PartNotes } from '../waiting/waiting-facts.ts'
import { hereOf, openOf, partNotesOf } from './order-lines.ts'
import { type Shortage, type ShortWhy, shortageOf } from './short-pieces.ts'

/** Under what a line stands in the list of what to buy. */
export type ShoppingGroup = ShortWhy | 'put-on' | 'fluid' | 'wanted'

/** One line of what to buy. */
export interface ShoppingLine extends PartNotes {
  group: ShoppingGroup
  /** What a person calls it; of a piece its name alone. */
  name: string
  /** What it is for; at most one of these. */
  piece?: PieceId | undefined
  consumables?: ConsumableId[] | undefined
  fluids?: FluidId[] | undefined
  /** The line of an order that was only wanted so far. */
  order?: OrderId | undefined
  /** What to buy now: `needed` less `ordered` and `here`. */
  count: number
  unit?: string | undefined
  needed: number
  /** Ordered, or wanted by hand, and still to come. */
  ordered: number
  /** Bought before and not used up: of fluids. */
  here: number
  /** Of a piece: why so many are needed. */
  parts: Shortage['parts']
  /** Of what is put on: how much the user said, each as typed. */
  amounts: string[]
}

const groups: readonly ShoppingGroup[] = [
  'replace',
  'wrong',
  'single-use',
  'broken',
  'lost',
  'missing',
  'put-on',
  'fluid',
  'wanted',
]

/** Everything that must be bought and is not ordered yet, by groups. Derived from the record anew each time. */
export function shopping(facts: PlanFacts): ShoppingLine[] {
  const lines = [...shortPieces(facts), ...putOn(facts), ...fluids(facts), ...wanted(facts)]
  const bought = lines.filter(({ count }) => count > 0)
  return groups.flatMap((group) => bought.filter((line) => line.group === group))
}

function shortPieces(facts: PlanFacts): ShoppingLine[] {
  const heirOf = heirs(facts)
  const coming = new Map<PieceId, number>()
  for (const order of facts.orders.values()) {
    if (order.piece === undefined) continue
    const heir = heirOf(order.piece)
    coming.set(heir, (coming.get(heir) ?? 0) + openOf(order))
  }
  return [...facts.ledger.accounts.values()].flatMap((account) => {
    const { short, parts } = shortageOf(facts, account)
    const [first] = parts
    if (!first) return []
    const { id, name } = account.piece
    const ordered = coming.get(id) ?? 0
    return [
      {
        ...nothing,
        ...partNotesOf(facts, id),
        group: first.why,
        name,
        piece: id,
        count: Math.max(0, short - ordered),
        needed: short,
        ordered,
        parts,
      },
    ]
  })
}

/** What is put on in a step and is not on yet: once for each name, for one tube does for several joints. */
function putOn(facts: PlanFacts): ShoppingLine[] {
  const due = [...facts.consumables.values()].filter(
    ({ id, applied }) => applied === null && !facts.overrides.has(id),
  )
  return byName(due).map((alike) => {
    const [{ name }] = alike
    const orders = linesNamed(facts, name)
    const covered = sum(orders, (order) => openOf(order) + hereOf(order) - order.wrong)
    return {
      ...nothing,
      group: 'put-on',
      name,
      consumables: alike.map(({ id }) => id),
      count: covered > 0 ? 0 : 1,
      needed: 1,
      ordered: covered,
      amounts: alike.flatMap(({ amount }) => (amount === undefined ? [] : [amount])),
    }
  })
}

/** Fluids that came out and are not filled in again, by their names, in litres. */
function fluids(facts: PlanFacts): ShoppingLine[] {
  return byName([...facts.fluids.values()]).map((alike) => {
    const [{ name }] = alike
    const open = alike.filter(({ id, filledLitres }) => filledLitres === null && !facts.overrides.has(id))
    const filled = sum(alike, ({ filledLitres }) => filledLitres ?? 0)
    const orders = linesNamed(facts, name).filter(({ unit }) => unit === 'L')
    const needed = litres(sum(open, ({ litresOut }) => litresOut))
    const ordered = litres(sum(orders, openOf))
    // What was bought went into the first fillings.
    const here = litres(Math.max(0, sum(orders, (order) => hereOf(order) - order.wrong) - filled))
    return {
      ...nothing,
      group: 'fluid',
      name,
      fluids: open.map(({ id }) => id),
      unit: 'L',
      count: litres(Math.max(0, needed - ordered - here)),
      needed,
      ordered,
      here,
    }
  })
}

/** Lines that somebody wants and nobody has ordered. */
function wanted(facts: PlanFacts): ShoppingLine[] {
  return [...facts.orders.values()]
    .filter(({ ordered }) => !ordered)
    .map((order) => {
      const { id, name, piece, unit, partNo, price, source } = order
      const count = openOf(order)
      const notes = { partNo, price, source }
      return { ...nothing, group: 'wanted', name, piece, unit, ...notes, order: id, count, needed: count }
    })
}

const nothing = { needed: 0, ordered: 0, here: 0, parts: [], amounts: [] } satisfies Partial<ShoppingLine>

/** The lines of orders for no piece, of that name. */
function linesNamed(facts: PlanFacts, name: string): OrderFacts[] {
  return [...facts.orders.values()].filter((order) => order.piece === undefined && sameName(order.name, name))
}

function byName<Named extends { name: string }>(all: readonly Named[]): [Named, ...Named[]][] {
  const found: [Named, ...Named[]][] = []
  for (const each of all) {
    const alike = found.find(([first]) => sameName(first.name, each.name))
    if (alike) alike.push(each)
    else found.push([each])
  }
  return found
}

function sameName(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase()
}

function sum<Each>(all: readonly Each[], of: (each: Each) => number): number {
  return all.reduce((total, each) => total + of(each), 0)
}

function litres(amount: number): number {
  return Number(amount.toFixed(3))
}
