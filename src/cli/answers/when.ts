/** An entry's time in local time: `2026-05-02 14:03`. */
export function whenText(at: string): string {
  const time = new Date(at)
  const two = (number: number) => String(number).padStart(2, '0')
  const day = `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`
  return `${day} ${two(time.getHours())}:${two(time.getMinutes())}`
}
