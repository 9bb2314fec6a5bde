import { type Drive, driveText } from './drive.ts'
import { readThread, type Thread, threadText } from './thread.ts'
import { classText, type FastenerClass, readFastenerClass } from './torque/fastener-class.ts'

/** What the size of a piece says of it. */
export interface Size {
  thread?: Thread | undefined
  fastenerClass?: FastenerClass | undefined
  drive?: Drive | undefined
  /** `copper washers` */
  washers?: string | undefined
}

/** The size of a piece as it is recorded: `M8x45 8.8 hex 13 with copper washers`. Empty where nothing is said. */
export function sizeText({ thread, fastenerClass, drive, washers }: Size): string {
  const words = [
    thread && threadText(thread),
    fastenerClass && classText(fastenerClass),
    drive && driveText(drive),
    washers && `with ${washers}`,
  ]
  return words.filter(Boolean).join(' ')
}

/** The thread that a recorded size begins with: `M6x25` of `M6x25 hex 8`, `1/4 NPT`; null for other sizes. */
export function threadInSize(size: string): Thread | null {
  return splitThread(size)?.thread ?? null
}

/** The class in a recorded size that begins with a thread: 8.8 of `M8x45 8.8 hex 13`; null where it says none. */
export function classInSize(size: string): FastenerClass | null {
  const rest = splitThread(size)?.rest ?? []
  for (const from of rest.keys()) {
    for (const used of [3, 2, 1]) {
      const words = rest.slice(from, from + used)
      const reading = readFastenerClass(words.join(' '))
      // `M12 5.8 mm pilot` is a measure.
      if (words.length === used && reading.understood && rest[from + used] !== 'mm') return reading.value
    }
  }
  return null
}

function splitThread(size: string): { thread: Thread; rest: string[] } | null {
  const words = size.trim().split(/\s+/)
  for (const used of [2, 1]) {
    const reading = readThread(words.slice(0, used).join(' '))
    if (reading.understood) return { thread: reading.value, rest: words.slice(used) }
  }
  return null
}
