import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inRows, onCircle } from '../../../src/trade/position-layout/position-layout.ts'
import { compareOrders, loosening } from '../../../src/trade/tightening-order/compare-orders.ts'
import { inOrder, ORDER_RULES } from '../../../src/trade/tightening-order/order.ts'

const head = inRows(names(10), 5)
const flange = onCircle(names(8))

describe('the order of a manual beside that of a rule', () => {
  test.each([
    ['3 8 2 9 4 7 1 10 5 6', 'the same', 'same'],
    ['6 5 10 1 7 4 9 2 8 3', 'the same backwards', 'reversed'],
    // From right to left, from below, and turned by half a turn.
    ['3 8 4 7 2 9 5 6 1 10', 'from the other end', 'mirrored'],
    ['8 3 7 4 9 2 6 5 10 1', 'from below', 'mirrored'],
    ['8 3 9 2 7 4 10 1 6 5', 'turned by half a turn', 'mirrored'],
  ])('ten head bolts crosswise and %s: %s', (manual, _, code) => {
    expect(compareOrders(head, manual.split(' '), 'crosswise')).toEqual({ code })
  })

  test.each([
    ['3 8 2 9 4 7 1 10 6 5', 9, '6', '5', null],
    ['3 8 7 2 4 9 6 1 5 10', 3, '7', '2', 'spiral'],
    ['1 2 3 4 5 6 7 8 9 10', 1, '1', '3', null],
    ['1 2 3 4 5 10 9 8 7 6', 1, '1', '3', 'clockwise'],
    ['3 8 2 9', 5, null, '4', null],
    ['3 8 2 9 4 7 1 10 5 6 11', 11, '11', null, null],
  ])('ten head bolts crosswise and %s: from place %i', (manual, at, own, ruled, isBy) => {
    expect(compareOrders(head, manual.split(' '), 'crosswise')).toEqual({
      code: 'different',
      at,
      manual: own,
      ruled,
      isBy,
    })
  })

  // ASME PCC-1, legacy cross pattern, begun at bolt 3, and counted the other way round.
  test.each([
    ['1-5-3-7-2-6-4-8', 'same'],
    ['3-7-5-1-4-8-6-2', 'mirrored'],
    ['1-5-7-3-8-4-6-2', 'mirrored'],
    ['8-4-6-2-7-3-5-1', 'reversed'],
    ['1-2-3-4-5-6-7-8', 'different'],
  ])('eight bolts of a flange: %s is %s', (manual, code) => {
    expect(compareOrders(flange, manual.split('-'), 'star')).toMatchObject({ code })
  })

  test('a rule that does not fit the shape compares with nothing', () => {
    expect(compareOrders(head, names(10), 'star')).toBeNull()
  })

  test('a rule is the same as itself, and its reverse reversed or seen from elsewhere', () => {
    const layouts = fc.oneof(
      fc.integer({ min: 3, max: 40 }).map((count) => onCircle(names(count))),
      fc
        .tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 6 }))
        .map(([r, c]) => inRows(names(r * c), c)),
    )
    fc.assert(
      fc.property(layouts, fc.constantFrom(...ORDER_RULES), (layout, rule) => {
        const order = inOrder(layout, rule)
        if (!order) return
        expect(compareOrders(layout, order, rule)).toEqual({ code: 'same' })
        expect(compareOrders(layout, loosening(order), rule)?.code).toBe('reversed')
      }),
    )
  })
})

// Service manuals: loosened in the reverse order of tightening.
test('loosening is the exact reverse, and twice reversed the order again', () => {
  expect(loosening(['3', '8', '2'])).toEqual(['2', '8', '3'])
  fc.assert(
    fc.property(fc.array(fc.string()), (order) => {
      expect(loosening(loosening(order))).toEqual(order)
    }),
  )
})

function names(count: number): string[] {
  return Array.from({ length: count }, (_, index) => `${index + 1}`)
}
