import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import * as z from 'zod/mini'
import type { HowPrinted } from '../lines/errand.ts'

/** What is used where nothing else is said. A file that cannot be read counts as none: it is a convenience only. */
export function usualHow(home: string): HowPrinted {
  try {
    return usual.parse(JSON.parse(readFileSync(join(home, NAME), 'utf8'))) as HowPrinted
  } catch {
    return {}
  }
}

/** Keeps it for the next time. */
export function keepUsual(home: string, how: HowPrinted): void {
  const path = join(home, NAME)
  const partial = `${path}.${process.pid}.tmp`
  try {
    writeFileSync(partial, `${JSON.stringify(usual.parse(how), null, 2)}\n`, { mode: 0o600 })
    renameSync(partial, path)
  } catch (error) {
    rmSync(partial, { force: true })
    throw error
  }
}

const NAME = '.printing.json'

/** As long as a line may be that is read. */
const text = z.string().check(z.maxLength(500))

/** A single file name is no usual target: the second label would find it taken. */
const usual = z.object({
  stock: z.optional(text),
  dpi: z.optional(z.union([z.literal(203), z.literal(300)])),
  shift: z.optional(z.object({ x: z.number(), y: z.number() })),
  form: z.optional(z.enum(['pdf', 'svg', 'png', 'label-roll', 'receipt-roll'])),
  to: z.optional(
    z.discriminatedUnion('target', [
      z.object({ target: z.literal('device'), path: text }),
      z.object({
        target: z.literal('tcp'),
        host: text,
        port: z.int().check(z.minimum(1), z.maximum(65_535)),
      }),
    ]),
  ),
})
