import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { worked } from './worked.ts'

const under = 'Worked out, not a specification: the service manual decides.'
const tooth = 'One tooth of 24/48 is 15° at the crank, 7.5° at the cam: 360 / 24 = 15°.'
const again = [
  'The crank stays on its mark.',
  'With it off, valves may meet pistons: turn no shaft but as the manual says.',
  'Then turn the crank two full turns by hand, the way it runs, and look again.',
]

test.each([
  ['teeth 24/48', [tooth, under]],
  [
    'teeth 24/36 30/40',
    [
      'One tooth of 24/36 is 15° at the crank, 7.5° at the cam: 360 / 24 = 15°.',
      'One tooth of 30/40 is 18° at the crank, 9° at the cam.',
      under,
    ],
  ],
  [
    'teeth 24/48 off 1 late',
    [
      'The cam is 1 tooth late: move it 1 tooth forward in its chain or belt.',
      'The cam is 15° of the crank (7.5° of its own) late.',
      'Forward is the way it runs.',
      ...again,
      tooth,
      under,
    ],
  ],
  [
    'teeth 24/48 off 16.5 deg cam clockwise, runs clockwise',
    [
      'The cam is 2 teeth early: move it 2 teeth back in its chain or belt.',
      'The cam is 33° of the crank (16.5° of its own) early.',
      'That is 3° more than 2 teeth: slack, wear, or the measure.',
      'Back is against the way it runs: anticlockwise as you look at it.',
      ...again,
      tooth,
      under,
    ],
  ],
  [
    'teeth 24/48 off 16 pins for 15 right, runs anticlockwise',
    [
      'The cam is 1 tooth early: move it 1 tooth back in its chain or belt.',
      'The cam is 15° of the crank (7.5° of its own) early.',
      '16 counted, 15 wanted, from mark to mark along the slack run: 1 too many.',
      'Back is against the way it runs: clockwise as you look at it.',
      ...again,
      tooth,
      under,
    ],
  ],
  [
    'teeth 24/48 off 7.5 deg crank late',
    [
      'The cam is 7.5° of the crank (3.75° of its own) late: no whole tooth.',
      'At 24/48, 15° a tooth, it is 0.5 of a tooth.',
      'Look for wear, a slack tensioner or a wrong mark before anything is moved.',
      tooth,
      under,
    ],
  ],
  ['teeth 24/48 off 0 late', ['The marks stand right: nothing to move.', tooth, under]],
  [
    'teeth 24/48 off 180 deg cam late',
    [
      'That is one whole turn of the crank: turn it once more and look again.',
      'The marks of the crank meet every turn, those of the cam every second one.',
      tooth,
      under,
    ],
  ],
  [
    'teeth 24/48 off 400 deg crank late',
    ['400° of the crank is more than a turn: measure to the nearer side.', tooth, under],
  ],
  [
    'teeth 24/48 chain 126',
    [
      'Marked links (of 126) meet the marks again after 42 turns of the crank.',
      'Until then they stand elsewhere, and nothing is wrong.',
      tooth,
      under,
    ],
  ],
])('%s', (line, rows) => {
  expect(worked(line)).toEqual(rows)
})

test('of two stages, each that may be it', () => {
  expect(worked('teeth 24/36 30/40 off 15 deg crank late').slice(0, 4)).toEqual([
    'The cam is 15° of the crank (7.5° of its own) late.',
    'At 24/36: the 36 goes 1 tooth forward.',
    'Or at 30/40: the 40 goes 1 tooth forward (it is 3° less than 1 tooth).',
    'Forward is the way it runs.',
  ])
  expect(worked('teeth 24/36 30/40 off 54 deg crank early').slice(0, 2)).toEqual([
    'The cam is 54° of the crank (27° of its own) early.',
    'At 30/40: the 40 goes 3 teeth back.',
  ])
  expect(worked('teeth 24/36 30/40 chain 126')[0]).toBe(
    'When marked links come round is worked out for one pair, not for 2.',
  )
})

describe('teeth that drive no cam', () => {
  test.each([
    [
      'teeth 48/24',
      ['With 48/24 the cam would turn twice as fast: the crank stands first.', 'Write "teeth 24/48".'],
    ],
    [
      'teeth 24/46',
      [
        'With 24/46 the crank turns 1.917 times a turn of the cam, not 2.',
        'With 48 at the cam it would be 2: count them again.',
        'With a shaft between, name both pairs: "teeth 24/36 30/40".',
      ],
    ],
    [
      'teeth 20/35 25/30',
      ['With 20/35 25/30 the crank turns 2.1 times a turn of the cam, not 2.', 'Count them again.'],
    ],
    ['teeth 3/6', ['No timing sprocket has 3 teeth: 6 to 300.']],
    ['teeth 1/2', ['No timing sprocket has 1 tooth: 6 to 300.']],
    ['teeth 20/25 20/25 20/25', ['At most 2 pairs of teeth, from the crank to the cam.']],
  ])('%s', (line, rows) => {
    expect(worked(line)).toEqual(rows)
  })
})

test('whatever is asked, rows that fit a terminal and say no nonsense', () => {
  const tenths = fc.integer({ min: 0, max: 4000 }).map((tenth) => tenth / 10)
  const said = fc.oneof(
    fc
      .tuple(tenths, fc.constantFrom('crank', 'cam'), fc.constantFrom('early', 'late'))
      .map(([degrees, at, side]) => `${degrees} deg ${at} ${side}`),
    fc
      .tuple(fc.nat(60), fc.nat(60), fc.constantFrom('tight', 'slack'))
      .map(([found, wanted, run]) => `${found} pins for ${wanted} ${run}`),
    fc
      .tuple(fc.nat(60), fc.constantFrom('early', 'late, runs clockwise'))
      .map(([teeth, side]) => `${teeth} ${side}`),
  )
  const drive = fc.constantFrom('24/48', '17/34', '24/36 30/40', '21/42 chain 119')
  fc.assert(
    fc.property(drive, said, (teeth, off) => {
      for (const row of worked(`teeth ${teeth} off ${off}`)) {
        expect(row).not.toMatch(/NaN|undefined|Infinity|-0/)
        expect(row.length).toBeLessThanOrEqual(80)
      }
    }),
  )
})
