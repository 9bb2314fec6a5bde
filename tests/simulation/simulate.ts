import { makeMachine } from './machines/make-machine.ts'
import { SHAPES } from './machines/shapes.ts'
import { addByJob } from './measure/by-job.ts'
import { costsOf } from './measure/costs.ts'
import { type ClassTally, type Costs, MOST_TOLD, stoppedAt, type Tally } from './measure/tally.ts'
import { ALL_MISTAKES } from './mistakes/all-mistakes.ts'
import type { MistakeClass } from './mistakes/classes.ts'
import type { Fate } from './mistakes/mistake.ts'
import { type JobOutcome, runJob } from './run-job.ts'

/** Which jobs: one for each seed from `from` up to, but not including, `to`, with so many mistakes in each; 0 for clean jobs. */
export interface WhichJobs {
  from: number
  to: number
  mistakes: number
}

/** Runs whole jobs, each on a machine of its own of each shape in turn, and tells what came of every mistake. */
export function simulate(
  { from, to, mistakes }: WhichJobs,
  classes: readonly MistakeClass[] = ALL_MISTAKES,
  shapes = SHAPES,
): Tally {
  const rows = new Map(classes.map((each) => [each.name, emptyRow(each)]))
  const tally: Tally = {
    from,
    to,
    mistakes,
    jobs: 0,
    cleared: 0,
    shapes: {},
    rows: [],
    falseBlocks: [],
    unexplained: [],
    costs: { lines: 0, entries: 0, confirmations: 0, overrides: 0, scans: 0, refusals: 0, questions: 0 },
    byJob: { omissions: { jobs: 0, passed: 0 }, places: { jobs: 0, passed: 0 } },
  }
  for (let seed = from; seed < to; seed += 1) {
    const shape = shapes[seed % shapes.length] as (typeof shapes)[number]
    const job = runJob(makeMachine(shape, seed), seed, classes, mistakes)
    addJob(tally, job, seed, shape.name)
    addByJob(tally.byJob, classes, job.fates)
    for (const fate of job.fates) addFate(rows.get(fate.mistake), fate, seed, shape.name)
  }
  return { ...tally, rows: [...rows.values()].filter(({ made, byChance }) => made + byChance > 0) }
}

function addJob(tally: Tally, job: JobOutcome, seed: number, shape: string): void {
  tally.jobs += 1
  if (job.cleared) tally.cleared += 1
  tally.shapes[shape] = (tally.shapes[shape] ?? 0) + 1
  tally.falseBlocks.push(...job.falseBlocks.map((each) => ({ ...each, seed, shape })))
  tally.unexplained.push(...job.unexplained.map((what) => ({ what, seed, shape })))
  const costs = costsOf(job.said, job.entries)
  for (const name of Object.keys(costs) as (keyof Costs)[]) tally.costs[name] += costs[name]
}

function addFate(row: ClassTally | undefined, fate: Fate, seed: number, shape: string): void {
  if (!row) throw new Error(`no kind of mistake is called ${fate.mistake}`)
  if (fate.came === 'by chance') {
    row.byChance += 1
    return
  }
  row.made += 1
  if (fate.came === 'stopped') {
    row.stopped[fate.where] += 1
    row.refusals[fate.refusal] = (row.refusals[fate.refusal] ?? 0) + 1
    return
  }
  row[fate.came] += 1
  if (row.passed.length < MOST_TOLD) row.passed.push({ what: fate.what, seed, shape })
}

function emptyRow({ name, group, going, from }: MistakeClass): ClassTally {
  return {
    name,
    group,
    going,
    from,
    made: 0,
    stopped: stoppedAt(),
    asked: 0,
    unseen: 0,
    byChance: 0,
    refusals: {},
    passed: [],
  }
}
