import { readDecimal, tidy } from '../number.ts'
import { fault, type Outcome } from './outcome.ts'

// A week of days and nights; more is a slip.
const mostMinutes = 10_000

/** Reads how long a step took: `took 25 min`, `took 1 h 20`, `took 1:20`. Undefined for any other text. */
export function readMinutes(text: string): Outcome | undefined {
  const form = tidy(text).toLowerCase()
  const match = /^took:? ?(?=[-+\d.,]|$)(.{0,40})$/.exec(form)
  if (!match) return undefined
  const duration = match[1] ?? ''
  const minutes = readDuration(duration)
  if (minutes !== undefined && minutes > 0 && minutes <= mostMinutes)
    return { items: [{ kind: 'minutes', minutes }] }
  const number = /\d{1,4}/.exec(duration)?.[0] ?? '25'
  const hasOtherWords = /[a-z]{3}/.test(duration.replace(/\b(?:min(?:ute)?s?|hours?|hrs?)\b/g, ''))
  const nearest = hasOtherWords ? [text.replace(/^took:? ?/i, '')] : []
  return fault('minutes', text, ...nearest, `took ${number} min`)
}

function readDuration(text: string): number | undefined {
  const clock = /^(\d{1,3}):([0-5]\d)(?: ?h)?$/.exec(text)
  if (clock) return 60 * Number(clock[1]) + Number(clock[2])
  const match =
    /^(?:([\d.,]{1,8}) ?(?:h|hr|hrs|hour|hours))? ?(?:([\d.,]{1,8}) ?(m|min|mins|minute|minutes)?)?$/.exec(
      text,
    )
  if (!match) return undefined
  const [, hoursText, minutesText, unit] = match
  if (hoursText === undefined && (minutesText === undefined || unit === undefined)) return undefined
  const hours = hoursText === undefined ? 0 : readDecimal(hoursText)
  const minutes = minutesText === undefined ? 0 : readDecimal(minutesText)
  return hours === undefined || minutes === undefined
    ? undefined
    : Math.round((60 * hours + minutes) * 100) / 100
}
