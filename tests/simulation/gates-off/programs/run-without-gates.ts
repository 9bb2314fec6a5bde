import { ONE_OF_EACH } from '../../machines/one-of-each.ts'
import { madeAt, mistakeCalled } from '../../mistakes/made-at.ts'
import { BLOCKS } from '../blocks.ts'
import type { Beside, Climb, GatesOffReport, Held } from '../reports.ts'
import { runWithout } from '../run-without.ts'
import { SWITCHES } from '../switches.ts'
import { WALLS } from '../walls.ts'
import { withLittleElse } from '../with-little-else.ts'

/** At each wall its mistake is made with none of its gates off, then the first, the first two, and so on to all of them. */
function climbs(): Climb[] {
  return WALLS.flatMap(({ mistake, at, gates, seed }, wall) =>
    [...gates.keys(), gates.length].map((off) => {
      const without = gates.slice(0, off).map(([gate]) => gate)
      const machine = withLittleElse(ONE_OF_EACH, at)
      return { wall, off, ...runWithout(without, machine, [madeAt(mistake, at)], 1, seed) }
    }),
  )
}

/** With all gates of a group off, several of the mistakes that have none of them in their walls. */
function beside(): Beside[] {
  const groups = new Set(SWITCHES.map(({ gate }) => groupOf(gate)))
  return [...groups].map((group) => {
    const off = SWITCHES.flatMap(({ gate }) => (groupOf(gate) === group ? gate : []))
    const touched = new Set(
      WALLS.flatMap(({ mistake, gates }) => (gates.some(([gate]) => groupOf(gate) === group) ? mistake : [])),
    )
    const others = WALLS.flatMap(({ mistake, gates }) =>
      gates.length > 0 && !touched.has(mistake) ? mistake : [],
    )
    // What is said to be done is looked at again at some places only, whatever gates there are.
    const made = [...new Set(others)].map(mistakeCalled).filter(({ going }) => going !== 'ticked')
    return { group, ...runWithout(off, ONE_OF_EACH, made, 6) }
  })
}

/** `home, to close a step` and `home, at the last gate` are one group. */
function groupOf(gate: string): string {
  return gate.replace(/,.*/, '')
}

/** Jobs without a mistake: with nothing in the way, and with each of what refuses what is in order. */
function held(): Held[] {
  return [null, ...BLOCKS.map(({ gate }) => gate)].map((by) => ({
    by,
    ...runWithout(by ? [by] : [], ONE_OF_EACH, [], 0),
  }))
}

const report: GatesOffReport = { climbs: climbs(), beside: beside(), held: held() }
process.stdout.write(`${JSON.stringify(report)}\n`)
