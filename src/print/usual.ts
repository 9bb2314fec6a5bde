import { join } from 'node:path'
import * as z from 'zod/mini'
import type { HowPrinted } from '../lines/errand.ts'
import { readSmallFile } from '../storage/files/read-small-file.ts'
import { replaceFile } from '../storage/files/replace-file.ts'

/** What is used where nothing else is said. A file that cannot be read counts as none: it is a convenience only. */
export function usualHow(home: string): HowPrinted {
  try {
    return usual.parse(JSON.parse(readSmallFile(join(home, NAME), MOST_BYTES))) as HowPrinted
  } catch {
    return {}
  }
}

/** Keeps it for the next time. */
export function keepUsual(home: string, how: HowPrinted): void {
  replaceFile(join(home, NAME), Buffer.from(`${JSON.stringify(usual.parse(how), null, 2)}\n`))
}

const NAME = '.printing.json'
const MOST_BYTES = 10_000

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
