import { beforeAll, describe, expect, test } from 'vitest'
import { startProgram } from '../../helpers/child-program.ts'
import { buildWithSwitches } from './build-with-switches.ts'
import type { Climb } from './climb.ts'
import { SWITCHES } from './switches.ts'
import { WALLS } from './walls.ts'

let climbs: Climb[] = []

beforeAll(async () => {
  const program = await buildWithSwitches('tests/simulation/gates-off/programs/climb-walls.ts', SWITCHES)
  try {
    const running = startProgram(program)
    const [said = ''] = await running.said(1)
    climbs = JSON.parse(said)
  } finally {
    program.remove()
  }
}, 120_000)

describe.each(WALLS.map((wall, nth) => ({ ...wall, nth })))('$mistake: $at', ({ nth, gates }) => {
  const climbed = (off: number) => climbs.filter((climb) => climb.wall === nth && climb.off === off)
  const stoppedBy = (off: number) =>
    climbed(off).flatMap(({ fates }) => fates.map((fate) => ('where' in fate ? fate.where : null)))

  test.each(gates.map(([gate, stops], off) => ({ gate, stops, off })))(
    '$gate: stopped $stops',
    ({ off, stops }) => expect(stoppedBy(off)).toEqual([stops]),
  )

  test('with all of them off nothing stops it', () => {
    expect(stoppedBy(gates.length)).toEqual([null])
    expect(climbed(gates.length).map(({ cleared }) => cleared)).toEqual([true])
  })
})
