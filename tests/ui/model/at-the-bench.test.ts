import { describe, expect, test } from 'vitest'
import { frameRows } from '../../../src/ui/screens/frame.tsx'
import { textOf } from '../../../src/ui/text/line.ts'
import { jobWith, screens } from '../support/bench.ts'

const size = { width: 80, height: 24 }

function benchWith(...lines: string[]) {
  const seen = screens(jobWith(...lines).shelf, size)
  return { ...seen, frame: () => frameRows(seen.desk, size).rows.map(textOf).join('\n') }
}

/** A head held by bolts, ready to be tightened. */
const head = (bolts: string, passes: string, ...more: string[]) => [
  'begin head off, does not hide',
  `off ${bolts} into new bag`,
  'off cylinder head into bench',
  'measure gap of cylinder head: 0.03 by 0.01 feeler, max 0.05',
  'end',
  'take 1',
  'fit cylinder head',
  'fit head bolts',
  `tighten head bolts: ${passes}`,
  ...more,
]

describe('a step of the way back on 80 by 24', () => {
  test('what can be done with the next bolt stands over what was asked and measured', () => {
    const { enter, rows } = benchWith(...head('6 M10x120 E14 head bolts', '20 Nm, 40 Nm'))
    enter('step 1')
    const said = rows().join('\n')
    const at = ['TIGHTENING', 'TO DO', 'ASKED OF THE MANUAL', 'MEASURED'].map((title) => said.indexOf(title))
    expect(at).toEqual(at.toSorted((a, b) => a - b))
    expect(at).not.toContain(-1)
    // The bolt goes by a number, and so does what is chosen.
    expect(said).toMatch(/ {2}2 {2}fastener \d does not come to its torque/)
  })

  test('before a step is closed, bolts of which the record asks no torque are named, and one is a number away', () => {
    const { enter, frame, line } = benchWith(
      'begin cover off, does not hide',
      'off cover into bench',
      'off 4 M6x25 hex 10 cover bolts into new bag',
      'end',
      'take 1',
      'fit cover',
    )
    enter('step 1')
    expect(frame()).not.toContain('NO TIGHTENING IS IN THE RECORD')
    enter('')
    expect(frame()).toContain('NO TIGHTENING IS IN THE RECORD')
    enter('1')
    expect(line()).toBe('tighten p2: |')
    enter('10 Nm')
    expect(frame()).toContain('NEXT: TURN')
    expect(frame()).not.toContain('NO TIGHTENING IS IN THE RECORD')
  })

  test('of many lots without a torque none hides another', () => {
    const lots = ['pump bolts', 'cover screws', 'fan nuts', 'bracket studs', 'guard screws']
    const { enter, frame, line } = benchWith(
      'begin cover off, does not hide',
      ...lots.map((name) => `off 4 M6x25 hex 10 ${name} into new bag`),
      'end',
      'take 1',
      ...lots.map((name) => `fit ${name}`),
    )
    enter('step 1')
    for (const name of lots) expect(frame()).toContain(`${name} M6x25 hex 10: say what the manual asks`)
    enter('5')
    expect(line()).toBe('tighten p5: |')
  })

  test('the number for a bolt without torque is in sight with 40 bolts too', () => {
    const { enter, frame } = benchWith(
      ...head('40 M8x45 hex 13 head bolts', '20 Nm', 'layout head bolts: 5x8'),
    )
    enter('step 1')
    expect(frame()).toContain('type 2 if it does not come to its torque')
    enter('2', 'it keeps turning')
    expect(frame()).toContain('NEXT: PUT RIGHT')
  })

  test('while pieces are fitted, the tightening that comes later does not push away what to do', () => {
    const lines = head('6 M10x120 E14 head bolts', '20 Nm').filter((line) => !line.startsWith('fit'))
    const { enter, rows } = benchWith(...lines)
    enter('step 1')
    const said = rows().join('\n')
    expect(said.indexOf('TO DO')).toBeGreaterThan(-1)
    expect(said.indexOf('TO DO')).toBeLessThan(said.indexOf('TIGHTENING'))
  })

  test('where nothing is left to do it says so', () => {
    const { enter, frame } = benchWith(...head('2 M10x120 E14 head bolts', '20 Nm'))
    enter('step 1', '')
    expect(frame()).not.toContain('NOTHING LEFT')
    enter('')
    expect(frame()).toMatch(/NOTHING LEFT TO DO HERE\n +Look it over once more; Enter closes it\./)
  })

  test('the last look has its list before the tightening', () => {
    const { enter, rows } = benchWith(
      'begin head off',
      'off 4 M10 E14 head bolts into new bag',
      'off cylinder head into bench',
      'begin cover off',
      'off cover into bench',
      'end',
      'tighten head bolts: 20 Nm',
    )
    enter('step 1')
    const said = rows().join('\n')
    expect(said.indexOf('LAST LOOK: SEE AND COUNT')).toBeLessThan(said.indexOf('TIGHTENING'))
  })
})

test('before a cover goes on, what is out of its limits is seen after the list of what lies beneath', () => {
  const { enter, frame } = benchWith(
    'begin cover off',
    'measure valve clearance I1: 0.10 by 0.01 feeler, limits 0.13..0.17',
    'off cover into bench',
    'begin caps off',
    'off cam caps I1..I4,E1..E4 into bench',
    'end',
    'take 2',
    ...['I1', 'I2', 'I3', 'I4', 'E1', 'E2', 'E3', 'E4'].map((cap) => `fit cam cap ${cap}`),
    'done 2',
  )
  enter('step 1')
  expect(frame()).toMatch(/8 × cam caps I1 I2 I3 I4 E1 E2 E3 E4\n\nMEASURED\n.* I1 0\.10 mm, OUT/)
})

