import { describe, expect, test } from 'vitest'
import { textOf } from '../../../src/ui/text/line.ts'
import { jobWith } from '../support/bench.ts'

/** Two lots in one bag, a set in a tray, all home again; the round is step 3, and under way. */
const round = [
  'shelf behind the lift',
  'begin lever off, does not hide',
  'off 4 M6x20 hex 8 lever bolts into new bag',
  'off 2 M6x12 hex 8 clamps into 2',
  'begin plate off, does not hide',
  'tray 8 slots caps in 1',
  'off caps 1..4 into caps',
  'end',
  'accept all',
]
const home = [
  ...round,
  'take 2',
  'fit cap 1',
  'fit cap 2',
  'fit cap 3',
  'fit cap 4',
  'done 2',
  'take 1',
  'fit lever bolts',
  'fit clamps',
  'done 1',
]

describe('the last round on the screens', () => {
  test('lists the containers to fetch before it is taken up', () => {
    const { enter, rows } = jobWith(...home)
    enter('step 3')
    expect(rows()).toEqual(
      expect.arrayContaining([
        'TIP OUT, ONE AFTER THE OTHER',
        '     · bag 2  held 4 × lever bolts M6x20 hex 8 and 2 × clamps M6x12 hex 8',
        '     · tray 3 (caps) on shelf 1  held 4 × caps 1, 2, 3, 4',
      ]),
    )
  })

  test('a number says that nothing is in a bag, twice the same for a finger that bounces', () => {
    const { enter, rows, state, text } = jobWith(...home, 'take 3')
    enter('step 3')
    expect(text()).not.toContain('NOTHING LEFT TO DO HERE')
    expect(rows()).toContain('TIP OUT EACH: EMPTY, ITS NUMBER; NOT EMPTY, SCAN IT')
    enter('1')
    enter('1')
    expect([...state().agreed]).toEqual([2])
    expect(rows()).toContain('  1  ✓ bag 2  held 4 × lever bolts M6x20 hex 8 and 2 × clamps M6x12 hex 8')
    expect(rows()).toContain('  2  tray 3 (caps) on shelf 1  held 4 × caps 1, 2, 3, 4')
    enter('2')
    expect(text()).toContain('NOTHING LEFT TO DO HERE')
    enter('')
    enter('')
    expect(state().steps.get(3)?.built).toBe('done')
  })

  test('Enter alone says nothing of a bag that nobody tipped out', () => {
    const { enter, state } = jobWith(...home, 'take 3')
    enter('step 3')
    const { seq } = state()
    enter('')
    enter('')
    enter('')
    expect(state().seq).toBe(seq)
  })

  test('in large letters the number of each bag is the same as in its row', () => {
    const { enter, desk } = jobWith(...home, 'take 3')
    const said = () => {
      const { large } = desk.page()
      return large && [large.letters, ...large.under.map((part) => textOf(part).trim())]
    }
    enter('step 3', '*')
    expect(said()).toEqual(['BAG 2', 'tip it out; empty: type 1', 'not empty: scan it'])
    enter('1')
    expect(said()).toEqual(['TRAY 3 (CAPS)', 'tip it out; empty: type 2', 'not empty: scan it'])
  })

  test('a bag that something is in still asks for its number', () => {
    const { enter, text } = jobWith(...home, 'new 3 lever bolts into 2', 'take 3')
    enter('step 3')
    enter('1')
    expect(text()).toContain('COUNT bag 2')
  })
})

test('one in a bag that should be empty: scanned, said by one number, explained by another, and what is to be opened is said', () => {
  const { enter, answer, state, text } = jobWith(...home, 'take 3')
  enter('scan 2')
  expect(text()).toContain('It should be empty. It held:')
  expect(text()).toContain('4 × lever bolts M6x20 hex 8 and 2 × clamps M6x12 hex 8, out since 14:05:')
  enter('1')
  expect(text()).toContain('2  it is 1 × lever bolt M6x20 hex 8, recorded as fitted in step 1, lever')
  enter('2')
  expect(state().ledger.accounts.get('p1')?.at).toEqual(
    new Map([
      ['machine', 3],
      ['c2', 1],
    ]),
  )
  expect(answer()).toContain('"reopen 1 because ..." opens step 1, then "fit p1"')
})

test('a bag that never held anything is empty, and no more is said', () => {
  const { enter, text } = jobWith(...home, 'bag')
  enter('scan 4')
  expect(text()).not.toContain('should be empty')
})
