import { ORDER_RULES, type OrderRule } from '../trade/tightening-order/order.ts'
import type { Line } from './line.ts'
import { nearestWord } from './nearest.ts'

/** Takes the rule of an order off the end of a line: `by spiral`. */
export function takeRule(line: Line): OrderRule | undefined {
  const [typed] = line.take(/,? by (?:the (?:rule )?)?"?([a-z]+)"?$/i) ?? []
  if (typed === undefined) return undefined
  const rule = ORDER_RULES.find((each) => each === typed.toLowerCase())
  return rule ?? line.notUnderstood(typed, `by ${nearestWord(typed, ORDER_RULES) ?? ORDER_RULES[0]}`)
}
