import { describe, expect, test } from 'vitest'
import { readCondition, splitCondition } from '../../src/trade/thread-condition.ts'

describe('how threads are', () => {
  test.each([
    ['dry', 'dry'],
    ['Clean and dry', 'dry'],
    ['dry threads', 'dry'],
    ['oiled', 'oiled'],
    ['threads oiled', 'oiled'],
    ['oil the threads', 'oiled'],
    ['with engine oil', 'oiled'],
    ['lightly oiled', 'oiled'],
    ['lubricated', 'lubricated'],
    ['greased', 'greased'],
    ['moly grease', 'moly grease'],
    ['MoS2 paste', 'moly grease'],
    ['anti-seize', 'anti-seize'],
    ['copper paste', 'anti-seize'],
    ['thread locker', 'thread locker'],
    ['with threadlocker', 'thread locker'],
    ['thread-locking compound', 'thread locker'],
    ['thread sealant', 'sealant'],
    ['sealant', 'sealant'],
  ])('%s', (typed, condition) => {
    expect(readCondition(typed)).toEqual({ understood: true, value: condition })
  })

  test.each([
    ['', 'empty', 'dry'],
    ['rusty', 'form', 'oiled'],
    ['oiled and dry', 'form', 'oiled'],
    ['20 Nm', 'form', 'oiled'],
  ])('%j: %s', (typed, code, nearest) => {
    expect(readCondition(typed)).toEqual({ understood: false, code, part: typed, nearest })
  })
})

describe('the condition in a line of passes', () => {
  test.each([
    ['20 Nm, 40 Nm, 90 deg, oiled', '20 Nm, 40 Nm, 90 deg', 'oiled'],
    ['20 Nm dry', '20 Nm', 'dry'],
    ['20 Nm clean and dry', '20 Nm', 'dry'],
    ['20 Nm, oiled, check 20 Nm', '20 Nm, check 20 Nm', 'oiled'],
    ['oiled: 20 Nm, 90 deg', '20 Nm, 90 deg', 'oiled'],
    ['oiled, 2,2 kgf·m', '2,2 kgf·m', 'oiled'],
    ['30/70/100 % of 60 Nm with thread locker', '30/70/100 % of 60 Nm', 'thread locker'],
    ['dry', '', 'dry'],
  ])('%s', (typed, passes, condition) => {
    expect(splitCondition(typed)).toEqual({ passes, condition })
  })

  test.each(['20 Nm, hand tight', '2,2 kgf·m', '', 'back off fully'])('%j has none', (typed) => {
    expect(splitCondition(typed)).toEqual({ passes: typed })
  })

  test('a second one stays, for it is not understood as a pass', () => {
    expect(splitCondition('20 Nm, oiled, dry')).toEqual({ passes: '20 Nm, dry', condition: 'oiled' })
  })
})
