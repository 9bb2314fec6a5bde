/** One number of a cost: a whole number, zero or more, below 2^53. */
export type Criterion = number

/**
 * One cost for each cell of an assignment, such that the least sum has the least sum of the first criteria, among these
 * the least of the second, and so on: exactly, which is why they are big integers. A cell that may not be
 * chosen (null) costs more than all rows can cost together.
 */
export function lexicographicCosts(
  rows: readonly (readonly ({ criteria: readonly Criterion[] } | null)[])[],
): bigint[][] {
  const cells = rows.flat().filter((cell) => cell !== null)
  const weights: bigint[] = []
  let weight = 1n
  for (let at = (cells[0]?.criteria.length ?? 0) - 1; at >= 0; at -= 1) {
    weights[at] = weight
    const most = cells.reduce((most, { criteria }) => Math.max(most, criteria[at] ?? 0), 0)
    weight *= BigInt(rows.length) * BigInt(most) + 1n
  }
  return rows.map((row) =>
    row.map((cell) =>
      cell === null
        ? weight
        : cell.criteria.reduce((sum, criterion, at) => sum + BigInt(criterion) * (weights[at] ?? 0n), 0n),
    ),
  )
}
