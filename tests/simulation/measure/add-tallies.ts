import { type ClassTally, type Costs, type JobCount, MOST_TOLD, type Tally } from './tally.ts'

/** Two runs as one. Both had as many mistakes in each job. */
export function addTallies(one: Tally, other: Tally): Tally {
  if (one.mistakes !== other.mistakes) throw new Error('runs with other mistakes do not add up')
  return {
    from: Math.min(one.from, other.from),
    to: Math.max(one.to, other.to),
    mistakes: one.mistakes,
    jobs: one.jobs + other.jobs,
    cleared: one.cleared + other.cleared,
    shapes: addCounts(one.shapes, other.shapes),
    rows: addRows(one.rows, other.rows),
    falseBlocks: [...one.falseBlocks, ...other.falseBlocks],
    unexplained: [...one.unexplained, ...other.unexplained],
    costs: addCounts(one.costs, other.costs),
    byJob: {
      omissions: addCounts(one.byJob.omissions, other.byJob.omissions),
      places: addCounts(one.byJob.places, other.byJob.places),
    },
  }
}

function addRows(ours: readonly ClassTally[], theirs: readonly ClassTally[]): ClassTally[] {
  const key = ({ name, going }: ClassTally) => `${name}, ${going}`
  const rows = new Map(ours.map((row) => [key(row), row]))
  for (const row of theirs) {
    const here = rows.get(key(row))
    rows.set(key(row), here ? addRow(here, row) : row)
  }
  return [...rows.values()]
}

function addRow(one: ClassTally, other: ClassTally): ClassTally {
  return {
    ...one,
    made: one.made + other.made,
    stopped: addCounts(one.stopped, other.stopped),
    asked: one.asked + other.asked,
    unseen: one.unseen + other.unseen,
    byChance: one.byChance + other.byChance,
    refusals: addCounts(one.refusals, other.refusals),
    passed: [...one.passed, ...other.passed].slice(0, MOST_TOLD),
  }
}

function addCounts<Counts extends Record<string, number> | Costs | JobCount>(
  one: Counts,
  other: Counts,
): Counts {
  const sums: Record<string, number> = { ...one }
  for (const [name, count] of Object.entries(other)) sums[name] = (sums[name] ?? 0) + count
  return sums as Counts
}
