/**
 * Which of a list of different numbers are not in rising order: the fewest whose removal leaves the others rising.
 * Answers their indices.
 */
export function outOfPlace(numbers: readonly number[]): number[] {
  // The longest rising row: `ends[k]` is the index of the smallest number that a row of k + 1 can end with.
  const ends: number[] = []
  const before = new Map<number, number>()
  for (const [index, number] of numbers.entries()) {
    let low = 0
    let high = ends.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((numbers[ends[middle] ?? 0] ?? 0) < number) low = middle + 1
      else high = middle
    }
    before.set(index, low === 0 ? -1 : (ends[low - 1] ?? -1))
    ends[low] = index
  }
  const inPlace = new Set<number>()
  for (let index = ends.at(-1) ?? -1; index !== -1; index = before.get(index) ?? -1) inPlace.add(index)
  return [...numbers.keys()].filter((index) => !inPlace.has(index))
}
