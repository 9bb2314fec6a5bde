import { describe, expect, test } from 'vitest'
import { jobWith } from '../support/bench.ts'

const bags = [
  'begin cover off, does not hide',
  'off 8 M6x25 hex 10 cover bolts into new bag',
  'off 4 M6x25 T30 guard screws into new bag',
  'off cover into bench',
  'end',
]

describe('something that turned up', () => {
  test('each home has a number, says why, and what is typed', () => {
    const { enter, rows } = jobWith(...bags, 'lost 1 guard screws because it rolled away')
    enter('found M6x25')
    expect(rows().map((row) => row.trimEnd())).toEqual([
      "FOUND  2 homes may be that of 'M6x25', the likeliest first.",
      '  1  p2  guard screws M6x25 T30, belongs to cover, step 1: 1 lost and bag 2',
      '     should hold 3',
      '     Agrees in thread, pitch and length.',
      '     · If it is: "move 1 p2 from lost to bench".',
      '  2  p1  cover bolts M6x25 hex 10, belongs to cover, step 1: bag 1 should hold 8',
      '     Agrees in thread, pitch and length.',
      '     · Count bag 1: "count 1 = ...".',
    ])
  })

  test('choosing what is lost writes the line, and Enter records it', () => {
    const { enter, desk } = jobWith(...bags, 'lost 1 guard screws because it rolled away')
    enter('found M6x25')
    enter('1')
    expect(desk.typed().before).toBe('move 1 p2 from lost to bench')
    enter('')
    expect(desk.session?.state.ledger.accounts.get('p2')?.at.get('bench')).toBe(1)
  })

  test('choosing what should lie in a bag goes to the count, which keeps its number to itself', () => {
    const { enter, desk } = jobWith(...bags)
    enter('found M6x25 hex 10')
    enter('1')
    expect(desk.screen).toEqual({ at: 'count', container: 1, given: [] })
  })

  test('nothing in the record', () => {
    const { enter, text } = jobWith(...bags)
    enter('found M12x80')
    expect(text()).toContain("Nothing in the record may be 'M12x80'.")
  })
})
