import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Rows run bundled in bench/.cache. */
const cache = dirname(fileURLToPath(import.meta.url))

/** The built program, as a user runs it. */
export const PROGRAM = join(cache, '..', '..', 'dist', 'putback.js')

/** The bare Ink program, bundled as the product is. */
export const BARE_INK = join(cache, 'bare-ink.mjs')
