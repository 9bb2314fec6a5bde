import { readFileSync, writeFileSync } from 'node:fs'
import { type Goal, isMissed, isTooFew, jobGoals } from '../../tests/simulation/measure/goal.ts'
import { withFindings } from '../../tests/simulation/measure/in-readme.ts'
import { findingsText, metText } from '../../tests/simulation/measure/mistakes-table.ts'
import { countText, shareText } from '../../tests/simulation/measure/share-text.ts'
import type { Printer } from '../measure.ts'
import { costsOfLines } from '../mistakes/costs-of-lines.ts'
import { interruptions } from '../mistakes/interruptions.ts'
import { keysOfJobs } from '../mistakes/keys.ts'
import { randomCommands } from '../mistakes/random-commands.ts'
import { realKills } from '../mistakes/real-kills.ts'
import { wholeJobs } from '../mistakes/whole-jobs.ts'

/** So many of each in full. Clean jobs have seeds of their own. */
const COMMANDS = 1_000_000
const JOBS = 1440
const MISTAKES_EACH = 20
const CLEAN_JOBS = 1008
const CLEAN_FROM = 1_000_001
const INTERRUPTIONS = 10_000
const KILLS = 200
const KEY_JOBS = 24

/**
 * What a mechanic does wrong, and whether it is stopped before the first start. PUTBACK_MISTAKES: which part of it, as 0.01, where
 * all of it takes too long. PUTBACK_WRITE=1 puts what it comes to into the README.
 */
export async function run({ print }: Printer): Promise<void> {
  const { PUTBACK_MISTAKES = '1', PUTBACK_WRITE } = process.env
  const part = Number(PUTBACK_MISTAKES)
  const some = (all: number) => Math.max(1, Math.ceil(all * part))
  const random = await randomCommands(print, some(COMMANDS))
  const mistaken = await wholeJobs(print, { first: 1, jobs: some(JOBS), mistakes: MISTAKES_EACH })
  const clean = await wholeJobs(print, { first: CLEAN_FROM, jobs: some(CLEAN_JOBS), mistakes: 0 })
  const broken = await interruptions(print, some(INTERRUPTIONS))
  const killed = await realKills(print, some(KILLS))
  const keys = await keysOfJobs(print, some(KEY_JOBS))
  const parts = [random, broken, killed, keys]

  const goals = [...jobGoals(mistaken, clean), ...parts.flatMap((each) => each.goals)]
  for (const goal of goals) tellGoal(print, goal)
  // A part of it is too few for any goal: then only what came out wrong counts.
  if (goals.some((goal) => isMissed(goal) || (part >= 1 && isTooFew(goal)))) process.exitCode = 1
  if (PUTBACK_WRITE !== '1') return
  const jobs = ({ from, to }: { from: number; to: number }) => `${from} to ${to - 1}`
  const text = findingsText({
    part,
    date: new Date().toISOString().slice(0, 10),
    seeds: [
      `jobs with mistakes ${jobs(mistaken)}`,
      `clean jobs ${jobs(clean)}`,
      ...parts.map(({ seeds }) => seeds),
    ],
    goals,
    rows: mistaken.rows,
    costs: [...costsOfLines(clean, mistaken), ...parts.flatMap((each) => each.costs)],
  })
  writeFileSync('README.md', withFindings(readFileSync('README.md', 'utf8'), text))
  print('written into README.md')
}

function tellGoal(print: Printer['print'], goal: Goal): void {
  const { what, tries, hits } = goal
  const counts = `${countText(hits)} of ${countText(tries)}, ${shareText(hits, tries)}`
  print(`${{ yes: 'MET', no: 'MISSED', 'too few': 'TOO FEW' }[metText(goal)].padEnd(7)} ${what}: ${counts}`)
}
