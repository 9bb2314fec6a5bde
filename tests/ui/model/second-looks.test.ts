import { describe, expect, test } from 'vitest'
import { jobWith } from '../support/bench.ts'

const gear = [
  'begin gear off, does not hide',
  'off gear into bench',
  'off 2 M6x25 gear bolts into new bag',
  'end',
  'step 1 critical after 45 min',
]

describe('a critical step', () => {
  test('says from the beginning what comes after it', () => {
    const { enter, text } = jobWith(...gear)
    enter('.3')
    expect(text()).toContain(
      'critical: once done, each line is seen again, by somebody else or 45 min\n       later',
    )
    enter('1')
    expect(text()).toContain('SEEN A SECOND TIME')
  })

  test('done, each line that nobody has seen again has a number, which begins the words', () => {
    const { enter, desk, text } = jobWith(...gear, 'fit gear', 'fit gear bolts', 'done 1')
    enter('step 1')
    expect(text()).toContain('critical: 2 of 2 still to be seen again; by the same person in 45 min')
    enter('1')
    expect(desk.typed().before).toBe('seen p1: ')
  })
})
