import type { Drive } from './drive.ts'
import { type DriveSeries, driveSeries } from './drive-series.ts'
import { inchesToMillimetres, readFraction } from './number.ts'
import type { Thread } from './thread.ts'

/** A thread size that carries a drive in a common series. */
export interface UsualThread {
  /** `M6`, `3/8`, `#10`. */
  size: string
  series: string
  /** The series in a few words. */
  inShort: string
  fromMemory: boolean
}

/** A drive that a thread size carries in a common series. */
export interface UsualDrive {
  drive: Drive
  series: string
  /** The series in a few words. */
  inShort: string
  fromMemory: boolean
}

/** What to ask about a drive; it is never refused, for any head may be made for any thread. */
export interface DriveQuestion {
  /**
   * `drive-unusual`: no common series has this drive on this thread. `unit-mix`: a metric thread with a wrench in inches,
   * or an inch thread with one in millimetres.
   */
  code: 'drive-unusual' | 'unit-mix'
  thread: Thread
  drive: Drive
  /** What the series do have on this thread; may be empty where units are mixed. */
  usual: UsualDrive[]
  /** The threads on which the series have this drive; may be empty. */
  elsewhere: UsualThread[]
}

export interface DriveFit {
  /** The series that have this drive on this thread. */
  series: string[]
  /** Absent where the drive fits, and where no series here says anything about such a drive on such a thread. */
  question?: DriveQuestion
}

/** All thread sizes on which a drive is found in a common series: a set, for a wrench never names one thread. */
export function usualThreads(drive: Drive): UsualThread[] {
  return seriesFor(drive).flatMap((series) =>
    Object.keys(series.sizes)
      .filter((size) => isSameDrive(drive, series, series.sizes[size]))
      .map((size) => ({ size, ...named(series) })),
  )
}

/** The common series in which a drive belongs to a thread, and the question to ask where it belongs to none. */
export function driveFits(thread: Thread, drive: Drive): DriveFit {
  if (thread.system === 'npt') return { series: [] }
  const fitting = seriesFor(drive).filter((series) => isSameDrive(drive, series, series.sizes[thread.size]))
  if (fitting.length > 0) return { series: fitting.map(({ name }) => name) }
  const usual = usualDrives(thread, drive)
  const elsewhere = usualThreads(drive)
  if (isOtherUnit(thread, drive))
    return { series: [], question: { code: 'unit-mix', thread, drive, usual, elsewhere } }
  if (usual.length === 0) return { series: [] }
  return { series: [], question: { code: 'drive-unusual', thread, drive, usual, elsewhere } }
}

function named({ name, short = name, fromMemory }: DriveSeries) {
  return { series: name, inShort: short, fromMemory: fromMemory === true }
}

/** The drives of the same kind that common series give a thread size. */
function usualDrives(thread: Thread, drive: Drive): UsualDrive[] {
  return driveSeries.flatMap((series) => {
    const size = series.sizes[thread.size]
    if (series.kind !== drive.kind || size === undefined) return []
    return [{ drive: seriesDrive(series, size), ...named(series) }]
  })
}

function seriesFor(drive: Drive): DriveSeries[] {
  const isJisOnly = drive.kind === 'hex' && drive.series === 'jis'
  return driveSeries.filter((series) => series.kind === drive.kind && (!isJisOnly || series.isJis))
}

function isSameDrive(drive: Drive, series: DriveSeries, size: number | string | undefined): boolean {
  if (size === undefined || drive.kind === 'slot') return false
  const usual = seriesDrive(series, size)
  if ('acrossFlatsMm' in drive) {
    return 'acrossFlatsMm' in usual && Math.abs(drive.acrossFlatsMm - usual.acrossFlatsMm) < 1e-6
  }
  return 'size' in usual && drive.size === usual.size
}

function seriesDrive(series: DriveSeries, size: number | string): Drive {
  const { kind } = series
  if (kind === 'hex' || kind === 'hex-key') {
    if (typeof size === 'number') return { kind, acrossFlatsMm: size }
    return { kind, acrossFlatsMm: inchesToMillimetres(readFraction(size) ?? 0), inch: size }
  }
  return kind === 'cross-recess' ? { kind, form: 'H', size: Number(size) } : { kind, size: Number(size) }
}

function isOtherUnit(thread: Thread, drive: Drive): boolean {
  if (!('acrossFlatsMm' in drive)) return false
  return (thread.system === 'metric') === (drive.inch !== undefined)
}
