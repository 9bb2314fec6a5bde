import { buildBesidePackages, startProgram } from '../helpers/child-program.ts'
import type { FuzzReport } from './fuzz-report.ts'

/** A program that never comes to an end is stopped after so long: far more than the slowest machine needs. */
const LIMIT_MS = 100_000

/**
 * Runs `programs/NAME.ts` in a process of its own, so that what never ends can be stopped, and answers its report with the
 * most memory that it held, in bytes. Rejects when it ends without one. For whoever is at home in the root of the sources.
 */
export async function inAProgram(name: string, ...args: number[]): Promise<FuzzReport & { rss: number }> {
  const program = await buildBesidePackages(`tests/hostile/programs/${name}.ts`)
  try {
    const running = startProgram(program, ...args)
    const watchdog = setTimeout(() => running.kill(), LIMIT_MS)
    const [report = ''] = await running.said(1).finally(() => clearTimeout(watchdog))
    await running.ended
    return JSON.parse(report)
  } finally {
    program.remove()
  }
}
