import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { openTypeface, type Typeface } from '../label/typeface.ts'

/** The fonts of all that is printed, read from their package once. */
export function typeface(): Typeface {
  typefaceRead ??= openTypeface(
    readPackaged('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
    readPackaged('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
  )
  return typefaceRead
}

/** The program that turns outlines into dots, as bytes, read once. */
export function rasteriserWasm(): Uint8Array {
  wasmRead ??= readPackaged('@resvg/resvg-wasm/index_bg.wasm')
  return wasmRead
}

let typefaceRead: Typeface | undefined
let wasmRead: Uint8Array | undefined

function readPackaged(path: string): Uint8Array {
  return readFileSync(createRequire(import.meta.url).resolve(path))
}
