import { daysBetween } from '../../../trade/calendar/days-between.ts'
import { counted } from '../../../words/grammar.ts'
import { MONTHS } from '../when.ts'

/** A day as one says it today: `4 Dec`, and with its year where that is another: `4 Jan 2027`. */
export function dayText(date: string, today: string): string {
  const [year = '', month = '', day = ''] = date.split('-')
  const name = `${Number(day)} ${MONTHS[Number(month) - 1]}`
  return year === today.slice(0, 4) ? name : `${name} ${year}`
}

/** A day that something is due, and how far off it is: `due 4 Dec, in 3 days`, `due 28 Nov, 2 days late`. */
export function dueText(date: string, today: string): string {
  return `due ${dayText(date, today)}, ${awayText(daysBetween(today, date))}`
}

function awayText(days: number): string {
  if (days < 0) return `${counted(-days, 'day')} late`
  return days === 0 ? 'today' : `in ${counted(days, 'day')}`
}
