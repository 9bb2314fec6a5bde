/** The middle value of some measurements. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1
    ? (sorted[middle] ?? 0)
    : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2
}

/** Milliseconds that each of `times` calls takes. */
export function timeEach(times: number, work: (index: number) => void): number[] {
  const taken: number[] = []
  for (let index = 0; index < times; index += 1) {
    const from = performance.now()
    work(index)
    taken.push(performance.now() - from)
  }
  return taken
}

/** Runs each of the works in turn, round after round, so that a slow moment of the machine meets them all. */
export async function alternate(
  rounds: number,
  works: (() => Promise<number> | number)[],
): Promise<number[]> {
  const taken = works.map(() => [] as number[])
  for (let round = 0; round < rounds; round += 1) {
    for (const [index, work] of works.entries()) taken[index]?.push(await work())
  }
  return taken.map(median)
}

/** Three figures of a number, with its unit. */
export function figure(value: number, unit = 'ms'): string {
  return `${Number(value.toPrecision(3))} ${unit}`
}

/** How many times as much, in two decimals. */
export function ratio(value: number, peer: number): string {
  return `${(value / peer).toFixed(2)} x`
}

export interface Printer {
  print(line: string): void
}
