import { assignShims } from '../../src/trade/shims/assign-shims.ts'
import { wornEngine } from '../../tests/trade/shims/engines.ts'
import { costOf, orders, referenceCost } from '../../tests/trade/shims/reference-cost.ts'
import { alternate, figure, type Printer, ratio } from '../measure.ts'

/** Which shim goes where, in whole numbers of any size, against linear-sum-assignment in doubles on the same engines. */
export async function run({ print }: Printer): Promise<void> {
  for (const [count, rounds] of [
    [16, 41],
    [64, 21],
    [200, 11],
  ] as const) {
    const engines = Array.from({ length: 5 }, (_, seed) => wornEngine(count, seed + 1))
    const isSame = engines.every(({ valves, stock }) => {
      const ours = costOf(valves, assignShims(valves, stock))
      const theirs = referenceCost(valves, stock, orders['fewest-touched'])
      return JSON.stringify(ours) === JSON.stringify(theirs)
    })
    const [ours = 0, theirs = 0] = await alternate(rounds, [
      () => timed(() => engines.map(({ valves, stock }) => assignShims(valves, stock))),
      () =>
        timed(() =>
          engines.map(({ valves, stock }) => referenceCost(valves, stock, orders['fewest-touched'])),
        ),
    ])
    print(
      `${String(count).padStart(3)} valves  ${figure(ours / engines.length)}, the reference ${figure(theirs / engines.length)}: ` +
        `${ratio(ours, theirs)} the time; ${isSame ? 'the same cost' : 'ANOTHER COST'} on ${engines.length} engines`,
    )
  }
}

function timed(work: () => unknown): number {
  const from = performance.now()
  work()
  return performance.now() - from
}
