/**
 * The word that a mistyped one was most likely meant for, or null when none is near. A letter wrong, left out,
 * added or swapped with its neighbour counts as one slip; a word of up to four letters may have one, a longer two.
 */
export function nearestWord(word: string, known: Iterable<string>): string | null {
  const typed = word.toLowerCase()
  const allowed = typed.length <= 4 ? 1 : 2
  let nearest: string | null = null
  let fewest = allowed + 1
  for (const candidate of known) {
    const slips = slipsBetween(typed, candidate.toLowerCase(), fewest)
    if (slips < fewest) {
      fewest = slips
      nearest = candidate
    }
  }
  return nearest
}

/** The optimal string alignment distance: edits, with a swap of neighbours as one. `limit` cuts hopeless ones short. */
function slipsBetween(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, column) => column)
  for (let row = 1; row <= a.length; row++) {
    const current = [row]
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1]
      let cost = Math.min(
        at(last, column) + 1,
        at(current, column - 1) + 1,
        at(last, column - 1) + (same ? 0 : 1),
      )
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]
      if (swapped) cost = Math.min(cost, at(before, column - 2) + 1)
      current.push(cost)
    }
    before = last
    last = current
  }
  return at(last, b.length)
}

function at(row: readonly number[], column: number): number {
  return row[column] ?? Number.POSITIVE_INFINITY
}
