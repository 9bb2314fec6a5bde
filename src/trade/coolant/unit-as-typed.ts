import { readDecimal, readFraction, tidy } from '../number.ts'
import type { Volume } from '../quantity.ts'

/** A unit in which a volume was typed, so that an answer can be given in it. */
export interface UnitAsTyped {
  /** `L`, `US qt`, `ml`. */
  name: string
  /** Litres of one. */
  litres: number
}

/** The unit of a volume that `readVolume` understood. A bare quart was understood as the US one. */
export function unitAsTyped({ litres, typed }: Volume): UnitAsTyped {
  const [, number = '', unit = ''] = /^([\d.,]+(?:[ -]\d+\/\d+|\/\d+)?) ?(.*)$/.exec(tidy(typed)) ?? []
  const count = readDecimal(number) ?? readFraction(number)
  if (count === undefined || count <= 0 || /^(?:l|lt?rs?|lit(?:re|er)s?)\.?$/i.test(unit))
    return { name: 'L', litres: 1 }
  const isBare = /^(?:gal|gallon|qt|quart|pt|pint|fl\.? ?oz|fluid ounce)s?\.?$/i.test(unit)
  return { name: isBare ? `US ${unit}` : unit, litres: litres / count }
}
