import { describe, expect, test } from 'vitest'
import { hereOf, isLate, openOf, orderStanding } from '../../../src/plan/buying/order-lines.ts'
import type { OrderFacts } from '../../../src/plan/waiting/waiting-facts.ts'

const order = (more: Partial<OrderFacts> = {}): OrderFacts => ({
  id: 'o1',
  name: 'head bolts',
  count: 8,
  ordered: true,
  since: '2026-11-20',
  arrived: 0,
  wrong: 0,
  returned: 0,
  cancelled: null,
  ...more,
})

describe('how a line stands', () => {
  const today = '2026-12-04'
  test.each<[string, Partial<OrderFacts>, number, number]>([
    ['wanted', { ordered: false }, 8, 0],
    ['ordered', {}, 8, 0],
    ['ordered', { due: '2026-12-04' }, 8, 0],
    ['late', { due: '2026-12-03' }, 8, 0],
    ['late', { due: '2026-12-03', arrived: 5 }, 3, 5],
    ['partly', { arrived: 5 }, 3, 5],
    ['arrived', { arrived: 8, due: '2026-12-03' }, 0, 8],
    ['arrived', { arrived: 10 }, 0, 10],
    ['wrong', { arrived: 8, wrong: 2 }, 2, 8],
    ['returned', { arrived: 8, returned: 2 }, 2, 6],
    ['late', { arrived: 8, returned: 2, due: '2026-12-03' }, 2, 6],
    ['arrived', { arrived: 10, returned: 2 }, 0, 8],
    ['cancelled', { cancelled: 'enough are here', arrived: 3, due: '2026-12-03' }, 0, 3],
  ])('%s: %j', (standing, more, open, here) => {
    const line = order(more)
    expect(orderStanding(line, today)).toBe(standing)
    expect(openOf(line)).toBe(open)
    expect(hereOf(line)).toBe(here)
    expect(isLate(line, today)).toBe(standing === 'late')
  })

  test('what is wrong is said before it is late', () => {
    const line = order({ arrived: 8, wrong: 2, due: '2026-12-03' })
    expect(orderStanding(line, today)).toBe('wrong')
    expect(isLate(line, today)).toBe(true)
  })

  test('litres are taken away as decimals', () => {
    expect(openOf(order({ count: 2.1, arrived: 2 }))).toBe(0.1)
    expect(hereOf(order({ count: 4, arrived: 0.3, returned: 0.1 }))).toBe(0.2)
  })
})
