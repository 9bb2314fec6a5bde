import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { phaseOf } from '../../src/plan/phase.ts'
import {
  addStep,
  begin,
  clear,
  done,
  endStrip,
  firstStart,
  off,
  putOn,
  reopen,
  strip,
} from '../support/commands.ts'
import { given } from '../support/journal.ts'

const home = [off(2, 'bolts'), endStrip, putOn('p1'), done(1)]

test.each<[string, Command[]]>([
  ['strip-down', []],
  ['strip-down', [addStep('turn by hand')]],
  ['strip-down', [off(2, 'bolts')]],
  ['strip-down', [strip('cover off'), off(2, 'bolts'), strip('cams out')]],
  ['waiting', [off(2, 'bolts'), endStrip]],
  ['build-up', [off(2, 'bolts'), endStrip, begin(1)]],
  ['build-up', home],
  ['ready for first start', [...home, clear]],
  ['build-up', [...home, clear, reopen(1)]],
  ['running in', [...home, clear, firstStart]],
  ['running in', [...home, clear, firstStart, reopen(1)]],
  ['closed', [...home, clear, firstStart, { do: 'close-job' }]],
])('%s', (phase, commands) => {
  expect(phaseOf(given(...commands).state)).toBe(phase)
})
