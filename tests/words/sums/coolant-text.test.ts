import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { worked } from './worked.ts'

const table = "Indicative: the table of the coolant's maker decides."
const under = 'Worked out, not a specification: the service manual decides.'
const open = 'Open it cold: hot it is under pressure. Collect it: it is poisonous.'
const at50 = '50 % of ethylene glycol freezes at about -37 °C (-35 °F).'

// The amounts by hand, from the balance of a partial drain; tests/trade/coolant/drain-and-refill.test.ts.
test.each([
  [
    'coolant 10 L from 30 % to 50 %',
    [
      'Drain 2.86 L, refill with concentrate: 30 % becomes 50 %.',
      '10 L × (50 - 30) / (100 - 30) = 2.86 L',
      at50,
      table,
      under,
      open,
    ],
  ],
  [
    'coolant 12 US qt from 25 % to 50 % propylene',
    [
      'Drain 4 US qt (3.79 L), refill with concentrate: 25 % becomes 50 %.',
      '12 US qt × (50 - 25) / (100 - 25) = 4 US qt',
      '50 % of propylene glycol freezes at about -34 °C (-29 °F).',
      table,
      under,
      'Open it cold: hot it is under pressure. Collect it, all of it.',
    ],
  ],
  [
    'coolant 10 L from 30 % to 50 % with premix',
    [
      'Drain all, 10 L, refill with 50 % premix: 30 % becomes 50 %.',
      '10 L × (50 - 30) / (50 - 30) = 10 L',
      at50,
      table,
      under,
      open,
    ],
  ],
  [
    'coolant 10 L drained 6 L from 30 % to 50 %',
    [
      'Refill with 3.8 L concentrate and 2.2 L water: 30 % becomes 50 %.',
      'What goes in must have 30 + (50 - 30) × 10 L / 6 L = 63.33 %.',
      '6 L × 63.33 / 100 = 3.8 L',
      at50,
      table,
      under,
      open,
    ],
  ],
  [
    'coolant 10 L drained 4 L from 30 % with premix',
    [
      'It comes to 38 %, once it has mixed.',
      '30 + (50 - 30) × 4 L / 10 L = 38 %',
      '38 % of ethylene glycol freezes at about -23 °C (-9 °F).',
      'Coolants to ASTM D3306 are meant to be mixed from 40 to 60 %.',
      table,
      under,
      open,
    ],
  ],
  [
    'coolant 6 L at 40 % with 60 % premix',
    [
      'Mix 4 L 60 % premix and 2 L water for 40 %.',
      '6 L × 40 / 60 = 4 L',
      '40 % of ethylene glycol freezes at about -25 °C (-13 °F).',
      table,
      under,
      'Ethylene glycol is poisonous: leave none of it standing open.',
    ],
  ],
  ['coolant 10 L from 50 % to 50 %', ['It is 50 % as it is: nothing to do.', at50, table, under]],
])('%s', (line, rows) => {
  expect(worked(line)).toEqual(rows)
})

describe('what cannot be done, in one line and a way out', () => {
  test.each([
    [
      'coolant 10 L from 30 % to 50 % with 40 %',
      ['40 % mixture is weaker than the 50 % wanted: no amount of it is enough.'],
    ],
    [
      'coolant 10 L from 60 % to 50 % with concentrate',
      [
        'Concentrate is stronger than the 50 % wanted: no amount of it thins it.',
        'Refill with water, or with a weaker mixture.',
      ],
    ],
    [
      'coolant 10 L drained 4 L from 0 % to 50 %',
      [
        'Too little came out: concentrate alone brings it to 40 %, not 50 %.',
        '5 L have to come out in all; or drain and refill once more.',
      ],
    ],
    [
      'coolant 10 L drained 2 L from 70 % to 50 %',
      [
        'Too little came out: water alone brings it to 56 %, not 50 %.',
        '2.86 L have to come out in all; or drain and refill once more.',
      ],
    ],
    [
      'coolant 10 L drained 14 L from 30 % to 50 %',
      ['14 L cannot have come out of 10 L: one of the two is mistyped.'],
    ],
  ])('%s', (line, rows) => {
    expect(worked(line)).toEqual(rows)
  })
})

test.each([
  ['coolant 2100 ml at 50 %', 'Mix 1050 ml concentrate and 1050 ml water for 50 %.'],
  ['coolant 6 L at 50 % with premix', 'Mix 6 L 50 % premix for 50 %.'],
  ['coolant 6 L at 0 %', '0 % is water alone: 6 L of it.'],
])('%s', (line, first) => {
  expect(worked(line)[0]).toBe(first)
})

test('too strong is said beside the amount', () => {
  expect(worked('coolant 6 L at 65 %')).toContain(
    '65 % of ethylene glycol freezes sooner than 60 % (-52 °C, -62 °F).',
  )
  expect(worked('coolant 6 L at 75 %')).toContain(
    '75 % is too strong: 70 % is the most (ASTM D3306), 60 % protects best.',
  )
})

test('whatever is asked, rows that fit a terminal and say no nonsense', () => {
  const percent = fc.nat(100)
  const litres = fc.integer({ min: 10, max: 500 }).map((tenths) => tenths / 10)
  const unit = fc.constantFrom('L', 'US qt', 'imp qt', 'cl')
  const refill = fc.constantFrom('', 'with water', 'with premix', 'with 35 % premix', 'propylene')
  fc.assert(
    fc.property(
      litres,
      litres,
      unit,
      percent,
      percent,
      refill,
      (capacity, drained, name, now, to, goesIn) => {
        const lines = [
          `coolant ${capacity} ${name} from ${now} % to ${to} % ${goesIn}`,
          `coolant ${capacity} ${name} drained ${drained} ${name} from ${now} % to ${to} % ${goesIn}`,
          `coolant ${capacity} ${name} drained ${drained} ${name} from ${now} % with premix`,
          `coolant ${capacity} ${name} at ${to} % ${goesIn}`,
        ]
        for (const row of lines.flatMap(worked)) {
          expect(row).not.toMatch(/NaN|undefined|Infinity|-0(?![.\d])|\d{7}/)
          expect(row.length).toBeLessThanOrEqual(80)
        }
      },
    ),
  )
})
