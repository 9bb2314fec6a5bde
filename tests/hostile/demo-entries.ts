import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Entry } from '../../src/journal/entry.ts'
import { demoUntil } from '../support/paper/demo-until.ts'

/** The demo job at three places: coming off, half built up, and started. */
export function demoEntries(): (readonly Entry[])[] {
  const home = mkdtempSync(join(tmpdir(), 'putback-hostile-'))
  try {
    const whole = demoUntil(home, 'After the start').entries()
    const half = whole.findIndex(({ type }) => type === 'fitted')
    return [whole.slice(0, 60), whole.slice(0, half + 40), whole]
  } finally {
    rmSync(home, { recursive: true, force: true })
  }
}
