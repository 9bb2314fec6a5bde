import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { build } from 'esbuild'
import { startProgram } from '../helpers/child-program.ts'
import type { FuzzReport } from './fuzz-report.ts'

/** A program that never comes to an end is stopped after so long: far more than the slowest machine needs. */
const LIMIT_MS = 100_000

/**
 * Runs `programs/NAME.ts` in a process of its own, so that what never ends can be stopped, and answers its report with the
 * most memory that it held, in bytes. Rejects when it ends without one. For whoever is at home in the root of the sources.
 */
export async function inAProgram(name: string, ...args: number[]): Promise<FuzzReport & { rss: number }> {
  // Where its packages are found, which are not bundled.
  const cache = resolve('node_modules/.cache')
  mkdirSync(cache, { recursive: true })
  const folder = mkdtempSync(join(cache, 'putback-hostile-'))
  try {
    const path = join(folder, 'program.mjs')
    await build({
      entryPoints: [resolve('tests/hostile/programs', `${name}.ts`)],
      outfile: path,
      bundle: true,
      packages: 'external',
      platform: 'node',
      format: 'esm',
    })
    const running = startProgram({ path, remove: () => undefined }, ...args)
    const watchdog = setTimeout(() => running.kill(), LIMIT_MS)
    const [report = ''] = await running.said(1).finally(() => clearTimeout(watchdog))
    await running.ended
    return JSON.parse(report)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
