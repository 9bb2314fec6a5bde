import type { WorkedOut } from '../../session/work-out.ts'
import type { FreezingPoint, Glycol } from '../../trade/coolant/freezing-point.ts'
import { figure } from './figures.ts'

/** Engine makers' own tables differ from each other by degrees. */
export const MAKERS_TABLE = "Indicative: the table of the coolant's maker decides."

const SOURCE = 'After the ASHRAE Handbook, Fundamentals; it holds from 10 to 60 % by volume.'

/** Where a mixture freezes. */
export function freezingText({
  glycol,
  percent,
  worked,
}: Extract<WorkedOut, { sum: 'freezing-point' }>): string[] {
  return [freezesLine(glycol, percent, worked), SOURCE, MAKERS_TABLE]
}

/** How strong a mixture must be for a frost. */
export function glycolText({ glycol, lowest, worked }: Extract<WorkedOut, { sum: 'glycol-for' }>): string[] {
  const name = `${glycol} glycol`
  switch (worked.code) {
    case 'strength': {
      const whole = Math.ceil(worked.percent - 1e-6)
      return [
        `${lowest.typed} takes at least ${whole} % of ${name} by volume.`,
        ...(whole < FROM_PERCENT ? [WEAK] : []),
        SOURCE,
        MAKERS_TABLE,
      ]
    }
    case 'no-frost':
      return [`${lowest.typed} is no frost: water does not freeze there.`, WEAK]
    case 'warmer-than-range':
      return [
        `${lowest.typed} takes less than 10 % of ${name}, which freezes at about ${degrees(worked.celsius)}.`,
        WEAK,
        MAKERS_TABLE,
      ]
    case 'colder-than-range':
      return [
        `${lowest.typed} is too cold for ${name}: 60 % of it, the best, freezes at about ${degrees(worked.celsius)}.`,
        SOURCE,
        MAKERS_TABLE,
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
        ? `${mixture} protects less than 60 %: more of it freezes sooner again (60 %: ${degrees(point.bestCelsius)}).`
        : `${mixture} is past the table, which ends at 60 % with ${degrees(point.bestCelsius)}.`
    case 'too-strong':
      return `${mixture} is no coolant: 70 % is the most, and 60 % protects best.`
    case 'percent':
      return `${figure(percent)} % is no strength: from 0 to 100 %.`
    default:
      return point satisfies never
  }
}

const FROM_PERCENT = 40
const WEAK = 'Coolants to ASTM D3306 are meant for 40 to 60 %: weaker, they protect less against corrosion.'

function degrees(celsius: number): string {
  return `${Math.round(celsius) + 0} °C (${Math.round(celsius * 1.8 + 32) + 0} °F)`
}
