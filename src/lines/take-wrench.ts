import { type Amount, readAmountOf } from '../trade/convert/read-amount.ts'
import { readDecimal } from '../trade/number.ts'
import { hasOnlyFiguresOf } from './figures.ts'
import type { Line } from './line.ts'
import type { SettingSum } from './sum.ts'

/** Takes a torque wrench off a line: its range, and what stands between it and the fastener. */
export function takeWrench(line: Line): Pick<SettingSum, 'adapter' | 'range'> {
  const range = takeRange(line)
  const [angle] = line.take(/(?:^| )at (\S+?) ?(?:deg(?:rees?)?|°)?(?= |$)/i) ?? []
  const [handle] = line.take(new RegExp(`(?:^| )(?:handle|lever) (.+?)${NEXT}`, 'i')) ?? []
  const [length] = line.take(new RegExp(`(?:^| )(?:adapter|extension|crow-?foot) (.+?)${NEXT}`, 'i')) ?? []
  if (handle === undefined && length === undefined) {
    if (angle !== undefined) line.missing('handle LENGTH adapter LENGTH')
    return range
  }
  if (handle === undefined) line.missing('handle LENGTH')
  if (length === undefined) line.missing('adapter LENGTH')
  const angleDegrees = angle === undefined ? 0 : readDecimal(angle)
  if (angleDegrees === undefined || Math.abs(angleDegrees) > 360)
    line.notUnderstood(angle ?? '', lineAgain(line, `at ${angle}`, 'at 90'))
  const adapter = {
    handle: takeAmount(line, 'length', handle, 'handle '),
    length: takeAmount(line, 'length', length, 'adapter '),
    angleDegrees,
  }
  return { adapter, ...range }
}

// Where the words behind one of these end.
const NEXT = '(?= (?:handle|lever|adapter|extension|crow-?foot|at|range) |$)'

/** `range 20..100 Nm`, `range 20 Nm to 100 Nm`. */
function takeRange(line: Line): Pick<SettingSum, 'range'> {
  const [typed] = line.take(new RegExp(`(?:^| )range(?: (.+?))?${NEXT}`, 'i')) ?? []
  if (typed === undefined) return {}
  if (typed === '') line.missing('LEAST..MOST')
  const [, first = '', second = ''] = /^(.+?) ?(?:\.{2,3}|…|-|–| to ) ?(\d.*)$/i.exec(typed) ?? []
  if (second === '') line.notUnderstood(typed)
  const most = takeAmount(line, 'torque', second)
  const least = takeAmount(line, 'torque', /[^\d.,]$/.test(first) ? first : `${first} ${unitOf(second)}`)
  if (least.base < most.base) return { range: { least, most } }
  return line.notUnderstood(typed, lineAgain(line, typed, `${most.typed}..${least.typed}`))
}

function unitOf(text: string): string {
  return text.replace(/^[\d.,]+ ?/, '')
}

/**
 * An amount of a kind, or the line is not understood.
 * @param before the word before it, so that the same number elsewhere in the line stays as it is
 */
export function takeAmount(line: Line, kind: 'torque' | 'length', typed: string, before = ''): Amount {
  const units = { units: line.state.job.units }
  const reading = readAmountOf(kind, typed, units)
  if (reading.understood) return reading.value
  const words = typed.split(' ')
  // `40 Nm handel 400 mm`: what is behind an amount is what is not understood.
  const used = words.findLastIndex(
    (_, i) => readAmountOf(kind, words.slice(0, i + 1).join(' '), units).understood,
  )
  if (used >= 0) line.notUnderstood(words.slice(used + 1).join(' '))
  return line.notAnAmount(reading, lineOfTheirs(line, before + typed, before + reading.nearest))
}

/** The line once more, with something that would be understood in the place of what is not. */
export function lineAgain(line: Line, part: string, nearest: string): string {
  return line.whole.replace(part, () => nearest)
}

/** The same for what is the user's alone to say; null where it needs a figure that was not typed. */
export function lineOfTheirs(line: Line, part: string, nearest: string): string | null {
  return hasOnlyFiguresOf(nearest, part) ? lineAgain(line, part, nearest) : null
}
