import { describe, expect, test } from 'vitest'
import { jobWith } from '../../support/bench.ts'

const ordered = [
  'begin cover off, does not hide',
  'off 8 M6x25 hex 8 cover bolts into new bag',
  'off cover gasket, single-use into new bag',
  'end',
  'lost 3 cover bolts because they rolled away',
  'buy 3 cover bolts from the dealer',
  'buy cover gasket from the dealer',
  'want 2 tubes grease',
]

const tidy = (rows: string[]) => rows.map((row) => row.replace(/ +/g, ' ').trim())

describe('a parcel', () => {
  test('has its lines under their own numbers; what is only wanted is none of it', () => {
    const { enter, rows, desk } = jobWith(...ordered)
    enter('.6')
    const offer = tidy(rows()).find((row) => row.endsWith('a parcel is here: tick what is in it'))
    enter(offer?.split(' ')[0] ?? 'no offer')
    expect(desk.screen).toEqual({ at: 'arrivals' })
    expect(tidy(rows()).slice(0, 6)).toEqual([
      'WHAT ARRIVED 2 to come, 0 here',
      'A number says: all that was to come of that line is here, onto the bench.',
      '',
      'TO COME',
      '1 - ORDERED 3 × cover bolts M6x25 hex 8',
      '2 - ORDERED 1 × cover gasket',
    ])
  })

  test('ticked, a line keeps its number: the same again claims no other', () => {
    const { enter, rows, state, desk, entries, answer } = jobWith(...ordered)
    enter('.6', '3')
    expect(desk.screen).toEqual({ at: 'order', order: 'o2' })
    enter('.6', '4', '1')
    expect(state().orders.get('o1')?.arrived).toBe(3)
    const before = entries()
    enter('1')
    expect(entries()).toBe(before)
    expect(answer()).toContain('all of it is here already.')
    expect(tidy(rows())).toContain('1 ✓ ARRIVED 3 × cover bolts M6x25 hex 8')
    enter('2')
    expect(rows()[0]).toBe('WHAT ARRIVED  0 to come, 2 here')
  })

  test('Enter claims nothing, and neither does a number that no line has', () => {
    const { enter, entries, desk, answer } = jobWith(...ordered)
    enter('.6', '4')
    const before = entries()
    enter('3')
    expect(answer()).toContain('Nothing has the number 3 here.')
    enter('')
    expect(entries()).toBe(before)
    expect(desk.screen).toEqual({ at: 'due' })
  })
})
