import { notUnderstood, type Reading, understood } from './reading.ts'
import { type TwoWays, twoWays } from './two-ways.ts'

/** Why the figures of a price were not understood: none, less than nothing, more decimals than there are coins, too much. */
export type MoneyFault = 'figures' | 'negative' | 'decimals' | 'too-large'

// So that the price of 9999 pieces is a whole number that is kept exactly, in any currency.
const mostWholeDigits = 8

/**
 * Reads the figures of a price in whole smallest units: `3.20` is 320 where the currency has two digits. Point and comma are
 * both understood; three digits behind the only sign may be thousands or decimals, which are two readings.
 */
export function readMoney(text: string, digits: number): Reading<number, MoneyFault> | TwoWays {
  const typed = text.trim()
  if (typed.startsWith('-')) {
    const rest = readMoney(typed.replace(/^-+ ?/, ''), digits)
    return notUnderstood('negative', typed, rest.understood ? typed.replace(/^-+ ?/, '') : rest.nearest)
  }
  // `5,-` and `5.-`, as price tags have it.
  const plain = typed.replace(/^\+ ?/, '').replace(/[.,]-$/, '')
  const split = splitFigures(plain)
  if (split === null) return notUnderstood('figures', typed, '3.20')
  const { whole, decimals } = split
  if (whole.length > mostWholeDigits) return notUnderstood('too-large', typed, '9'.repeat(mostWholeDigits))
  const rounded = inDecimals(whole, decimals, digits)
  if (rounded === null) return notUnderstood('too-large', typed, '9'.repeat(mostWholeDigits))
  // Three digits are the decimals of a currency that has three, and no decimals where there are none.
  if (digits !== 3 && /^[1-9]\d{0,2}[.,]\d{3}$/.test(plain)) {
    const asThousands = whole + decimals
    return digits === 0 ? understood(Number(asThousands)) : twoWays(typed, asThousands, rounded)
  }
  if (decimals.length > digits) return notUnderstood('decimals', typed, rounded)
  return understood(Number(whole + decimals.padEnd(digits, '0')))
}

/** The digits before and behind the decimal sign, without the signs between thousands. */
function splitFigures(plain: string): { whole: string; decimals: string } | null {
  if (/^\d*(?:[.,]\d{1,9})?$/.test(plain)) {
    const [whole = '', decimals = ''] = plain.split(/[.,]/)
    return { whole: trimmed(whole), decimals }
  }
  const [, grouped, , decimals = ''] =
    /^(\d{1,3}(?:([.,' ])\d{3})(?:\2\d{3})*)(?:(?!\2)[.,](\d{1,9}))?$/.exec(plain) ?? []
  return grouped === undefined ? null : { whole: trimmed(grouped.replace(/[.,' ]/g, '')), decimals }
}

function trimmed(whole: string): string {
  return whole.replace(/^0+(?=\d)/, '') || '0'
}

/** The figures with as many decimals as there may be, rounded half up; null where that is one digit too many. */
function inDecimals(whole: string, decimals: string, digits: number): string | null {
  const kept = BigInt(whole + decimals.slice(0, digits).padEnd(digits, '0'))
  const rounded = String(kept + (Number(decimals.charAt(digits)) >= 5 ? 1n : 0n)).padStart(digits + 1, '0')
  const point = rounded.length - digits
  if (point > mostWholeDigits) return null
  return digits === 0 ? rounded : `${rounded.slice(0, point)}.${rounded.slice(point)}`
}
