import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { openTypeface, type Typeface } from '../label/typeface.ts'

/** The fonts of all that is printed, read from their package once. */
export function typeface(): Typeface {
  typefaceRead ??= openTypeface(readFileSync(require.resolve(PLAIN)), readFileSync(require.resolve(BOLD)))
  return typefaceRead
}

/** The program that turns outlines into dots, as bytes, read once. */
export function rasteriserWasm(): Uint8Array {
  wasmRead ??= readFileSync(require.resolve(WASM))
  return wasmRead
}

/** The first package that is not installed of those that print; null when all are. */
export function missingPart(): string | null {
  for (const file of [PLAIN, BOLD, WASM]) {
    try {
      require.resolve(file)
    } catch {
      return file.slice(0, file.lastIndexOf('/'))
    }
  }
  return null
}

const PLAIN = 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'
const BOLD = 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'
const WASM = '@resvg/resvg-wasm/index_bg.wasm'

// Packages are looked for from the built program as from the sources.
const require = createRequire(import.meta.url)

let typefaceRead: Typeface | undefined
let wasmRead: Uint8Array | undefined
