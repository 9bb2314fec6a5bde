import { expect } from 'vitest'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { trialBalance } from '../../../src/session/views.ts'
import { demoLines } from './demo-job.ts'
import { homeForTest, type Options } from './putback-terminal.ts'
import { factsOf } from './told-beside.ts'
import { type Habit, Typist } from './typist.ts'

/**
 * The demo job, done on the screens from the first page to its end, beside the same told to the command line. Both must
 * have written the same, and nothing is left over.
 */
export async function wholeJob(habit: Habit, options: Options): Promise<Typist> {
  const home = homeForTest()
  const typist = new Typist(home, habit, options)
  for (const line of linesOfJob()) await typist.does(line)
  const shelf = new DiskShelf(home)
  const session = shelf.open(shelf.chosen() ?? '')
  expect(session.entries().map(factsOf)).toEqual(typist.beside.session.entries().map(factsOf))
  expect(session.state.closed).toBe(true)
  expect(trialBalance(session)).toEqual([])
  return typist
}

/** The lines of the demo job, with one more: a finger that pressed Enter once too often takes that back. */
function linesOfJob(): string[] {
  const told = demoLines()
  const at = told.findIndex((line) => line.startsWith('tighten pump cover bolts'))
  return [...told.slice(0, at + 3), 'turn', 'undo', ...told.slice(at + 3)]
}
