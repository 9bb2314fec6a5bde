/** Between two rings, in milliseconds: terminals swallow those that follow at once. */
const RING_MS = 180

/** Rings the terminal's bell so many times, apart from each other; what rang before and is not over gives way. */
export function ringer(write: (text: string) => void): (times: number) => void {
  let ringing: NodeJS.Timeout | undefined
  return (times) => {
    clearTimeout(ringing)
    const next = (left: number) => {
      if (left === 0) return
      write('\x07')
      ringing = setTimeout(next, RING_MS, left - 1).unref()
    }
    next(times)
  }
}
