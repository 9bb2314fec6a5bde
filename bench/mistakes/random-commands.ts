import { inPrograms } from '../../tests/helpers/in-programs.ts'
import { addTogether, type RandomJobs } from '../../tests/model/random-jobs.ts'
import { atMost } from '../../tests/simulation/measure/interval.ts'
import { countText } from '../../tests/simulation/measure/share-text.ts'
import { figure, type Printer } from '../measure.ts'
import type { Part } from './part.ts'

/** In one program: enough that it takes longer than to start it. */
const EACH = 50_000

/** Every second program gives small jobs, much of which is wild; the others large ones, which a patient hand brings home. */
const SMALL = { strip: 14, patience: 60 }
const LARGE = { strip: 40, patience: 300 }

/**
 * Commands by chance, each decided by the program and carried out beside a naive model of the bench: while the record says
 * that the first start is cleared, the model is asked for what nothing explains.
 */
export async function randomCommands(print: Printer['print'], wanted: number): Promise<Part> {
  const from = performance.now()
  const programs = Math.ceil(wanted / EACH)
  const lists = Array.from({ length: programs }, (_, index) => {
    const { strip, patience } = index % 2 === 0 ? SMALL : LARGE
    return [index + 1, Math.min(wanted, EACH), strip, patience]
  })
  const all = (await inPrograms<RandomJobs>('tests/model/programs/random-jobs.ts', lists)).reduce(addTogether)
  const { commands, sequences, askedWhole, askedOwing, openGates, piecesAtOpenGates, unexplained } =
    all.figures
  const entries = Object.values(all.written).reduce((sum, count) => sum + count, 0)
  print(
    `${commands} random commands in ${sequences} jobs, seeds 1 to ${programs}: ${figure((performance.now() - from) / 1000, 's')}`,
  )
  print(`  ${entries} entries of ${kinds(all.written)} kinds, ${kinds(all.refused)} kinds of refusals`)
  print(
    `  a first start asked for ${askedWhole + askedOwing} times: ${askedWhole} cleared, ${askedOwing} refused for what was owed`,
  )
  print(
    `  ${openGates} looks at an open gate, ${piecesAtOpenGates} pieces seen there: ${unexplained} unexplained`,
  )
  const most = atMost(Math.min(unexplained, askedWhole), askedWhole)
  print(
    `  with 95 % confidence that is so at no more than ${figure(most * 1e6, 'of a million')} gates opened (one-sided, by gates)`,
  )
  for (const fault of all.faults.slice(0, 20)) print(`  ${fault}`)
  // A program ends at its first fault.
  const faulty = Math.min(askedWhole, Math.max(unexplained, all.faults.length))
  return {
    goals: [
      {
        what: `gates opened in ${countText(commands)} random commands with every piece explained`,
        tries: askedWhole,
        hits: askedWhole - faulty,
        least: 1,
        wanted: 10_000,
      },
    ],
    seeds: `random commands 1 to ${programs}`,
    costs: [],
  }
}

function kinds(counts: Record<string, number>): number {
  return Object.keys(counts).length
}
