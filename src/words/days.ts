import { counted } from './grammar.ts'

/** A day as a person writes it: `4 Dec`; with its year where that is not the one of today. Both as `2026-12-04`. */
export function dayText(day: string, today: string): string {
  const [year = '', month = '', date = ''] = day.split('-')
  const name = MONTHS[Number(month) - 1]
  if (name === undefined) return day
  return `${Number(date)} ${name}${today.startsWith(`${year}-`) ? '' : ` ${year}`}`
}

/** By how many days a day has gone by; 0 while it is still to come. */
export function daysLate(day: string, today: string): number {
  const days = (Date.parse(today) - Date.parse(day)) / 86_400_000
  return days > 0 ? Math.round(days) : 0
}

/** When something is due: `due 4 Dec`, `due 4 Dec, 3 days late`. */
export function dueText(day: string, today: string): string {
  const late = daysLate(day, today)
  return `due ${dayText(day, today)}${late === 0 ? '' : `, ${counted(late, 'day')} late`}`
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
