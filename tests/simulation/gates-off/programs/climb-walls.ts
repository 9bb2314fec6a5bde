import { OMISSIONS } from '../../mistakes/omissions.ts'
import { runJob } from '../../run-job.ts'
import type { Climb } from '../climb.ts'
import { OFF } from '../gate-switch.ts'
import { madeAt } from '../made-at.ts'
import { SMALL_MACHINE } from '../small-machine.ts'
import { WALLS } from '../walls.ts'

// Against each wall its mistake is made with none of its gates off, then the first, the first two, and so on to all of them.

const off: Set<string> = (globalThis as unknown as Record<typeof OFF, Set<string>>)[OFF]

function climb(): Climb[] {
  return WALLS.flatMap((wall, nth) =>
    [...wall.gates.keys(), wall.gates.length].map((count) => {
      off.clear()
      for (const [gate] of wall.gates.slice(0, count)) off.add(gate)
      const classes = OMISSIONS.filter(({ name }) => name === wall.mistake).map((each) =>
        madeAt(each, wall.at),
      )
      const outcome = runJob(SMALL_MACHINE, 1, classes, 1)
      return { wall: nth, off: count, ...outcome }
    }),
  )
}

process.stdout.write(`${JSON.stringify(climb())}\n`)
