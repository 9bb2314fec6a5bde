import { describe, expect, test } from 'vitest'
import { jobWith } from '../../support/bench.ts'

const out = [
  'begin head off, does not hide',
  'off cylinder head into bench',
  'end',
  'on cylinder head: 3 studs M6x25',
  'out cylinder head to the machine shop for skimming due 2030-01-20 expect flat within 0.05',
]

const tidy = (rows: string[]) => rows.map((row) => row.replace(/ +/g, ' ').trim())

describe('what went out', () => {
  test('tells who has it and what sits on it', () => {
    const { enter, rows, desk } = jobWith(...out)
    enter('.6', '1')
    expect(desk.screen).toEqual({ at: 'outing', outing: 'b1' })
    expect(tidy(rows())).toEqual([
      'b1 - OUT 1 × cylinder head',
      'At the machine shop for skimming, since 15 Jan.',
      'Due 20 Jan.',
      'Expected: flat within 0.05.',
      '',
      'STILL AWAY',
      '1 × cylinder head',
      '',
      'SITS ON IT',
      '3 × studs M6x25, on cylinder head',
      '',
      'SAY WHAT CAME OF IT',
      '1 it is back: onto the bench',
      '2 it is back, and goes elsewhere: say into what',
      '3 looked: nothing was taken out of it there',
      '4 something was taken out there: say what, and whether it is back',
    ])
  })

  test('back, it asks what was taken out there, and the numbers stay', () => {
    const { enter, rows, state, line } = jobWith(...out)
    enter('.6', '1', '1')
    expect(state().ledger.accounts.get('p1')?.at.get('bench')).toBe(1)
    expect(rows()[0]).toContain('? SAY WHAT')
    expect(tidy(rows())[1]).toBe('Back from the machine shop for skimming, out 15 Jan.')
    expect(tidy(rows()).slice(-3)).toEqual([
      'SAY WHAT CAME OF IT',
      '3 looked: nothing was taken out of it there',
      '4 something was taken out there: say what, and whether it is back',
    ])
    enter('4')
    expect(line()).toBe('took out b1: |')
    enter('2 gallery plugs back')
    expect(rows()[0]).toContain('✓ BACK')
    expect(tidy(rows())).toContain('TAKEN OUT THERE')
  })

  test('a set that went out stands there as one, and the sign is not cut off', () => {
    const { enter, rows } = jobWith(
      'begin head off, does not hide',
      'off cam caps I1..I8 into bench',
      'off cylinder head into bench',
      'end',
      'out cam caps, cylinder head to the machine shop',
    )
    enter('.6')
    const row = tidy(rows()).join(' ')
    expect(row).toContain('b1, 8 × cam caps I1, I2, I3, I4, I5, I6, I7, I8 and 1 × cylinder head')
    enter('1')
    expect(tidy(rows())[0]).toMatch(/^b1 - OUT 8 × cam caps I1/)
  })

  test('nothing was taken out: a number says so, and Enter does not', () => {
    const { enter, rows, state, entries, desk } = jobWith(...out)
    enter('.6', '1', '1')
    const before = entries()
    enter('')
    expect(entries()).toBe(before)
    expect(desk.screen).toEqual({ at: 'due' })
    enter('1', '3')
    expect(state().outings.get('b1')?.tookOut?.text).toBe('nothing')
    expect(rows()[0]).toContain('✓ BACK')
  })

  test('a step that waits for it leads there', () => {
    const { enter, desk } = jobWith(...out)
    enter('step 1', '1')
    expect(desk.screen).toEqual({ at: 'outing', outing: 'b1' })
    enter('came back b1', 'step 1', '1')
    expect(desk.screen).toEqual({ at: 'outing', outing: 'b1' })
  })
})
