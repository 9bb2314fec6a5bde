import { buildProgram } from '../../tests/helpers/child-program.ts'
import { killForReal } from '../../tests/simulation/broken-off/kill-for-real.ts'
import { figure, type Printer } from '../measure.ts'
import type { Part } from './part.ts'

/** Programs killed in the middle of a whole job, and the card that whoever comes after sixty days is given. */
export async function realKills(print: Printer['print'], wanted: number): Promise<Part> {
  const from = performance.now()
  const program = await buildProgram('tests/simulation/programs/work-until-killed.ts')
  try {
    const seen = await killForReal(program, { seed: 1, kills: wanted, atOnce: 2 })
    const { kills, acknowledged, untold, lost, wrongNext } = seen
    print(
      `${kills} programs killed in the middle of a job: ${figure((performance.now() - from) / 1000, 's')}`,
    )
    print(
      `  ${acknowledged} entries said to be recorded: ${lost.length} lost; recorded and not said: ${untold}; wrong next: ${wrongNext.length}`,
    )
    for (const fault of [...lost, ...wrongNext].slice(0, 20)) print(`  ${fault}`)
    return {
      goals: [
        {
          what: 'programs killed at work with nothing lost and the right next thing named sixty days later',
          tries: kills,
          hits: kills - Math.min(kills, lost.length + wrongNext.length),
          least: 1,
          wanted: 200,
        },
      ],
      seeds: `killed programs 1 to ${wanted}`,
      costs: [],
    }
  } finally {
    program.remove()
  }
}
