import { readDecimal, tidy } from '../number.ts'
import { readTorque } from '../quantity.ts'
import { printedPair } from './printed-pair.ts'

const number = '\\d{1,9}(?:[.,]\\d{1,9})?'
const bareNumber = new RegExp(`^${number}$`)
const percentage = new RegExp(
  `^((?:final )?(?:re)?check(?: at|:)? ?)?(${number}) ?(?:%|percent)(?: of (.+?))?(?:,? ((?:clockwise|all round|round and round|round)))?$`,
  'i',
)

/**
 * Parts of a text as passes that stand alone: a number without a unit takes that of the next torque behind it, a
 * percentage the torque that the next one behind it is of, or else the last one before it. What takes nothing stays.
 */
export function spelledOut(parts: readonly string[]): string[] {
  const texts = parts.flatMap(listed)
  const withUnits = texts.map((text, index) => {
    if (!bareNumber.test(text)) return text
    const next = texts.slice(index + 1).find((other) => !bareNumber.test(other))
    const unit = next === undefined ? null : unitOf(next)
    return unit === null ? text : `${text} ${unit}`
  })
  return withUnits.map((text, index) => {
    const { check = '', percent, of: own, way } = percentOf(text) ?? {}
    if (percent === undefined) return text
    const torqueOf = (other: string) => percentOf(other)?.of
    const of = own ?? withUnits.slice(index).find(torqueOf) ?? withUnits.slice(0, index).findLast(torqueOf)
    const torque = own ?? (of && torqueOf(of))
    if (torque === undefined) return text
    return `${check}${percent} % of ${torque}${way ? ` ${way}` : ''}`
  })
}

/** The first percentage that is less than the one before it, of the same torque. */
export function fallingPercentage(texts: readonly string[]): string | null {
  for (const [index, text] of texts.entries()) {
    const before = percentOf(texts[index - 1] ?? '')
    const now = percentOf(text)
    if (!before || !now || before.of !== now.of) continue
    if ((readDecimal(now.percent) ?? 0) < (readDecimal(before.percent) ?? 0)) return text
  }
  return null
}

/** `30/70/100 % of 60 Nm` and `20/40/60 Nm` as numbers, the last with what stands behind them. */
function listed(part: string): string[] {
  const [, strokes, behind = ''] =
    new RegExp(`^(${number}(?: ?/ ?${number})+)( ?[^\\d/ ].*)?$`).exec(tidy(part)) ?? []
  const numbers = strokes?.split(/ ?\/ ?/) ?? []
  const isPercent = /^ ?(?:%|percent)/i.test(behind)
  // Half a kilogram-metre was printed as a fraction, half a newton metre never was.
  const isTorque = unitOf(`1${behind}`) !== null && !/^ ?k/i.test(behind)
  if (numbers.length < (isPercent || isTorque ? 2 : 3)) return [part]
  return numbers.map((each, index) => (index === numbers.length - 1 ? `${each}${behind}` : each))
}

/** The unit of torque with which a text ends, or the sign of a percentage. */
function unitOf(text: string): string | null {
  if (percentOf(text)) return '%'
  const [, unit = ''] =
    /\d\s*([^\d\s.,%°][^\d]*?)(?:,? (?:clockwise|all round|round))?$/i.exec(printedPair(text).amount) ?? []
  return readTorque(`1 ${unit}`).understood ? unit : null
}

function percentOf(text: string) {
  const match = percentage.exec(text)
  if (!match) return null
  const [, check, percent = '', of, way] = match
  return { check, percent, of, way }
}
