import { readAmountOf } from './read-amount.ts'
import { type Unit, unitsOf } from './units.ts'

/** The unit of the first torque in a text, as `lbf·ft` in `50 % of 30 ft-lb` or in `range 10..150 lbf·ft`; null where there is none. */
export function torqueUnitIn(text: string): Unit | null {
  for (const [, behind = ''] of text.matchAll(BEHIND_A_NUMBER)) {
    const words = behind.trim().split(/\s+/)
    // `30 lb ft` as well as `30 lb-ft and on`: the longer name first.
    for (const count of [2, 1]) {
      const amount = readAmountOf('torque', `1 ${words.slice(0, count).join(' ')}`, { units: 'metric' })
      if (amount.understood) return unitsOf.torque.find(({ name }) => name === amount.value.unit.name) ?? null
    }
  }
  return null
}

const BEHIND_A_NUMBER = /\d(?= ?([^\d\s.,;()%][^\d,;()%]*))/g
