import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { openTypeface, type Typeface } from '../label/typeface.ts'

/** The fonts of all that is printed, read from their package once. */
export function typeface(): Typeface {
  typefaceRead ??= openTypeface(
    readFileSync(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')),
    readFileSync(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf')),
  )
  return typefaceRead
}

/** The program that turns outlines into dots, as bytes, read once. */
export function rasteriserWasm(): Uint8Array {
  wasmRead ??= readFileSync(require.resolve('@resvg/resvg-wasm/index_bg.wasm'))
  return wasmRead
}

// Packages are looked for from the built program as from the sources.
const require = createRequire(import.meta.url)

let typefaceRead: Typeface | undefined
let wasmRead: Uint8Array | undefined
