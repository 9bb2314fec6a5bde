/** Whole minutes as a person says them: `18 min`, `1 h 5 min`, `3 days`, `2 days 4 h`. */
export function durationWords(minutes: number): string {
  const days = minutes < 2880 ? 0 : Math.floor(minutes / 1440)
  const hours = Math.floor((minutes - days * 1440) / 60)
  const rest = minutes % 60
  const parts = [
    days > 0 ? `${days} days` : '',
    hours > 0 ? `${hours} h` : '',
    rest > 0 || minutes === 0 ? `${rest} min` : '',
  ]
  return parts.filter(Boolean).join(' ')
}
