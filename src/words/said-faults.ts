import type { Misreading } from '../lines/reading.ts'
import { say } from './cures.ts'
import { type Told, told } from './told.ts'

type Of<Code extends Misreading['code']> = Extract<Misreading, { code: Code }>

/** Why the words for a day, a duration or a price were not understood, and how they could have been written. */
export function saidFaultText(
  misreading: Of<'date'> | Of<'no-such-day'> | Of<'two-ways'> | Of<'duration'> | Of<'price'>,
): Told {
  switch (misreading.code) {
    case 'date': {
      const { fault, part, nearest } = misreading
      return told(`${quoted(part)} ${DATE_FAULTS[fault]}`, `perhaps ${say(nearest)}`)
    }
    case 'no-such-day': {
      const { part, month, year, lastDay } = misreading
      const named = `${MONTHS[month - 1]}${year === null ? '' : ` ${year}`}`
      return told(`${quoted(part)} is no day: ${named} has ${lastDay}`, 'look at the date again')
    }
    case 'two-ways': {
      const { part, ways } = misreading
      return told(`${quoted(part)} can be read in two ways`, `write ${say(ways[0])} or ${say(ways[1])}`)
    }
    case 'duration': {
      const { fault, part, nearest, form } = misreading
      const cure = nearest === null ? `write ${say(form)}` : `perhaps ${say(nearest)}`
      return told(`${quoted(part)} ${DURATION_FAULTS[fault]}`, cure)
    }
    case 'price': {
      const { fault, part, nearest } = misreading
      return told(`${quoted(part)} ${PRICE_FAULTS[fault]}`, `perhaps ${say(nearest)}`)
    }
    default:
      return misreading satisfies never
  }
}

const DATE_FAULTS: Record<Of<'date'>['fault'], string> = {
  empty: 'is no day',
  'not-a-date': 'is no day that is understood',
  day: 'is no day of a month',
  month: 'has no month',
  unit: 'is no number of days',
  next: 'is the one this week to some and the one after it to others',
  past: 'is gone by',
}

const DURATION_FAULTS: Record<Of<'duration'>['fault'], string> = {
  'no-number': 'says no number of minutes, hours or days',
  unit: 'is in no unit that is understood: min, h or days',
  twice: 'is said a second time',
  'not-positive': 'is no time at all',
  'too-long': 'is more than a year',
  words: 'is no time that is understood',
}

const PRICE_FAULTS: Record<Of<'price'>['fault'], string> = {
  empty: 'is no price',
  figures: 'is no price that is understood',
  currency: 'is no currency',
  'two-currencies': 'is a second currency',
  negative: 'is less than nothing',
  decimals: 'has more decimals than there are coins',
  'too-large': 'is more than a part costs',
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/** The user's own words: double quotes are for words to type. */
function quoted(part: string): string {
  return `'${part}'`
}
