import type { Printer } from '../measure.ts'
import { randomCommands } from '../mistakes/random-commands.ts'

/**
 * What a mechanic does wrong, and whether it is stopped before the first start. PUTBACK_MISTAKES: which part of it, as 0.01, where
 * all of it takes too long.
 */
export async function run({ print }: Printer): Promise<void> {
  const { PUTBACK_MISTAKES = '1' } = process.env
  const isMet = await randomCommands(print, Number(PUTBACK_MISTAKES))
  if (!isMet) process.exitCode = 1
}
