/** What came of a run of things tried: faults are those that ended in anything but an answer. */
export interface FuzzReport {
  tried: number
  /** How often each answer came: done, asked, a code of a refusal. */
  outcomes: Record<string, number>
  faults: string[]
  /** The longest single call, in milliseconds, and what it was about. */
  slowest: { ms: number; what: string }
}

export function newReport(): FuzzReport {
  return { tried: 0, outcomes: {}, faults: [], slowest: { ms: 0, what: '' } }
}

/** Notes what came of one call. An answer that begins with `fault` is one. */
export function note(report: FuzzReport, what: string, came: string, ms: number): void {
  report.tried += 1
  report.outcomes[came] = (report.outcomes[came] ?? 0) + 1
  if (came.startsWith('fault')) report.faults.push(`${JSON.stringify(what.slice(0, 300))}: ${came}`)
  if (ms > report.slowest.ms) report.slowest = { ms, what: what.slice(0, 200) }
}

/** An error as a fault: where it came from, in a line. */
export function faultOf(error: unknown): string {
  const told = error instanceof Error ? (error.stack ?? error.message) : String(error)
  return `fault: ${told.split('\n').slice(0, 4).join(' | ')}`
}

/** What a text for a person must be: nothing that moves a cursor, ends a line or turns the reading order. */
export function steers(text: string): boolean {
  return /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/u.test(text)
}
