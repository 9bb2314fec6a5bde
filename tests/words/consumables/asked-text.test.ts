import { expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { askedText } from '../../../src/words/consumables/asked-text.ts'
import { begin, drained, end, job, off, override } from '../../errors/commands.ts'
import { play } from '../../errors/play.ts'

const pump: Command[] = [job, begin('Pump off'), drained('oil', 1), off(2, 'pump bolts'), end]
const set = (more: object): Command => ({
  do: 'set-consumable',
  step: 1,
  kind: 'sealant',
  name: 'grey sealant',
  ...more,
})
const note: Command = { do: 'note', kind: 'note', text: 'a call' }

// Each command of a story takes a minute, on 2 May 2026.
test.each<[Command[], string]>([
  [[set({})], 's1, grey sealant, not on yet'],
  [
    [set({ workMinutes: 90, cureMinutes: 5760, before: [], expires: '2027-01-31', amount: '1 tube' })],
    's1, grey sealant, together within 1 h 30 min, sets 4 days, use by 31 Jan 2027, 1 tube of it, not on yet',
  ],
  [
    [set({ kind: 'gasket', side: 'TOP', before: ['f1', 'start'] }), { do: 'apply', consumable: 's1' }],
    's1, grey sealant, TOP up, before the filling of oil (1 L drained) and the first start, on',
  ],
  [[set({}), { do: 'apply', consumable: 's1' }, note, note], 's1, grey sealant, on for 2 min'],
  [[set({}), override('s1')], 's1, grey sealant, passed over: the gauge is on its way'],
])('%#: %s', (commands, says) => {
  const { state } = play([...pump, ...commands])
  expect([...state.consumables.values()].map((consumable) => askedText(state, consumable))).toEqual([says])
})
