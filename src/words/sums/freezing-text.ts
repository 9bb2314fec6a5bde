import type { WorkedOut } from '../../session/work-out.ts'
import type { FreezingPoint, Glycol } from '../../trade/coolant/freezing-point.ts'
import { figure, NOT_A_SPECIFICATION } from './figures.ts'

/** Engine makers' own tables differ from each other by degrees. */
export const MAKERS_TABLE = "Indicative: the table of the coolant's maker decides."

/** Percent under which a coolant is thinner than its standard means it to be. */
export const WEAK_UNDER = 40
export const WEAK = 'Coolants to ASTM D3306 are meant to be mixed from 40 to 60 %.'

const SOURCE = 'After the ASHRAE Handbook, Fundamentals; it holds from 10 to 60 % by volume.'

/** Where a mixture freezes. */
export function freezingText({
  glycol,
  percent,
  worked,
}: Extract<WorkedOut, { sum: 'freezing-point' }>): string[] {
  const first = freezesLine(glycol, percent, worked)
  return percent === 0 ? [first] : [first, SOURCE, MAKERS_TABLE, NOT_A_SPECIFICATION]
}

/** How strong a mixture must be for a frost. */
export function glycolText({ glycol, lowest, worked }: Extract<WorkedOut, { sum: 'glycol-for' }>): string[] {
  const name = `${glycol} glycol`
  switch (worked.code) {
    case 'strength': {
      const percent = Math.ceil(worked.percent - 1e-6)
      return [
        `${lowest.typed} takes at least ${percent} % of ${name} by volume.`,
        ...(percent < WEAK_UNDER ? [WEAK] : []),
        SOURCE,
        MAKERS_TABLE,
        NOT_A_SPECIFICATION,
      ]
    }
    case 'no-frost':
      return [`${lowest.typed} is no frost: water does not freeze there.`, WEAK]
    case 'warmer-than-range':
      return [
        `${lowest.typed} takes less than 10 % of ${name} (10 %: ${degrees(worked.celsius, ', ')}).`,
        WEAK,
        MAKERS_TABLE,
        NOT_A_SPECIFICATION,
      ]
    case 'colder-than-range':
      return [
        `${lowest.typed} is too cold for ${name}: 60 % takes ${degrees(worked.celsius, ', ')} at best.`,
        SOURCE,
        MAKERS_TABLE,
        NOT_A_SPECIFICATION,
      ]
    default:
      return worked satisfies never
  }
}

/** Where a mixture freezes, in one line. */
export function freezesLine(glycol: Glycol, percent: number, point: FreezingPoint): string {
  const mixture = `${figure(percent, 3)} % of ${glycol} glycol`
  switch (point.code) {
    case 'freezes':
      return percent === 0
        ? `Water freezes at ${degrees(0)}.`
        : `${mixture} freezes at about ${degrees(point.celsius)}.`
    case 'weaker-than-range':
      return `${mixture} freezes between ${degrees(0)} and ${degrees(point.noColderThan)}.`
    case 'stronger-than-range':
      return glycol === 'ethylene'
        ? `${mixture} freezes sooner than 60 % (${degrees(point.bestCelsius, ', ')}).`
        : `The table of propylene glycol ends at 60 % (${degrees(point.bestCelsius, ', ')}).`
    case 'too-strong':
      return `${figure(percent, 3)} % is too strong: 70 % is the most (ASTM D3306), 60 % protects best.`
    case 'percent':
      return `${figure(percent)} % is no strength: from 0 to 100 %.`
    default:
      return point satisfies never
  }
}

/** In both scales: `-37 °C (-35 °F)`. */
function degrees(celsius: number, between?: string): string {
  const [c, f] = [`${whole(celsius)} °C`, `${whole(celsius * 1.8 + 32)} °F`]
  return between === undefined ? `${c} (${f})` : c + between + f
}

/** Never a minus before nothing. */
function whole(number: number): number {
  return Math.round(number) + 0
}
