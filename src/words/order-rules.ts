import type { OrderRule, OrderSource } from '../trade/tightening-order/order.ts'

/** Where a rule of an order is from. */
export const ORDER_SOURCES = {
  'asme-pcc-1': 'the legacy cross pattern of ASME PCC-1',
  'after-asme-pcc-1': 'after the legacy cross pattern of ASME PCC-1',
  'common-practice': 'common practice',
} satisfies Record<OrderSource, string>

/** How a rule goes among so many fasteners. */
export function ruleWay(rule: OrderRule, count: number): string {
  switch (rule) {
    case 'spiral':
      return 'ring by ring from the middle outwards, each clockwise, the corners last'
    case 'crosswise':
      return 'ring by ring from the middle outwards, straight across, the corners last'
    case 'row':
      return 'from the middle outwards, one side and the other in turn'
    case 'star':
      return starWay(count)
    case 'clockwise':
      return 'one after the other, clockwise'
    case 'outwards':
      return 'from the middle outwards, always to the opposite side'
    default:
      return rule satisfies never
  }
}

function starWay(count: number): string {
  if (count % 2 === 0) return 'straight across, then the pairs between'
  return count < 9 ? 'one left out at each step' : 'as straight across as there is a place'
}
