import { describe, expect, test } from 'vitest'
import { jobWith } from '../../support/bench.ts'

const compared = [
  'begin pump off, does not hide',
  'off water pump into bench',
  'end',
  'new water pump instead',
]

const tidy = (rows: string[]) => rows.map((row) => row.replace(/ +/g, ' ').trim())

describe('a new piece beside the old one', () => {
  test('stands with its features numbered, and says where both lie', () => {
    const { enter, rows, desk } = jobWith(...compared)
    enter('.6', '1')
    expect(desk.screen).toEqual({ at: 'compare', piece: 'p2' })
    const shown = tidy(rows())
    expect(shown.slice(0, 2)).toEqual([
      'COMPARE water pump ! NOT COMPARED',
      'New: p2, on the bench. Old: p1, on the bench. Lay them side by side.',
    ])
    expect(shown).toContain('A NUMBER SAYS: HELD SIDE BY SIDE, AND ALIKE')
    expect(shown.some((row) => /^1 \w/.test(row))).toBe(true)
  })

  test('a number says that one feature is alike, and keeps its place', () => {
    const { enter, rows, state } = jobWith(...compared)
    enter('.6', '1', '2')
    const [said] = state().comparisons.get('p2')?.features ?? []
    expect(said?.how).toBe('alike')
    expect(tidy(rows())).toContain(`2 ${said?.feature} alike`)
    expect(state().comparisons.get('p2')?.verdict).toBe('due')
  })

  test('all that was not named is alike: it is right, and the old one goes to scrap', () => {
    const { enter, rows, state, desk } = jobWith(...compared)
    enter('.6', '1')
    enter(numberOf(rows(), 'all the rest is alike'))
    expect(state().comparisons.get('p2')?.verdict).toBe('right')
    expect(state().ledger.accounts.get('p1')?.at.get('scrap')).toBe(1)
    expect(desk.page().large?.letters).toBe('GOOD')
    expect(rows().join('\n')).toContain('It is the right one.')
    expect(desk.page().choice(1)).toBeUndefined()
  })

  test('once every feature is said, only a number ends it', () => {
    const { enter, rows, state, desk } = jobWith(...compared)
    enter('.6', '1')
    const features = rows()
      .filter((row) => /^ {1,2}\d+ /.test(row))
      .findIndex((row) => row.includes('all the rest'))
    for (let no = 1; no <= features; no += 1) enter(String(no))
    expect(rows().join('\n')).toContain('EVERY FEATURE IS SAID: A NUMBER ENDS IT')
    enter('')
    expect(desk.screen.at).toBe('compare')
    enter(numberOf(rows(), 'it is right, and the old one goes to scrap'))
    expect(state().comparisons.get('p2')?.verdict).toBe('right')
  })

  test('or it is right, and the old one is kept', () => {
    const { enter, rows, state } = jobWith(...compared)
    enter('.6', '1')
    enter(numberOf(rows(), 'the same, and the old one is kept'))
    expect(state().comparisons.get('p2')?.verdict).toBe('right')
    expect(state().ledger.accounts.get('p1')?.at.get('bench')).toBe(1)
  })

  test('what is wrong is chosen and said in words: it is the wrong one', () => {
    const { enter, rows, state, line, desk } = jobWith(...compared)
    enter('.6', '1')
    enter(numberOf(rows(), 'something is wrong'))
    expect(rows().join('\n')).toContain('WHAT IS WRONG?')
    enter('1')
    expect(line()).toMatch(/^compare p2: .+ wrong \|$/)
    enter('2 mm too short')
    expect(state().comparisons.get('p2')?.verdict).toBe('wrong')
    expect(desk.page().large?.letters).toBe('WRONG ONE')
  })

  test('none of them: Enter goes back to what is alike, and claims nothing', () => {
    const { enter, rows, entries, desk } = jobWith(...compared)
    enter('.6', '1')
    const before = entries()
    enter(numberOf(rows(), 'something differs'), '')
    expect(desk.screen).toEqual({ at: 'compare', piece: 'p2' })
    expect(entries()).toBe(before)
  })

  test('a piece that has no old one', () => {
    const { enter, text } = jobWith(...compared)
    enter('compare p2: alike', 'compare water pump')
    expect(text()).toContain('COMPARE water pump')
  })
})

/** The number that stands before some words. */
function numberOf(rows: readonly string[], words: string): string {
  const row = rows.find((each) => each.includes(words))
  return /^ *(\d+)/.exec(row ?? '')?.[1] ?? `no row says ${words}`
}
