import { expect, test } from 'vitest'
import { worked } from './worked.ts'

const source = 'After the ASHRAE Handbook, Fundamentals; it holds from 10 to 60 % by volume.'
const table = "Indicative: the table of the coolant's maker decides."
const manual = 'Worked out, not a specification: the service manual decides.'
const weak = 'Coolants to ASTM D3306 are meant to be mixed from 40 to 60 %.'

// The temperatures: tests/trade/coolant/freezing-point.test.ts.
test.each([
  ['freezes at 50 %', ['50 % of ethylene glycol freezes at about -37 °C (-35 °F).', source, table, manual]],
  [
    'freezes at 50/50 propylene',
    ['50 % of propylene glycol freezes at about -34 °C (-29 °F).', source, table, manual],
  ],
  [
    'freezes at 5 %',
    ['5 % of ethylene glycol freezes between 0 °C (32 °F) and -4 °C (25 °F).', source, table, manual],
  ],
  ['freezes at 0 %', ['Water freezes at 0 °C (32 °F).']],
  [
    'freezes at 65 %',
    ['65 % of ethylene glycol freezes sooner than 60 % (-52 °C, -62 °F).', source, table, manual],
  ],
  [
    'freezes at 65 % propylene',
    ['The table of propylene glycol ends at 60 % (-51 °C, -60 °F).', source, table, manual],
  ],
  [
    'freezes at 80 %',
    ['80 % is too strong: 70 % is the most (ASTM D3306), 60 % protects best.', source, table, manual],
  ],
  ['glycol for -25 °C', ['-25 °C takes at least 41 % of ethylene glycol by volume.', source, table, manual]],
  [
    'glycol for -13 F propylene',
    ['-13 F takes at least 44 % of propylene glycol by volume.', source, table, manual],
  ],
  [
    'glycol for -5 °C',
    ['-5 °C takes at least 13 % of ethylene glycol by volume.', weak, source, table, manual],
  ],
  [
    'glycol for -2 °C',
    ['-2 °C takes less than 10 % of ethylene glycol (10 %: -4 °C, 25 °F).', weak, table, manual],
  ],
  ['glycol for 5 °C', ['5 °C is no frost: water does not freeze there.', weak]],
  [
    'glycol for -70 °C',
    ['-70 °C is too cold for ethylene glycol: 60 % takes -52 °C, -62 °F at best.', source, table, manual],
  ],
])('%s', (line, rows) => {
  expect(worked(line)).toEqual(rows)
})
