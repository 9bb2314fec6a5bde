import { expect, test } from 'vitest'
import { type PassesFault, readPasses } from '../../src/trade/tightening-passes/read-passes.ts'
import { passFaultText } from '../../src/words/pass-faults.ts'

const byFault: Record<PassesFault, [string, string]> = {
  empty: ['', 'No pass is written.'],
  form: ['20', "'20' is no pass that is understood."],
  torque: ['0 Nm', "'0 Nm' is no torque: more than zero, at most 3000 Nm, without a comma for thousands."],
  angle: ['20 Nm, 800 deg', "'800 deg' is no angle to turn by: more than zero, at most two turns."],
  range: [
    '43-37 Nm',
    "'43-37 Nm' is no tolerance and no range: the lower end comes first, and both ends have one unit.",
  ],
  pair: [
    '40 Nm (40 lbf·ft)',
    "'40 Nm (40 lbf·ft)' gives two figures that are not the same: one of them is misprinted or mistyped.",
  ],
  percent: [
    '120 % of 60 Nm',
    "'120 % of 60 Nm' is no percentage of a torque: more than zero, at most 100 %.",
  ],
  'percent-torque': ['30 %', "'30 %' has no torque that it is a percentage of."],
  'percent-falling': ['70, 30 % of 60 Nm', "'30 % of 60 Nm' is less than the percentage before it."],
  'too-many': [Array(21).fill('20 Nm').join(', '), 'These are more than 20 passes.'],
  'witness-early': ['mark, 20 Nm', "'mark' is drawn when everything is turned: it is the last pass."],
  'nothing-to-back-off': ['slacken, 20 Nm', "'slacken' comes before anything is tightened."],
  'backed-off-twice': [
    '20 Nm, slacken, back off',
    "'back off' follows on backing off fully: nothing is left to back off.",
  ],
  again: [
    '20 Nm, again',
    "'again' repeats the passes before a backing off, which stands right before it, all of them.",
  ],
}

test.each(Object.entries(byFault))('%s', (fault, [typed, says]) => {
  const reading = readPasses(typed)
  if (reading.understood) throw new Error('it is understood')
  expect(reading.code).toBe(fault)
  const { code, part, nearest } = reading
  expect(passFaultText({ code: 'passes', fault: code, part, nearest, form: '' })).toEqual({
    what: says,
    lines: [],
    cure: `Perhaps "${nearest}".`,
  })
})
