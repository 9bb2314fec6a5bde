/** When a picture was taken, by the clock of its camera. */
export interface Taken {
  /** ISO 8601 without zone: `2026-11-25T10:11:12`. */
  local: string
  /** The digits behind the second, as far as the camera gave them. */
  fraction: string
  /** From UTC: `+02:00`. Many cameras give none. */
  offset: string | null
}

/** The three fields of an EXIF block that say when, as they are written there. */
export interface ExifTimes {
  DateTimeOriginal?: unknown
  SubSecTimeOriginal?: unknown
  OffsetTimeOriginal?: unknown
}

/**
 * Reads the capture time (CIPA DC-008 Exif 2.32, 4.6.5: `YYYY:MM:DD HH:MM:SS`, digits, `+HH:MM`). Null where it is
 * missing, blank, zero, or no time that there is. A fraction or an offset that is none is left out.
 */
export function readTaken(exif: ExifTimes): Taken | null {
  const match = /^(\d{4}):(\d\d):(\d\d) (\d\d):(\d\d):(\d\d)$/.exec(text(exif.DateTimeOriginal))
  if (!match) return null
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = match.slice(1).map(Number)
  const date = new Date(Date.UTC(year, month - 1, day, hour, minute, second))
  const local = `${match.slice(1, 4).join('-')}T${match.slice(4).join(':')}`
  // A day or an hour that there is not would have been carried over. No camera is from before 1900.
  if (year < 1900 || date.toISOString().slice(0, 19) !== local) return null
  return {
    local,
    fraction: /^\d{1,9}$/.exec(text(exif.SubSecTimeOriginal))?.[0] ?? '',
    offset: /^[+-](?:0\d|1[0-4]):[0-5]\d$/.exec(text(exif.OffsetTimeOriginal))?.[0] ?? null,
  }
}

/** `2026-11-25T10:11:12.345+02:00`, without what is not known. */
export function takenText({ local, fraction, offset }: Taken): string {
  return `${local}${fraction === '' ? '' : `.${fraction}`}${offset ?? ''}`
}

/** As it stands in the name of a file: `20261125-101112`. */
export function timeStamp(local: string): string {
  return local.replace(/[-:]/g, '').replace('T', '-')
}

/** The local time of this machine, for a file that says only when it was written. */
export function localTime(date: Date): string {
  const two = (value: number) => String(value).padStart(2, '0')
  const day = [String(date.getFullYear()).padStart(4, '0'), two(date.getMonth() + 1), two(date.getDate())]
  return `${day.join('-')}T${[date.getHours(), date.getMinutes(), date.getSeconds()].map(two).join(':')}`
}

/** Whole seconds: since the epoch where `byOffset`, else on the camera's clock. */
export function secondsOf({ local, offset }: Taken, byOffset: boolean): number {
  const onClock = Date.parse(`${local}Z`) / 1000
  if (!byOffset || offset === null) return onClock
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(4))
  return onClock - (offset.startsWith('-') ? -minutes : minutes) * 60
}

function text(value: unknown): string {
  return typeof value === 'string' ? value.trim() : ''
}
