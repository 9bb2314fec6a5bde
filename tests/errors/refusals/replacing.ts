import type { Cases } from '../case.ts'
import { at, begin, bench, bought, end, job, move, off } from '../commands.ts'
import { judged } from '../judging-commands.ts'
import { alike, found, on, over } from '../replacing-commands.ts'

const pump = [job, begin('Pump off'), off(1, 'water pump', { kind: 'part' }, bench), end]
const replaced = [...pump, on('p1', 3, 'pump studs', 'M6x25'), bought(1, 'p1', true)]

export const replacingCases = {
  'nothing-to-compare': [
    {
      given: pump,
      when: alike('p1'),
      says: [
        'Water pump has no old one beside it to compare.',
        '> "judge p1 fit again because ..." says that it is right.',
      ],
    },
    {
      given: [...pump, judged('replace', 'worn bearing', 'p1')],
      when: alike('p1'),
      says: ['Water pump has no old one beside it to compare.', '> First the new one: "new p1" when here.'],
    },
  ],
  'not-compared': [
    {
      given: replaced,
      when: move('p1', at('scrap')),
      says: [
        'Water pump (p1) is the old one, and stays until the new one is held beside it: p3 is not compared.',
        '> Lay them side by side, then "compare p3: alike"; to let it go all the same, "scrap p1 because ...".',
      ],
    },
    {
      given: [...pump, bought(1, 'p1', true), found('p2', { feature: 'ports', how: 'wrong' })],
      when: move('p1', at('spare')),
      says: [
        'Water pump (p1) is the old one, and stays until the new one is held beside it: p2 is not compared.',
        '> Lay them side by side, then "compare p2: alike"; to let it go all the same, "scrap p1 because ...".',
      ],
    },
  ],
  'carries-owed': [
    {
      given: replaced,
      when: alike('p3'),
      says: [
        'Water pump (p1) cannot leave: 3 × pump studs M6x25 are still on it and go back.',
        '  3 × pump studs M6x25 are on water pump p1.',
        '> Move over first: "move over from p1 to p3", or "new p2 instead" when new ones are here.',
      ],
    },
    {
      given: [...pump, on('p1', 1, 'dowel')],
      when: move('p1', at('scrap')),
      says: [
        'Water pump (p1) cannot leave: 1 × dowel is still on it and goes back.',
        '  1 × dowel is on water pump p1.',
        '> Take it off first: "move p2 to bench", or "new p2 instead" when new ones are here.',
      ],
    },
  ],
  'other-kind': [
    {
      given: pump,
      when: { do: 'supply', piece: 'p1', count: 1, into: bench, instead: true, named: 'thermostat' },
      says: [
        'Asked for: water pump; thermostat is another kind of thing.',
        '> Look what is in your hand; if it takes that place all the same, "new p1 instead".',
      ],
    },
  ],
} satisfies Record<string, Cases>

/** Refusals of other subjects that old and new pieces meet. */
export const refusedHere = [
  {
    given: [job, off(0, 'water pump', { should: 1 })],
    when: on('p1', 2, 'studs', 'M6x25'),
    says: [
      'Water pump: none within reach, 1 wanted: 1 short.',
      '> Look for the rest first; then "new p1" when found or here, or "leave off p1 because ...".',
    ],
  },
  {
    given: [...replaced, over('p1', 'p3'), alike('p3')],
    when: alike('p3'),
    says: [
      'Water pump is compared already, and is the right one.',
      '> Go on with the next; if it is wrong after all, "compare p3: wrong, ...".',
    ],
  },
  {
    given: [...pump, bought(1, 'p1', true, at('supplier'))],
    when: alike('p2'),
    says: [
      'Water pump: none within reach, 1 wanted: 1 short.',
      '  1 × water pump is at a supplier.',
      '> Once here, "move p2 to bench".',
    ],
  },
  {
    given: replaced,
    when: over('p1', 'p3', 'p3'),
    says: ['Water pump: none to be moved from there.', '  On the bench.', '> Say where it is.'],
  },
]
