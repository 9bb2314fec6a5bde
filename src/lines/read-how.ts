import type { HowPrinted, PrintForm, PrintTarget } from './errand.ts'
import type { Line } from './line.ts'

/** The clauses that say how something is printed, taken away from the end of a line, in any order. */
export function takeHow(line: Line): HowPrinted {
  const how: HowPrinted = {}
  takeClauses(line, how)
  const to = line.take(/(?:^| )to (-|(?:tcp|device) .+|\S*[./\\].*)$/i)?.[0]
  if (to !== undefined) how.to = targetOf(to, line)
  takeClauses(line, how)
  const form = how.form ?? formOf(how.to)
  return form === undefined ? how : { ...how, form }
}

function takeClauses(line: Line, how: HowPrinted): void {
  for (let taken = true; taken; ) taken = CLAUSES.some((clause) => clause(line, how))
}

const CLAUSES: readonly ((line: Line, how: HowPrinted) => boolean)[] = [
  (line, how) => {
    const [name] = line.take(/(?:^| )on ([a-z0-9][a-z0-9.-]{0,39})$/i) ?? []
    if (name === undefined) return false
    how.stock = name.toLowerCase()
    return true
  },
  (line, how) => {
    const [from] = line.take(/(?:^| )from (?:label )?(\d{1,3})$/i) ?? []
    if (from === undefined) return false
    how.from = Number(from)
    return true
  },
  (line, how) => {
    const [before, after] = line.take(/(?:^| )(?:(\d{1,2}) copies|copies (\d{1,2}))$/i) ?? []
    if (before === undefined) return false
    how.copies = Number(before || after)
    return true
  },
  (line, how) => {
    const [form] = line.take(/(?:^| )as (pdf|svg|png|label-roll|receipt-roll)$/i) ?? []
    if (form === undefined) return false
    how.form = form.toLowerCase() as PrintForm
    return true
  },
  (line, how) => {
    const [dpi] = line.take(/(?:^| )at (203|300)(?: ?dpi)?$/i) ?? []
    if (dpi === undefined) return false
    how.dpi = Number(dpi) as 203 | 300
    return true
  },
  (line, how) => {
    const [x, y] =
      line.take(
        /(?:^| )shift ([+-]?\d{1,2}(?:[.,]\d{1,2})?)[ ;/]+([+-]?\d{1,2}(?:[.,]\d{1,2})?)(?: ?mm)?$/i,
      ) ?? []
    if (x === undefined || y === undefined) return false
    how.shift = { x: millimetres(x), y: millimetres(y) }
    return true
  },
]

function millimetres(text: string): number {
  return Number(text.replace(',', '.'))
}

/** `-`, `tcp HOST`, `tcp HOST:PORT`, `device PATH`, or a file. */
function targetOf(text: string, line: Line): PrintTarget {
  if (text === '-') return { target: 'stdout' }
  const device = /^device (\S.*)$/i.exec(text)?.[1]
  if (device !== undefined) return { target: 'device', path: device }
  if (!/^tcp\b/i.test(text)) return { target: 'file', path: text }
  const [, bracketed, plain, port] =
    /^tcp (?:\[([0-9a-f:.]+)\]|([a-z0-9.-]+))(?::(\d{1,5}))?$/i.exec(text) ?? []
  const host = bracketed ?? plain
  if (host === undefined || Number(port ?? 1) < 1 || Number(port ?? 1) > 65_535) {
    line.notUnderstood(text, 'to tcp 192.168.1.20:9100')
  }
  // The port on which printers take raw data: common practice.
  return { target: 'tcp', host, port: Number(port ?? 9100) }
}

function formOf(target: PrintTarget | undefined): PrintForm | undefined {
  if (target?.target !== 'file') return undefined
  return /\.(pdf|svg|png)$/i.exec(target.path)?.[1]?.toLowerCase() as PrintForm | undefined
}
