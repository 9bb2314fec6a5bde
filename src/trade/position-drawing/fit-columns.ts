/** Something of a width in a row of its own or among others, that belongs as far right as `x` says. */
export interface Fitted {
  x: number
  row: number
  width: number
}

/**
 * The columns for some things so that no two of a row overlap, equal x share a column, and more x is further right; as
 * near as can be to the columns wished for each x, in ascending order. Null where the width is not enough for that.
 */
export function fitColumns(
  things: readonly Fitted[],
  wished: ReadonlyMap<number, number>,
  width: number,
): Map<number, number> | null {
  const groups = groupsOf(things)
  if (!groups) return null
  const xs = groups.map(({ x }) => x)
  const wishes = xs.map((x) => Math.round(wished.get(x) ?? 0))
  const least = fromLeft(
    groups,
    xs.map(() => 0),
  )
  const most = fromRight(
    groups,
    xs.map(() => width),
    width,
  )
  if (least.some((column, index) => column > (most[index] ?? -1))) return null
  const held = wishes.map((wish, index) => Math.max(least[index] ?? 0, Math.min(wish, most[index] ?? 0)))
  // Pushed once from either side: between the two answers the room is shared, and what holds of both holds there too.
  const right = fromLeft(groups, held)
  const left = fromRight(groups, held, width)
  return new Map(xs.map((x, index) => [x, Math.floor(((right[index] ?? 0) + (left[index] ?? 0)) / 2)]))
}

interface Group {
  x: number
  things: Fitted[]
}

/** Things by their x, ascending; null where two are in one place. */
function groupsOf(things: readonly Fitted[]): Group[] | null {
  const groups = new Map<number, Fitted[]>()
  for (const thing of things) {
    const group = groups.get(thing.x) ?? []
    groups.set(thing.x, group)
    if (group.some(({ row }) => row === thing.row)) return null
    group.push(thing)
  }
  return [...groups].map(([x, group]) => ({ x, things: group })).toSorted((a, b) => a.x - b.x)
}

/** The first columns, from the left, that are not before those given. */
function fromLeft(groups: readonly Group[], notBefore: readonly number[]): number[] {
  const ends = new Map<number, number>()
  let last = -1
  return groups.map(({ things }, index) => {
    const column = Math.max(notBefore[index] ?? 0, last + 1, ...things.map(({ row }) => ends.get(row) ?? 0))
    for (const { row, width } of things) ends.set(row, column + width)
    last = column
    return column
  })
}

/** The last columns, from the right, that are not behind those given. */
function fromRight(groups: readonly Group[], notBehind: readonly number[], width: number): number[] {
  const starts = new Map<number, number>()
  let next = width
  const columns: number[] = []
  for (const [index, { things }] of [...groups.entries()].toReversed()) {
    const ends = things.map((thing) => (starts.get(thing.row) ?? width) - thing.width)
    const column = Math.min(notBehind[index] ?? width, next - 1, ...ends)
    for (const { row } of things) starts.set(row, column)
    next = column
    columns[index] = column
  }
  return columns
}
