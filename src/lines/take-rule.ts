import { ORDER_RULES, type OrderRule } from '../trade/tightening-order/order.ts'
import type { Line } from './line.ts'
import { nearestWord } from './nearest.ts'

/** Takes the rule of an order off the end of a line: `by spiral`. */
export function takeRule(line: Line): OrderRule | undefined {
  const [typed] = line.take(/,? by (?:the (?:rule )?)?"?([a-z]+)"?$/i) ?? []
  if (typed === undefined) return undefined
  const word = typed.toLowerCase()
  const rule = ORDER_RULES.find((each) => each === word)
  if (rule) return rule
  const begun = ORDER_RULES.find((each) => word.length > 2 && each.startsWith(word))
  const nearest = begun ?? nearestWord(word, ORDER_RULES)
  return line.notUnderstood(typed, nearest && line.whole.replace(new RegExp(`${typed}"?$`, 'i'), nearest))
}
