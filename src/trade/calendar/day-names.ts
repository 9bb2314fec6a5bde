const months = [
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

const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']

/** The month, 1 to 12, that a word names: `December`, `dec`, `Sept.`; null for any other word. */
export function monthNamed(word: string): number | null {
  return named(word, months)
}

/** The day of the week, 1 for Monday to 7, that a word names: `Friday`, `fri`, `Thurs.`; null for any other word. */
export function weekdayNamed(word: string): number | null {
  return named(word, weekdays)
}

/** The short name of a month, 1 to 12: `Dec`. */
export function monthName(month: number): string {
  return (months[month - 1] ?? '').slice(0, 3)
}

/** The weekday or the month that a misspelled word begins like, in full; null where there is none. */
export function dayNameLike(word: string): string | null {
  const start = word.slice(0, 3).toLowerCase()
  if (start.length < 3) return null
  return [...weekdays, ...months].find((name) => name.toLowerCase().startsWith(start)) ?? null
}

/** Three letters tell all of them apart. */
function named(word: string, names: readonly string[]): number | null {
  const start = word.replace(/\.$/, '').toLowerCase()
  if (start.length < 3) return null
  const index = names.findIndex((name) => name.toLowerCase().startsWith(start))
  return index < 0 ? null : index + 1
}
