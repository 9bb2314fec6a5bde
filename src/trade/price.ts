import { currencyNamed, isSignOf, isWrittenInFront, minorDigits } from './currency.ts'
import { type MoneyFault, readMoney } from './money-figures.ts'
import { tidy } from './number.ts'
import { type NotUnderstood, notUnderstood, type Reading, understood } from './reading.ts'
import { type TwoWays, twoWays } from './two-ways.ts'

/** A price, exact to the last cent. */
export interface Price {
  /** In the smallest unit of the currency, whole: 320 for 3.20. */
  minor: number
  /** Digits behind the point: 2, but for some currencies. */
  digits: number
  /** A code in capitals, `EUR`, or a sign as typed, `$`; null where none was said. */
  currency: string | null
  /** Whether it is said to be for each piece or for all of them; null where neither is. */
  of: 'each' | 'all' | null
}

/** Why a price was not understood: nothing there, a figure that is none, a word that is no currency, two currencies. */
export type PriceFault = MoneyFault | 'empty' | 'currency' | 'two-currencies'

export type PriceReading = Reading<Price, PriceFault> | TwoWays

const ofWords: readonly ['each' | 'all', RegExp][] = [
  ['each', /,? ?(?:\b(?:each|ea\.?|apiece|a piece|per piece|per pc|pc)|\/ ?(?:piece|pc|ea))$/i],
  ['all', /,? ?\b(?:in all|for all|all together|altogether|together|total|in total)$/i],
]

/**
 * Reads `3.20`, `3,20 EUR`, `$4.50`, `EUR 4.50`, `4.50 USD each`, `1,234.50 $ in all`. A figure such as `1.250`, in which the
 * sign may stand before decimals or thousands, has two readings.
 */
export function readPrice(text: string): PriceReading {
  const typed = text.trim()
  if (typed === '') return notUnderstood('empty', '', '3.20')
  const { rest, of } = takeOf(tidy(text))
  const parts = /^(\p{L}+\. |[^\d.,'+-]*)([-+]?[\d.,' ]*\d(?:[.,]-)?)(\D*)$/u.exec(rest)
  if (!parts) return notUnderstood('figures', typed, '3.20')
  const [, front = '', figures = '', back = ''] = parts
  const words = [front.trim(), back.trim()].filter((word) => word !== '')
  const stranger = words.find((word) => currencyNamed(word) === null)
  if (stranger !== undefined) return notACurrency(stranger, figures, of)
  const named = words.map((word) => currencyNamed(word))
  const [first = null, second = first] = named
  // `$4.50 USD` says which dollars.
  const currency = first !== null && second !== null && isSignOf(first, second) ? second : first
  const form = whole(currency, of)
  const digits = minorDigits(currency)
  if (currency !== second) {
    return notUnderstood('two-currencies', words[1] ?? '', form(figuresLike(figures, digits)))
  }
  const money = readMoney(figures, digits)
  return money.understood ? understood({ minor: money.value, digits, currency, of }) : withForm(money, form)
}

/** A price as text, which is read as the same price: `3.20`, `$4.50 each`, `4.50 USD`. */
export function priceText({ minor, digits, currency, of }: Price): string {
  const figures = String(minor).padStart(digits + 1, '0')
  const point = figures.length - digits
  const amount = digits === 0 ? figures : `${figures.slice(0, point)}.${figures.slice(point)}`
  return whole(currency, of)(amount)
}

function takeOf(form: string): { rest: string; of: Price['of'] } {
  for (const [of, words] of ofWords) {
    if (words.test(form)) return { rest: form.replace(words, '').trim(), of }
  }
  return { rest: form, of: null }
}

/** Puts the currency and the words around figures. */
function whole(currency: string | null, of: Price['of']): (figures: string) => string {
  return (figures) => {
    const priced =
      currency === null ? figures : isWrittenInFront(currency) ? currency + figures : `${figures} ${currency}`
    return of === null ? priced : `${priced} ${of === 'each' ? 'each' : 'in all'}`
  }
}

function notACurrency(word: string, figures: string, of: Price['of']): PriceReading {
  const isCents = /^(?:c|ct|cts|cents?|p|pence)\.?$/i.test(word) && /^\d{1,4}$/.test(figures)
  const cents = priceText({ minor: Number(figures), digits: 2, currency: null, of })
  return notUnderstood('currency', word, isCents ? cents : whole(null, of)(figuresLike(figures, 2)))
}

/** The figures as typed where they are understood, else those that are nearest. */
function figuresLike(figures: string, digits: number): string {
  const money = readMoney(figures, digits)
  return money.understood ? figures.trim() : money.nearest
}

function withForm<Fault extends PriceFault>(
  reading: NotUnderstood<Fault> | TwoWays,
  form: (figures: string) => string,
): NotUnderstood<Fault> | TwoWays {
  if ('ways' in reading) return twoWays(reading.part, form(reading.ways[0]), form(reading.ways[1]))
  return { ...reading, nearest: form(reading.nearest) }
}
