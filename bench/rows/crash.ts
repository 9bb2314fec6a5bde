import { buildProgram } from '../../tests/helpers/child-program.ts'
import {
  DEATHS_IN_CALLS,
  type Kills,
  killWorkers,
  randomDeaths,
} from '../../tests/storage/support/killed-work.ts'
import { figure, type Printer } from '../measure.ts'

const KILLS_EACH = 10

/**
 * Programs killed at work, and what they had said to be recorded looked for afterwards. PUTBACK_KILLS: how many at any
 * moment, where 10,000 take too long.
 */
export async function run({ print }: Printer): Promise<void> {
  const { PUTBACK_KILLS = '10000' } = process.env
  const kills = Number(PUTBACK_KILLS)
  const program = await buildProgram('tests/storage/programs/work-until-killed.ts')
  try {
    const jobs = Math.ceil(kills / KILLS_EACH)
    tell(
      'at any moment',
      await timed(() => killWorkers(program, randomDeaths(jobs, KILLS_EACH), { seed: 100, atOnce: 4 })),
    )
    const inCalls = Array.from({ length: Math.ceil(jobs / 100) }, () => DEATHS_IN_CALLS).flat()
    tell(
      'in each call to the file system',
      await timed(() => killWorkers(program, inCalls, { seed: 200, atOnce: 4 })),
    )
  } finally {
    program.remove()
  }

  function tell(when: string, { seen, seconds }: { seen: Kills; seconds: number }): void {
    const { kills, acknowledged, lost, broken, untold, torn, locked, unnamed, lying } = seen
    print(`${kills} kills ${when}: ${figure(seconds, 's')}`)
    print(`  ${acknowledged} entries said to be recorded: ${lost.length} lost`)
    print(`  journals not whole, not lawful, or that did not go on: ${broken.length}`)
    print(`  recorded, and killed before it was said: ${untold}; last lines by half, set aside: ${torn}`)
    print(
      `  killed with the lock in hand: ${locked}, before its name stood in it: ${unnamed}; locks left lying: ${lying}`,
    )
    for (const text of [...broken, ...lost.map((id) => `lost: ${id}`)].slice(0, 20)) print(`  ${text}`)
    if (lost.length + broken.length > 0) process.exitCode = 1
  }
}

async function timed(work: () => Promise<Kills>): Promise<{ seen: Kills; seconds: number }> {
  const from = performance.now()
  const seen = await work()
  return { seen, seconds: (performance.now() - from) / 1000 }
}
