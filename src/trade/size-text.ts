import { type Drive, driveText, readDrive } from './drive.ts'
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

/** The drive in a recorded size: hex 13 of `M8x45 8.8 hex 13`, T30 of `T30`; null where it says none. */
export function driveInSize(size: string): Drive | null {
  const all = splitThread(size)?.rest ?? size.trim().split(/\s+/)
  const washers = all.indexOf('with')
  const rest = washers < 0 ? all : all.slice(0, washers)
  // The name of a drive stands before its size as it is recorded, else `8.8 hex 13` would be a hex 8.8.
  const drives = [...rest.keys()].flatMap((from) => drivesFrom(rest, from))
  return (drives.find(({ isNamedFirst }) => isNamedFirst) ?? drives[0])?.drive ?? null
}

/** What a recorded size says of a piece, as far as it is understood. */
export function readSize(size: string): Size {
  return {
    thread: threadInSize(size) ?? undefined,
    fastenerClass: classInSize(size) ?? undefined,
    drive: driveInSize(size) ?? undefined,
  }
}

function drivesFrom(words: readonly string[], from: number): { drive: Drive; isNamedFirst: boolean }[] {
  for (const used of [4, 3, 2, 1]) {
    const typed = words.slice(from, from + used)
    const reading = readDrive(typed.join(' '))
    if (typed.length !== used || !reading.understood) continue
    return [
      { drive: reading.value, isNamedFirst: !/^\d/.test(typed[0] ?? '') || /^12-?p/i.test(typed[0] ?? '') },
    ]
  }
  return []
}

function splitThread(size: string): { thread: Thread; rest: string[] } | null {
  const words = size.trim().split(/\s+/)
  for (const used of [2, 1]) {
    const reading = readThread(words.slice(0, used).join(' '))
    if (reading.understood) return { thread: reading.value, rest: words.slice(used) }
  }
  return null
}
