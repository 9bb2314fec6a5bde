import type { Misreading, Reading } from './reading.ts'

/** Carries a reading that came to an early end up to `readLine`. It never leaves this folder. */
export class Stopped extends Error {
  readonly reading: Reading
  constructor(reading: Reading) {
    super(reading.kind)
    this.name = 'Stopped'
    this.reading = reading
  }
}

/** Ends the reading of a line: it is not understood. */
export function misread(misreading: Misreading): never {
  throw new Stopped({ kind: 'misread', misreading })
}
