import { readDecimal, tidy } from '../number.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import type { Glycol } from './freezing-point.ts'

/** Why a strength was not understood: nothing there; no percent; more than 100 of them. */
export type StrengthFault = 'empty' | 'percent' | 'out-of-range'

/** What goes in, and how strong it is: percent of antifreeze by volume. */
export interface Refill {
  kind: 'concentrate' | 'premix' | 'water' | 'mixture'
  percent: number
}

const usualPremix = 50

/** Reads a strength in percent by volume: `50 %`, `33,3`, `50/50`. */
export function readStrength(text: string): Reading<number, StrengthFault> {
  const typed = text.trim()
  if (typed === '') return notUnderstood('empty', '', '50 %')
  const form = tidy(text).toLowerCase()
  if (/^50 ?[/:] ?50$/.test(form)) return understood(50)
  const number = readDecimal(
    /^([+-]?[\d.,]{1,12}) ?(?:%|percent|per cent|pct|vol-?%)?(?: (?:of )?(?:glycol|anti-?freeze))?$/.exec(
      form,
    )?.[1] ?? '',
  )
  if (number === undefined) return notUnderstood('percent', typed, '50 %')
  if (number < 0 || number > 100) return notUnderstood('out-of-range', typed, '50 %')
  return understood(number)
}

/**
 * Reads what goes in: `concentrate`, `water`, `premix`, `60 % premix`, `60 %`. A premix whose strength is not said has
 * 50 %, common practice.
 */
export function readRefill(text: string): Reading<Refill, StrengthFault> {
  const form = tidy(text).toLowerCase()
  if (
    /^(?:(?:concentrated?|neat|pure|undiluted|full.strength)(?: (?:anti-?freeze|glycol|coolant|concentrate))?|anti-?freeze)$/.test(
      form,
    )
  )
    return understood({ kind: 'concentrate', percent: 100 })
  if (/^(?:(?:plain|clean|distilled|de-?ionised|de-?ionized|soft|demineralised) )?water$/.test(form))
    return understood({ kind: 'water', percent: 0 })
  const [, number = '', word] =
    /^(.*?) ?(pre-?mix(?:ed)?(?: coolant)?|ready.mix(?:ed)?|mix(?:ture)?|concentrate)?$/.exec(form) ?? []
  const kind = word === undefined || word.startsWith('mix') ? 'mixture' : 'premix'
  if (number === '' && kind === 'premix') return understood({ kind, percent: usualPremix })
  const percent = readStrength(number)
  if (percent.understood) {
    return understood({ kind: word === 'concentrate' ? 'concentrate' : kind, percent: percent.value })
  }
  return notUnderstood(percent.code, text.trim(), percent.code === 'out-of-range' ? '50 %' : 'concentrate')
}

/** Takes the name of a glycol out of a text: what is left, and which. Ethylene glycol is what most coolants are made of. */
export function takeGlycol(text: string): { rest: string; glycol: Glycol } {
  const pattern = /(?:^|\s)\(?(?:(propylene|pg|mpg)|ethylene|eg|meg)(?:[ -]?glycol)?\)?(?=\s|,|$)/i
  const match = pattern.exec(text)
  const rest = match === null ? text : text.replace(pattern, ' ')
  return {
    rest: rest.replace(/\s+/g, ' ').trim(),
    glycol: match?.[1] === undefined ? 'ethylene' : 'propylene',
  }
}
