import { describe, expect, test } from 'vitest'
import { type Agrees, type SizeAgreement, sizeAgreement } from '../../src/trade/size-agreement.ts'
import { readSize } from '../../src/trade/size-text.ts'

const unknown: SizeAgreement = {
  thread: 'unknown',
  pitch: 'unknown',
  length: 'unknown',
  fastenerClass: 'unknown',
  drive: 'unknown',
}

/** Both ways round, because neither is the truer one. */
function compared(one: string, other: string): SizeAgreement {
  const agreement = sizeAgreement(readSize(one), readSize(other))
  expect(sizeAgreement(readSize(other), readSize(one))).toEqual(agreement)
  return agreement
}

test('all that both say is compared', () =>
  expect(compared('M8x45 8.8 hex 13', 'M8x45 8.8 hex 13')).toEqual({
    thread: 'yes',
    pitch: 'yes',
    length: 'yes',
    fastenerClass: 'yes',
    drive: 'yes',
  }))

test.each([
  ['', 'M8x45 8.8 hex 13'],
  ['', ''],
  ['2.45', 'M8x45'],
])('%j and %j: one of them says nothing', (one, other) => expect(compared(one, other)).toEqual(unknown))

describe('one part at a time', () => {
  test.each<[keyof SizeAgreement, string, string, Agrees]>([
    ['thread', 'M8x45', 'M8', 'yes'],
    ['thread', 'M8', 'M10', 'no'],
    // 7.94 mm and 8 mm: a hand takes one for the other, a gauge does not.
    ['thread', 'M8', '5/16-18', 'no'],
    ['thread', '1/4 NPT', '1/4-20', 'no'],
    ['thread', 'hex 13', 'M8x45', 'unknown'],
    // ISO 261: M8 coarse is 1.25 mm.
    ['pitch', 'M8x1.25x45', 'M8x45', 'yes'],
    ['pitch', 'M8x1x45', 'M8x45', 'unknown'],
    ['pitch', 'M8x1x45', 'M8x1.25x45', 'no'],
    // ASME B1.1: 3/8 coarse has 16 threads an inch, fine 24.
    ['pitch', '3/8-16x1', '3/8x1', 'yes'],
    ['pitch', '3/8-24x1', '3/8-16x1', 'no'],
    ['length', 'M6x25', 'M6x25', 'yes'],
    ['length', 'M6x25', 'M6x26', 'yes'],
    ['length', 'M6x25', 'M6x26.1', 'no'],
    ['length', 'M4x8', 'M4x8.5', 'yes'],
    ['length', 'M4x9', 'M4x10', 'no'],
    ['length', 'M6x25', 'M6', 'unknown'],
    ['length', '1/4-20x1', '1/4-20x1-1/4', 'no'],
    ['fastenerClass', 'M8x45 8.8', 'M8x45 10.9', 'no'],
    ['fastenerClass', 'M8x45 8.8', 'M8x45', 'unknown'],
    ['drive', 'M6 hex 10', '10 mm hex', 'yes'],
    ['drive', 'M6 hex 10', 'M6 JIS hex 10', 'yes'],
    ['drive', 'M6 hex 10', 'M6 hex key 10', 'no'],
    ['drive', 'M6 hex 10', 'M6 hex 8', 'no'],
    ['drive', 'hex 1/2', 'hex 13', 'no'],
    ['drive', 'T30', 'T30', 'yes'],
    ['drive', 'T30', 'E10', 'no'],
    ['drive', 'E10', 'E12', 'no'],
    ['drive', 'PH2', 'PZ2', 'no'],
    ['drive', 'PH2', 'PH2', 'yes'],
    ['drive', 'slot', 'slotted', 'yes'],
    ['drive', 'slot', 'PH2', 'no'],
    ['drive', 'hex 10', 'M6x25', 'unknown'],
  ])('%s: %j and %j: %s', (part, one, other, agrees) => expect(compared(one, other)[part]).toBe(agrees))

  test('a length alone, of a piece with no thread that anybody can read', () => {
    const inHand = { lengthMm: 25 }
    expect(sizeAgreement(inHand, readSize('M6x25'))).toEqual({ ...unknown, length: 'yes' })
    expect(sizeAgreement(inHand, readSize('M6x20'))).toEqual({ ...unknown, length: 'no' })
  })
})
