import type { Cell } from './drawn-cell.ts'

/** A short value at each position, as its size or where its piece lies. */
export function valueCells(values: ReadonlyMap<string, string>): Map<string, Cell> {
  return new Map([...values].map(([position, says]) => [position, { says }]))
}

/** The turn of each position in an order, from 1: `(3)`. */
export function orderCells(order: readonly string[]): Map<string, Cell> {
  return new Map(order.map((position, index) => [position, { says: `(${index + 1})` }]))
}

/** How far one pass over a pattern has come. */
export interface PassStage {
  order: readonly string[]
  done: ReadonlySet<string>
  /** The one to turn next; `suspect`: perhaps turned already. */
  next: { fastener: string; suspect: boolean } | null
  /** Those with a fault that is not settled. */
  faulty: ReadonlySet<string>
}

/** `✓` through the pass, `·` not yet, `?` in doubt, `!` at fault; the next one is marked. */
export function stageCells({ order, done, next, faulty }: PassStage): Map<string, Cell> {
  return new Map(
    order.map((position) => {
      const isNext = position === next?.fastener
      const isInDoubt = isNext && next?.suspect === true
      const says = faulty.has(position) ? '!' : isInDoubt ? '?' : done.has(position) ? '✓' : '·'
      return [position, { says, isMarked: isNext }]
    }),
  )
}

/** Which way the arrow of each position points, where it has one. */
export function arrowCells(
  places: readonly { position: string; arrow?: keyof typeof ARROWS | undefined }[],
): Map<string, Cell> {
  return new Map(
    places.flatMap(({ position, arrow }) => (arrow ? [[position, { says: ARROWS[arrow] }] as const] : [])),
  )
}

const ARROWS = { up: '↑', right: '→', down: '↓', left: '←' }

/** Cells that say what several sets of cells say, in their order. */
export function togetherCells(...sets: readonly ReadonlyMap<string, Cell>[]): Map<string, Cell> {
  const together = new Map<string, Cell>()
  for (const [position, { says, isMarked }] of sets.flatMap((cells) => [...cells])) {
    const before = together.get(position)
    together.set(position, {
      says: [before?.says, says].filter(Boolean).join(' '),
      isMarked: isMarked || before?.isMarked,
    })
  }
  return together
}