describe('a pass', () => {
  test('that is through is said, with the next one, and the next one begins as a new pass', () => {
    const { enter, frame } = benchWith(...head('2 M10x120 E14 head bolts', '20 Nm, 40 Nm'))
    enter('step 1', '', '')
    expect(frame()).toContain('Pass 1 is through: now pass 2 of 2: 40 Nm, from fastener 1.')
    expect(frame()).toContain('NEXT: TURN, A NEW PASS')
    enter('')
    expect(frame()).not.toContain('A NEW PASS')
    enter('')
    expect(frame()).toContain('All passes of t1 are through.')
  })

  test('by shares of a torque shows what each comes to, in its unit', () => {
    const { enter, frame } = benchWith(...head('4 M10x120 E14 head bolts', '50%, 100% of 30 lbf·ft'))
    enter('step 1')
    expect(frame()).toContain('that is 15 lbf·ft')
  })

  test('shows the setting on the scale of the wrench, and in a few words what speaks against it', () => {
    const wrench = 'wrench t1 handle 16 in adapter 2 in range 10..150 lbf·ft'
    const { enter, frame } = benchWith(...head('4 M10x120 E14 head bolts', '15 lbf·ft', wrench))
    enter('step 1')
    // 15 × 16 / (16 + 2) = 13.33, and a fifth of 150 is 30.
    expect(frame()).toContain('set the wrench to 13.3 lbf·ft for 15 lbf·ft')
    expect(frame()).toContain('in its lowest fifth; worked out, the manual decides')
  })

  test('of easing: the last one says that they come out', () => {
    const { enter, frame } = benchWith('begin head off', 'loosen head bolts 1x2: 1/2 turn, free')
    enter('.1', '', '')
    expect(frame()).toContain('NEXT: EASE, A NEW PASS')
    enter('')
    enter('.')
    expect(frame()).toMatch(/go on: ease fastener \d, pass 2 of 2: free, head bolts/)
    enter('', '')
    expect(frame()).toContain('All 2 are eased: take them out.')
  })
})

describe('where things come off', () => {
  test('a matched set is named once', () => {
    const { enter, frame } = benchWith('begin head off', 'off cam caps I1..I4,E1..E4', 'off shims I1..I2')
    enter('.1')
    expect(frame()).toContain('8 × cam caps I1 I2 I3 I4 E1 E2 E3 E4, 2 × shims I1 I2')
  })

  test('what was measured stays in the step', () => {
    const { enter, frame } = benchWith(
      'begin head off',
      'measure valve clearance I1: 0.10 by 0.01 feeler, limits 0.13..0.17',
    )
    enter('.1')
    expect(frame()).toMatch(/MEASURED\n +· q1 valve clearance I1: I1 0\.10 mm, OUT/)
  })

  test('one long bolt among short ones: all go by the name of the others', () => {
    const { enter, frame } = benchWith(
      'begin cover off',
      'off 5 M6x25 hex 8 pump cover bolts @1..3,5,6',
      'off 1 M6x60 hex 8 pump cover bolt @4',
    )
    enter('layout pump cover bolts: 1 2 3 / 6 5 4')
    expect(frame()).toContain('WHERE THEY BELONG  6 pump cover bolts')
  })

  test.each([
    ['loosen head bolts 2x2: 1/2 turn, free', 'ease 4 head bolts: 1/2 turn, then free'],
    ['layout cam caps: I1 I2 / . E1', '3 positions, row by row: I1 I2 / . E1'],
    ['layout cam caps: circle', '3 on a circle: I1 I2 E1, clockwise from the top'],
  ])('%s is shown as it is understood', (typed, says) => {
    const { type, frame, enter } = benchWith('begin head off', 'off cam caps I1,I2,E1')
    enter('.1')
    type(typed)
    expect(frame()).toContain(says)
  })
})

test('turning is understood as it is typed: which one, or why not that one', () => {
  const { enter, type, frame } = benchWith(...head('6 M10x120 E14 head bolts', '20 Nm', 'turn'))
  enter('step 1')
  type('turn')
  expect(frame()).toMatch(/fastener \d: pass 1 of 1: 20 Nm, .*head bolts/)
  type(' 6')
  expect(frame()).toMatch(/not yet: Fastener 6 of t1 \(.*\) is not next in order/)
})

test('the lines of a shim plan are written by number', () => {
  const { enter, frame, rows } = benchWith(
    'begin head off',
    'off shims I1..I2',
    'size shims: I1 2.50, I2 2.45',
    'measure valve clearance I1..I2: 0.10 0.15 by 0.01 feeler, limits 0.13..0.17',
    'end',
  )
  enter('shims for sale 2.30..3.00 step 0.025')
  expect(frame()).toContain('1 to 2 write the lines for the record')
  enter('1')
  expect(frame()).toContain('> new shim I1 size 2.45')
  enter('')
  // The one that it took the place of still lies about.
  expect(rows().join('\n')).toMatch(/ 1 {2}spare p1/)
  enter('1', '')
  expect(rows().join('\n')).not.toMatch(/ 1 {2}spare/)
})
