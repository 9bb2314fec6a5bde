import { describe, expect, test } from 'vitest'
import { jobWith, screens, shelfLater } from '../../support/bench.ts'

const apart = ['begin cover off, does not hide', 'off 8 M6x25 hex 8 cover bolts into new bag', 'end']

const tidy = (rows: string[]) => rows.map((row) => row.replace(/ +/g, ' ').trim())

describe('what is to buy', () => {
  const short = [...apart, 'lost 3 cover bolts because they rolled away', 'want 2 tubes grease']

  test('stands by groups, numbered as "buy" takes it', () => {
    const { enter, rows, line } = jobWith(...short)
    enter('to buy')
    expect(tidy(rows()).slice(0, 6)).toEqual([
      'WHAT IS TO BUY 2 lines',
      'LOST',
      '1 3 × cover bolts M6x25 hex 8',
      '',
      'WANTED BESIDES',
      '2 2 tubes grease',
    ])
    enter('1')
    expect(line()).toBe('buy 1 |')
  })

  test('what was ordered goes on after the last number, and leads to its page', () => {
    const { enter, rows, desk } = jobWith(...short)
    enter('to buy', '1', 'from the dealer at 0.40 EUR due 2030-01-20')
    expect(tidy(rows()).slice(0, 6)).toEqual([
      'WHAT IS TO BUY 1 line',
      'WANTED BESIDES',
      '1 2 tubes grease',
      '',
      'ORDERED',
      '2 o2, 3 × cover bolts M6x25 hex 8 ordered 15 Jan, due 20 Jan; step 1 waits',
    ])
    expect(tidy(rows())).toContain('In all 1.20 EUR.')
    enter('2')
    expect(desk.screen).toEqual({ at: 'order', order: 'o2' })
  })

  test('nothing', () => {
    const { enter, text } = jobWith(...apart)
    enter('to buy')
    expect(text()).toContain('Nothing is to be bought that is not ordered.')
  })
})

describe('a line that was ordered', () => {
  const ordered = [
    ...apart,
    'lost 3 cover bolts because they rolled away',
    'buy 1 from the dealer no 11-204 at 0.40 EUR due 2030-01-20',
  ]

  test('tells what is known, and offers what can come of it', () => {
    const { enter, rows } = jobWith(...ordered)
    enter('to buy', '1')
    expect(tidy(rows())).toEqual([
      'o1, 3 × cover bolts M6x25 hex 8 - ORDERED',
      'number 11-204, 0.40 EUR each, from the dealer',
      'ordered 15 Jan; due 20 Jan',
      '',
      'ARRIVED',
      '0 of 3 arrived, 3 still to come',
      '',
      'SAY WHAT CAME OF IT',
      '1 all 3 are here: onto the bench',
      '2 some are here, or they go elsewhere: say how many, and into what',
      '5 it is not wanted any more: say why',
    ])
  })

  test('all of it arrives by one number, and by that number again nothing more', () => {
    const { enter, rows, state, entries } = jobWith(...ordered)
    enter('to buy', '1', '1')
    expect(state().orders.get('o1')?.arrived).toBe(3)
    expect(rows()[0]).toContain('✓ ARRIVED')
    const before = entries()
    enter('1')
    expect(entries()).toBe(before)
  })

  test('a part of it arrives, and what is wrong goes back', () => {
    const { enter, rows, line, state } = jobWith(...ordered)
    enter('to buy', '1', '2')
    expect(line()).toBe('arrived o1 |')
    enter('2')
    expect(rows()[0]).toContain('# PARTLY HERE')
    expect(tidy(rows())).toContain('2 of 3 arrived, 1 still to come')
    enter('4')
    expect(line()).toBe('send back o1 because |')
    enter('they are too short')
    expect(state().orders.get('o1')?.returned).toBe(2)
    expect(rows()[0]).toContain('< SENT BACK')
  })

  test('late, it says so; Enter claims nothing', () => {
    const { home } = jobWith(...ordered)
    const { enter, rows, entries, desk } = screens(shelfLater(home, 8))
    enter('.6', '1')
    expect(rows()[0]).toContain('! OVERDUE')
    expect(rows().join('\n')).toContain('due 20 Jan, 3 days late')
    const before = entries()
    enter('')
    expect(entries()).toBe(before)
    expect(desk.screen).toEqual({ at: 'due' })
  })

  test('cancelled, nothing more is asked', () => {
    const { enter, rows } = jobWith(...ordered)
    enter('to buy', '1', '5', 'the old ones were found')
    expect(rows()[0]).toContain('X CANCELLED')
    expect(rows().join('\n')).not.toContain('SAY WHAT CAME OF IT')
  })
})
