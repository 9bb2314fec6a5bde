const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** An entry's time as one says it today, in local time: `17:42`, `3 Nov 17:42`, `3 Nov 2025`. */
export function whenText(at: string, now: Date): string {
  const time = new Date(at)
  const clock = `${two(time.getHours())}:${two(time.getMinutes())}`
  const day = `${time.getDate()} ${MONTHS[time.getMonth()]}`
  if (time.getFullYear() !== now.getFullYear()) return `${day} ${time.getFullYear()} ${clock}`
  return time.getMonth() === now.getMonth() && time.getDate() === now.getDate() ? clock : `${day} ${clock}`
}

function two(number: number): string {
  return String(number).padStart(2, '0')
}
