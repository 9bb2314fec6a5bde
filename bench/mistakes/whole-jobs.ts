import { inPrograms } from '../../tests/helpers/in-programs.ts'
import { addTallies } from '../../tests/simulation/measure/add-tallies.ts'
import { countText, shareText } from '../../tests/simulation/measure/share-text.ts'
import type { ClassTally, Tally } from '../../tests/simulation/measure/tally.ts'
import { figure, type Printer } from '../measure.ts'

/** Jobs in one program: enough that it takes longer than to start it. */
const EACH = 12

/** Whole jobs from seeds one after the other, with so many mistakes in each; 0 for clean ones. */
export async function wholeJobs(
  print: Printer['print'],
  { first, jobs, mistakes }: { first: number; jobs: number; mistakes: number },
): Promise<Tally> {
  const from = performance.now()
  const end = first + jobs
  const lists: number[][] = []
  for (let seed = first; seed < end; seed += EACH) lists.push([seed, Math.min(end, seed + EACH), mistakes])
  const tally = (await inPrograms<Tally>('tests/simulation/programs/simulate.ts', lists)).reduce(addTallies)
  tell(print, tally, (performance.now() - from) / 1000)
  return tally
}

function tell(print: Printer['print'], tally: Tally, seconds: number): void {
  const { from, to, jobs, cleared, mistakes, rows, shapes, falseBlocks, unexplained, costs } = tally
  const kinds = Object.keys(shapes).length
  const with_ = mistakes === 0 ? 'without a mistake' : `with ${mistakes} mistakes each`
  print(
    `${jobs} whole jobs ${with_} on ${kinds} kinds of machines, seeds ${from} to ${to - 1}: ${figure(seconds, 's')}`,
  )
  print(
    `  ${cleared} first starts cleared; ${falseBlocks.length} refusals or holds that no mistake explains; ${unexplained.length} things not at home that nothing explains`,
  )
  for (const { seed, shape, line, code, what } of falseBlocks.slice(0, 20))
    print(`  FALSE BLOCK seed ${seed}, ${shape}: ${JSON.stringify(line)} ${code}: ${what}`)
  for (const { seed, shape, what } of unexplained.slice(0, 20))
    print(`  UNEXPLAINED seed ${seed}, ${shape}: ${what}`)
  const each = (count: number) => figure(count / jobs, '')
  print(
    `  a job: ${each(costs.lines)}lines, ${each(costs.entries)}entries, ${each(costs.confirmations)}confirmations, ${each(costs.overrides)}overrides, ${each(costs.scans)}scans, ${each(costs.refusals)}refusals, ${each(costs.questions)}questions`,
  )
  for (const row of rows) tellRow(print, row)
}

function tellRow(print: Printer['print'], row: ClassTally): void {
  const { name, going, made, stopped, asked, unseen, byChance, refusals, passed } = row
  const all = Object.values(stopped).reduce((sum, count) => sum + count, 0)
  print(`  ${name} (${going}): ${countText(made)} made, ${shareText(all, made)} stopped`)
  const fates = { ...stopped, asked, unseen }
  print(`    ${listOf(fates)}${Object.keys(refusals).length > 0 ? `; by ${listOf(refusals)}` : ''}`)
  if (byChance > 0) print(`    ${byChance} more put right by chance, with another one, and not counted`)
  for (const { seed, what } of passed.slice(0, 3)) print(`    seed ${seed}: ${what}`)
}

function listOf(counts: Record<string, number>): string {
  return Object.entries(counts)
    .filter(([, count]) => count > 0)
    .sort(([, one], [, other]) => other - one)
    .map(([name, count]) => `${name} ${count}`)
    .join(', ')
}
