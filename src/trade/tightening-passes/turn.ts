import { readDecimal, readFraction } from '../number.ts'

const turnWords = new Map(
  Object.entries({ quarter: 1 / 4, half: 1 / 2, third: 1 / 3, sixth: 1 / 6, eighth: 1 / 8, full: 1, one: 1 }),
)

// Geometry of the drives: a hexagon has six flats, a bi-hexagon twelve points.
const degreesOf: Record<string, number> = { turn: 360, flat: 60, point: 30, deg: 1, degree: 1, '°': 1 }

/** Degrees of a turn, less than nothing too; undefined where the text, which is tidied, speaks of none. */
export function readTurn(text: string): number | undefined {
  const form = text.toLowerCase()
  const plain = form
    .replace(/^\+ ?/, '')
    .replace(/\b(?:an?|marked|of|another|further|plus)\b/g, ' ')
    .replace(/ +/g, ' ')
    .trim()
  const match = /^(-?[\d.,/ -]{1,12}|[a-z]+)? ?(°|deg|degree|turn|flat|point)s?$/.exec(plain)
  if (!match) return undefined
  const [, numberText, unit = ''] = match
  const degrees = degreesOf[unit] ?? 0
  // `a turn` is one; `deg` alone is nothing.
  const number = numberText === undefined ? oneOf(form, unit) : numberOf(numberText.trim())
  return number === undefined ? undefined : Math.round(number * degrees * 1e6) / 1e6
}

/** An angle in quarter turns, which are easily marked, and what is left of it in degrees. */
export function quarterMarks(degrees: number): { quarters: number; rest: number } {
  const quarters = Math.floor(degrees / 90)
  return { quarters, rest: Math.round((degrees - quarters * 90) * 1e6) / 1e6 }
}

function numberOf(text: string): number | undefined {
  return turnWords.get(text) ?? readDecimal(text) ?? readFraction(text)
}

function oneOf(form: string, unit: string): number | undefined {
  return unit !== 'deg' && unit !== 'degree' && unit !== '°' && /\ban?\b/.test(form) ? 1 : undefined
}
