import { type DateReading, readDateSaid } from '../trade/calendar/date-said.ts'
import { type Duration, readDuration } from '../trade/calendar/duration-said.ts'
import { resolveDate } from '../trade/calendar/resolve-date.ts'
import { type Price, readPrice } from '../trade/price.ts'
import type { Line } from './line.ts'
import { misread } from './stopped.ts'

/** The day that words on a line name, as `2026-12-04`, seen from today. Stops the reading where they name none. */
export function readDay(line: Line, words: string): string {
  const read: DateReading = readDateSaid(words)
  if (!read.understood) {
    if (read.code === 'two-ways') twoWays(line, words, read.ways)
    misread({ code: 'date', fault: read.code, part: read.part, nearest: again(line, words, read.nearest) })
  }
  const day = resolveDate(read.value, line.state.clock.today)
  if (day.resolved) return day.date
  const { month, year, lastDay } = day
  return misread({ code: 'no-such-day', part: words.trim(), month, year, lastDay })
}

/** How long words on a line say that something takes. Stops the reading where they say none. */
export function readHowLong(line: Line, words: string): Duration {
  const read = readDuration(words)
  if (read.understood) return read.value
  if (read.code === 'two-ways') twoWays(line, words, read.ways)
  const nearest = read.nearest === null ? null : again(line, words, read.nearest)
  return misread({ code: 'duration', fault: read.code, part: read.part, nearest, form: line.form })
}

/** The price that words on a line say. Stops the reading where they say none. */
export function readPriced(line: Line, words: string): Price {
  const read = readPrice(words)
  if (read.understood) return read.value
  if (read.code === 'two-ways') twoWays(line, words, read.ways)
  return misread({
    code: 'price',
    fault: read.code,
    part: read.part,
    nearest: again(line, words, read.nearest),
  })
}

function twoWays(line: Line, words: string, [one, other]: readonly [string, string]): never {
  misread({
    code: 'two-ways',
    part: words.trim(),
    ways: [again(line, words, one), again(line, words, other)],
  })
}

/** The whole line once more, with other words in the place of some. */
function again({ whole, verb }: Line, words: string, instead: string): string {
  const from = whole.toLowerCase().lastIndexOf(words.trim().toLowerCase())
  if (words.trim() === '' || from < verb.length) return `${whole.trim()} ${instead}`
  return `${whole.slice(0, from)}${instead}${whole.slice(from + words.trim().length)}`
}
