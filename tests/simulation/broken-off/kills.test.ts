import { expect, test } from 'vitest'
import { buildProgram } from '../../helpers/child-program.ts'
import { killForReal } from './kill-for-real.ts'

test('a program killed in the middle of a job, and the card sixty days later', async () => {
  const program = await buildProgram('tests/simulation/programs/work-until-killed.ts')
  try {
    const { kills, lost, wrongNext } = await killForReal(program, { seed: 7, kills: 2, atOnce: 2 })
    expect({ kills, lost, wrongNext }).toEqual({ kills: 2, lost: [], wrongNext: [] })
  } finally {
    program.remove()
  }
})
