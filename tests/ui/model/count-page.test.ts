import { describe, expect, test } from 'vitest'
import { labelCode } from '../../../src/label/code.ts'
import { jobWith } from '../support/bench.ts'

const strip = [
  'begin cover off',
  'off 8 M6x25 hex 10 cover bolts into new bag',
  'off 3 dowels into bag 1',
  'end',
  'bag',
]

describe('a blind count', () => {
  test('asks for each piece, and shows no expected number before the end', () => {
    const { enter, text, desk } = jobWith(...strip)
    enter('scan 1', '2')
    expect(desk.screen).toMatchObject({ at: 'count', container: 1, given: [] })
    expect(text()).toContain('1 OF 3: HOW MANY\n     cover bolts M6x25 hex 10')
    expect(text()).not.toMatch(/\b8\b/)
    enter('7')
    expect(text()).toContain('2 OF 3: HOW MANY\n     dowels')
    expect(text()).not.toMatch(/\b8\b/)
  })

  test('that agrees says so', () => {
    const { enter, text, state } = jobWith(...strip)
    enter('scan 1', '2', '8', '3', '0')
    expect(text()).toContain('✓ AGREES')
    expect(state().differences.size).toBe(0)
  })

  test.each([
    ['too few', '7', '1 short'],
    ['too many', '9', '1 too many'],
  ])('%s shows the arithmetic and the ways to explain it', (_, number, told) => {
    const { enter, text } = jobWith(...strip)
    enter('scan 1', '2', number, '3', '0')
    expect(text()).toContain('X DOES NOT AGREE')
    expect(text()).toContain(`8 in the record, ${number} counted: ${told}`)
    expect(text()).toContain('3 in the record, 3 counted: agrees')
  })

  test('a number and a reason explain it', () => {
    const { enter, line, state, text } = jobWith(...strip)
    enter('scan 1', '2', '7', '3', '0', '1')
    expect(line()).toBe('explain d1 missing because |')
    enter('looked under the bench')
    expect(state().ledger.accounts.get('p1')?.at.get('lost')).toBe(1)
    expect(text()).toContain('✓ EXPLAINED')
  })

  test('pieces that nobody asked for are counted too', () => {
    const { enter, state, text } = jobWith(...strip)
    enter('scan 1', '2', '8', '3', '1')
    expect(text()).toContain('0 in the record, 1 counted: 1 too many')
    expect(state().differences.get('d1')).toMatchObject({ piece: null, counted: 1 })
  })

  test('an empty bag is asked about as well', () => {
    const { enter, text } = jobWith(...strip)
    enter('count 2 = 0')
    expect(text()).toContain('✓ AGREES')
  })

  test.each([
    ['Esc', '\x1b'],
    ['a scan', `${labelCode(1, 2)}\r`],
    ['another screen', '.2\r'],
  ])('broken off by %s starts at nothing, and records nothing', (_, key) => {
    const { enter, type, desk, entries } = jobWith(...strip)
    const before = entries()
    enter('scan 1', '2', '8')
    type(key)
    expect(desk.screen.at).not.toBe('count')
    expect(entries()).toBe(before)
    for (let presses = 0; presses < 3 && desk.screen.at !== 'count'; presses += 1) type('\x7f')
    if (desk.screen.at !== 'count') enter('scan 1', '2')
    expect(desk.screen).toMatchObject({ at: 'count', given: [] })
  })

  test('Backspace takes the last number back, and before the first breaks it off', () => {
    const { enter, type, desk, entries } = jobWith(...strip)
    const before = entries()
    enter('scan 1', '2', '8')
    type('\x7f')
    expect(desk.screen).toMatchObject({ at: 'count', given: [] })
    enter('7')
    expect(desk.screen).toMatchObject({ at: 'count', given: [7] })
    type('\x7f\x7f')
    expect(desk.screen.at).toBe('scan')
    expect(entries()).toBe(before)
  })

  test.each(['', 'eight', '7.5', '8 bolts'])('%j is no count, and records nothing', (typed) => {
    const { enter, desk, entries } = jobWith(...strip)
    const before = entries()
    enter('scan 1', '2', typed)
    expect(desk.screen).toMatchObject({ at: 'count', given: [] })
    expect(entries()).toBe(before)
  })
})
