import { type JobSize, type RunTally, runSequences } from './run-sequences.ts'

/** What came of random jobs, in figures that add up over many programs. */
export interface RandomJobs {
  figures: Record<Figure, number>
  /** Entries by kind. */
  written: Record<string, number>
  /** Refusals by code. */
  refused: Record<string, number>
  /** What was wrong, each with the seed that shows it again. */
  faults: string[]
}

type Figure = Exclude<keyof RunTally, 'written' | 'refused'>

/** Random jobs from one seed of the generator. */
const JOBS = 100
/** More runs than any program ever comes to: each has a seed of its own. */
const APART = 10_000

/** Random jobs beside the naive model, from this seed, until so many commands were given. Ends at the first fault. */
export function randomJobs(seed: number, commands: number, size: JobSize): RandomJobs {
  let all: RandomJobs = { figures: figuresOf(() => 0), written: {}, refused: {}, faults: [] }
  for (let run = 0; all.figures.commands < commands && all.faults.length === 0; run += 1)
    all = addTogether(all, oneRun(seed * APART + run, size))
  return all
}

function oneRun(seed: number, size: JobSize): RandomJobs {
  try {
    const { written, refused, ...figures } = runSequences(JOBS, seed, size)
    return {
      figures,
      written: Object.fromEntries(written),
      refused: Object.fromEntries(refused),
      faults: [],
    }
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error)
    return { figures: figuresOf(() => 0), written: {}, refused: {}, faults: [`seed ${seed}: ${what}`] }
  }
}

/** Both in one. */
export function addTogether(one: RandomJobs, other: RandomJobs): RandomJobs {
  return {
    figures: figuresOf((name) => one.figures[name] + other.figures[name]),
    written: summed(one.written, other.written),
    refused: summed(one.refused, other.refused),
    faults: [...one.faults, ...other.faults],
  }
}

function figuresOf(figure: (name: Figure) => number): Record<Figure, number> {
  return {
    sequences: figure('sequences'),
    commands: figure('commands'),
    cleared: figure('cleared'),
    askedWhole: figure('askedWhole'),
    askedOwing: figure('askedOwing'),
    openGates: figure('openGates'),
    piecesAtOpenGates: figure('piecesAtOpenGates'),
    unexplained: figure('unexplained'),
    labelsUsed: figure('labelsUsed'),
  }
}

function summed(one: Record<string, number>, other: Record<string, number>): Record<string, number> {
  const sums = { ...one }
  for (const [name, count] of Object.entries(other)) sums[name] = (sums[name] ?? 0) + count
  return sums
}
