import { availableParallelism } from 'node:os'
import type { FuzzReport } from '../../tests/hostile/fuzz-report.ts'
import { inAProgram } from '../../tests/hostile/in-a-program.ts'
import { figure, type Printer } from '../measure.ts'

/** What is tried in full, and how many in one program: it is stopped when it does not come to an end. */
const KINDS = [
  { name: 'fuzz-lines', what: 'lines told to the record', count: 100_000, each: 10_000 },
  { name: 'fuzz-typed', what: 'lines typed on the screens', count: 4_000, each: 200 },
  { name: 'fuzz-journals', what: 'damaged journals', count: 20_000, each: 1_000 },
  { name: 'fuzz-imports', what: 'damaged files from outside', count: 20_000, each: 2_000 },
]

/** No single call may take longer, and no program more memory. */
const LONGEST_MS = 1000
const MOST_BYTES = 512 * 2 ** 20

/**
 * Whatever comes from outside, by chance and from seeds: how many faults, the slowest single call, the most memory.
 * PUTBACK_FUZZ: which part of it, as 0.1, where all of it takes too long.
 */
export async function run({ print }: Printer): Promise<void> {
  const { PUTBACK_FUZZ = '1' } = process.env
  for (const { name, what, count, each } of KINDS) {
    const from = performance.now()
    const programs = Math.ceil((count * Number(PUTBACK_FUZZ)) / each)
    const { tried, faults, outcomes, slowest, rss } = await inFull(name, programs, each)
    print(`${tried} ${what}: ${faults.length} faults, ${Object.keys(outcomes).length} kinds of answers`)
    print(`  slowest call ${figure(slowest.ms)}: ${JSON.stringify(slowest.what.slice(0, 60))}`)
    print(`  most memory ${figure(rss / 2 ** 20, 'MB')}; ${figure((performance.now() - from) / 1000, 's')}`)
    if (slowest.ms > LONGEST_MS) print('  TOO SLOW: a call took longer than a second')
    if (rss > MOST_BYTES) print('  TOO LARGE: a program held more than 512 MB')
    for (const fault of faults.slice(0, 20)) print(`  ${fault}`)
    if (faults.length > 0 || slowest.ms > LONGEST_MS || rss > MOST_BYTES) process.exitCode = 1
  }
}

type Report = FuzzReport & { rss: number }

/** So many programs with a seed each, one a core at a time, as one report. */
async function inFull(name: string, programs: number, each: number): Promise<Report> {
  const seeds = Array.from({ length: programs }, (_, index) => index + 1)
  const reports: Report[] = []
  const lane = async () => {
    for (let seed = seeds.shift(); seed !== undefined; seed = seeds.shift())
      reports.push(await inAProgram(name, each, seed))
  }
  await Promise.all(Array.from({ length: availableParallelism() }, lane))
  return reports.reduce(together)
}

function together(one: Report, other: Report): Report {
  const outcomes = { ...one.outcomes }
  for (const [came, times] of Object.entries(other.outcomes)) outcomes[came] = (outcomes[came] ?? 0) + times
  return {
    tried: one.tried + other.tried,
    outcomes,
    faults: [...one.faults, ...other.faults],
    slowest: one.slowest.ms >= other.slowest.ms ? one.slowest : other.slowest,
    rss: Math.max(one.rss, other.rss),
  }
}
