import { type BagItem, readBagLine } from '../../../src/trade/bag-line/read-bag-line.ts'
import { driveText } from '../../../src/trade/drive.ts'
import { threadText } from '../../../src/trade/thread.ts'
import { classText } from '../../../src/trade/torque/fastener-class.ts'

/**
 * The items of a line in short, as a test can tell them: threads and drives as text, questions as their codes, and
 * without what is as for any piece: nothing missing, broken, matched, single-use or asked.
 */
export function said(line: string, units: 'metric' | 'us' = 'metric'): Record<string, unknown>[] {
  const reading = readBagLine(line, { units })
  if (!reading.understood) throw new Error(`not understood: ${line}: ${reading.code} [${reading.part}]`)
  return reading.items.map(inShort)
}

function inShort(item: BagItem): Record<string, unknown> {
  const short = Object.entries(item).flatMap(([key, value]) => {
    if (value === false || value === 0) return key === 'count' ? [[key, value]] : []
    if (key === 'thread' && 'thread' in item && item.thread) return [[key, threadText(item.thread)]]
    if (key === 'fastenerClass' && 'fastenerClass' in item && item.fastenerClass)
      return [['class', classText(item.fastenerClass)]]
    if (key === 'drive' && 'drive' in item && item.drive) return [[key, driveText(item.drive)]]
    if (key !== 'questions') return [[key, value]]
    const codes = 'questions' in item ? item.questions.map(({ code }) => code) : []
    return codes.length > 0 ? [['asks', codes.join(' ')]] : []
  })
  return Object.fromEntries(short)
}
