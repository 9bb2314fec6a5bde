import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { buildProgram, type ChildProgram, startProgram } from '../helpers/child-program.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { drain, endStrip, fill, off, putOn, strip } from '../support/commands.ts'
import { openJob } from '../support/record.ts'

let asking: ChildProgram

beforeAll(async () => {
  asking = await buildProgram('tests/session/programs/ask-at.ts')
})
afterAll(() => asking?.remove())

/** A program of its own at a time of 4 or 5 March 2030: what runs when it opens the job, and what its commands come to. */
async function at(folder: string, time: string, ...commands: Command[]): Promise<unknown[]> {
  const words = commands.map((command) => JSON.stringify(command))
  const running = startProgram(asking, folder, `2030-03-0${time}:00.000Z`, ...words)
  expect(await running.ended).toEqual({ code: 0, signal: null, stderr: '' })
  return running.lines().map((line) => JSON.parse(line))
}

test('sealant sets while no program runs, whatever becomes of the one that put it on', async () => {
  const folder = temporaryFolder()
  const pump = [openJob, strip('pump off'), drain('oil'), off(2, 'pump bolts'), endStrip]
  const sealant: Command = {
    do: 'set-consumable',
    step: 1,
    kind: 'sealant',
    name: 'grey sealant',
    workMinutes: 10,
    cureMinutes: 960,
    before: ['f1', 'start'],
  }
  const applied: Command = { do: 'apply', consumable: 's1' }
  const told = await at(folder, '4T08:00', ...pump, sealant, applied)
  expect(told.slice(-2)).toEqual(['consumable-set', 'applied'])

  // The working time goes on in the next program, too.
  expect(await at(folder, '4T08:04')).toEqual([[{ kind: 'work', minutesLeft: 6, isOver: false }]])
  expect(await at(folder, '4T08:11')).toEqual([[{ kind: 'work', minutesLeft: 0, isOver: true }]])
  expect(await at(folder, '4T08:12', applied)).toEqual([expect.anything(), 'applied'])
  expect(await at(folder, '4T08:20', putOn('p1'), fill('f1'))).toEqual([
    [{ kind: 'work', minutesLeft: 2, isOver: false }],
    'fitted',
    'not-to-be-filled',
  ])

  // 16 hours after the last piece.
  expect(await at(folder, '5T00:19', fill('f1'))).toEqual([
    [{ kind: 'set', minutesLeft: 1, isOver: false }],
    'not-to-be-filled',
  ])
  // A clock that was set back makes nothing set sooner, and shows no more than the whole time.
  expect(await at(folder, '4T01:00', fill('f1'))).toEqual([
    [{ kind: 'set', minutesLeft: 960, isOver: false }],
    'not-to-be-filled',
  ])
  const end: Command[] = [fill('f1'), { do: 'close-step', step: 1 }, { do: 'clear' }]
  expect(await at(folder, '5T00:20', ...end)).toEqual([[], 'filled', 'build-done', 'cleared'])
})
