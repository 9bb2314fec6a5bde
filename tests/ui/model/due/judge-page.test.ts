import { describe, expect, test } from 'vitest'
import { jobWith } from '../../support/bench.ts'

const apart = [
  'begin head off, does not hide',
  'off cylinder head into bench',
  'off cam caps I1..I3 into new bag',
  'end',
]

const tidy = (rows: string[]) => rows.map((row) => row.replace(/ +/g, ' ').trim())

describe('a piece that is checked', () => {
  const asked = [...apart, 'check cylinder head: look for cracks; look for score; measure flatness']

  test('each check by its number, then the verdicts, and how it stands in large letters', () => {
    const { enter, rows, desk } = jobWith(...asked)
    enter('.6', '1')
    expect(tidy(rows())).toEqual([
      'cylinder head ! NOT CHECKED',
      'Home: head. Now on the bench.',
      '',
      'A NUMBER SAYS: LOOKED AT, AND GOOD',
      '1 look for cracks k1',
      '2 look for score k2',
      '3 measure flatness k3, to be measured',
      '',
      'OR JUDGE IT',
      '4 it goes back as it is: say why',
      '5 clean it, and look again: say what',
      '6 it needs machining: say what',
      '7 a new one is needed: say why',
    ])
    expect(desk.page().large?.letters).toBe('NOT CHECKED')
  })

  test('a check keeps its number when it is good: the same number again claims no other', () => {
    const { enter, state, answer, rows, entries } = jobWith(...asked)
    enter('.6', '1', '1')
    expect(state().checks.get('k1')?.done).not.toBeNull()
    const before = entries()
    enter('1')
    expect(entries()).toBe(before)
    expect(answer()).toContain('k1 was found good already.')
    expect(state().checks.get('k2')?.done).toBeNull()
    expect(tidy(rows())).toContain('1 ✓ GOOD look for cracks k1 good')
  })

  test('Enter alone claims nothing', () => {
    const { enter, entries, desk } = jobWith(...asked)
    enter('.6', '1')
    const before = entries()
    enter('')
    expect(entries()).toBe(before)
    expect(desk.screen).toEqual({ at: 'due' })
  })

  test('what is to be measured is measured first, and its reading stands under the check', () => {
    const { enter, line, rows, state, answer } = jobWith(...asked)
    enter('.6', '1', '3')
    expect(line()).toBe('measure flatness of p1: |')
    enter('0.02 0.03 0.02 by 0.01 feeler, max 0.10 manual p. 4-12')
    expect(rows().join('\n')).toMatch(/measure flatness {2}k3\n {5}· flatness of p1: 0.03 mm, in/)
    enter('3')
    expect(answer()).toContain('RECORDED')
    expect(state().checks.get('k3')?.done).not.toBeNull()
  })

  test('a verdict waits for its reason, and condemned it is not good', () => {
    const { enter, line, rows, desk } = jobWith(...asked)
    enter('.6', '1', '7')
    expect(line()).toBe('judge p1 replace because |')
    enter('cracked between the valves')
    expect(rows()[0]).toContain('X NOT GOOD')
    expect(desk.page().large?.letters).toBe('NOT GOOD')
    expect(rows().join('\n')).toContain('To be replaced. Cracked between the valves.')
    expect(rows().join('\n')).toContain('"new p1" when the new one is here.')
  })

  test('of what is to be replaced nothing is asked any more, and the verdicts keep their numbers', () => {
    const { enter, rows, answer, entries } = jobWith(...asked)
    enter('.6', '1', '7', 'it is cracked')
    expect(tidy(rows())).toContain('WAS ASKED')
    expect(tidy(rows())).toContain('7 a new one is needed: say why')
    const before = entries()
    enter('1')
    expect(answer()).toContain('Nothing has the number 1 here.')
    expect(entries()).toBe(before)
  })

  test('names what belongs together with it', () => {
    const { enter, rows } = jobWith(
      ...asked,
      'together cylinder head, cam caps because they are bored as one',
    )
    enter('.6', '1')
    expect(tidy(rows()).slice(-2)).toEqual(['BELONGS TOGETHER WITH', 'cam caps I1, I2, I3'])
  })
})

describe('a set that is checked', () => {
  const asked = [...apart, 'check cam caps: look for score']

  test('each of its pieces by a number, and all of them by one more', () => {
    const { enter, rows, state, desk } = jobWith(...asked)
    enter('.6', '1')
    expect(tidy(rows())).toEqual([
      'TO BE CHECKED cam cap I1 and its set',
      '1 ! NOT CHECKED cam cap I1 look for score',
      '2 ! NOT CHECKED cam cap I2 look for score',
      '3 ! NOT CHECKED cam cap I3 look for score',
      '',
      '4 all of them were looked at, and are good',
    ])
    enter('2')
    expect(desk.screen).toEqual({ at: 'judge', piece: 'p3' })
    enter('1')
    enter('.6', '1', '4')
    expect([...state().checks.values()].every(({ done }) => done !== null)).toBe(true)
    expect(tidy(rows()).slice(1)).toEqual([
      '1 ✓ GOOD cam cap I1',
      '2 ✓ GOOD cam cap I2',
      '3 ✓ GOOD cam cap I3',
    ])
  })
})

describe('a step that waits for a check', () => {
  test('leads by the number of the reason to the piece', () => {
    const { enter, text, desk } = jobWith(...apart, 'check cylinder head: look for cracks')
    enter('step 1')
    expect(text()).toContain('WHY NOT YET')
    enter('1')
    expect(desk.screen).toEqual({ at: 'judge', piece: 'p1' })
  })
})
