import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { openTypeface, type Typeface } from '../label/typeface.ts'

/** The fonts of all that is printed, read from their package once. */
export function typeface(): Typeface {
  typefaceRead ??= openTypeface(readFileSync(plain()), readFileSync(bold()))
  return typefaceRead
}

/** The program that turns outlines into dots, as bytes, read once. */
export function rasteriserWasm(): Uint8Array {
  wasmRead ??= readFileSync(wasm())
  return wasmRead
}

/** The first package that is not installed of those that printing reads files of; null when all are. */
export function missingPart(): string | null {
  const [part] = Object.entries(PARTS).find(([, find]) => !isThere(find)) ?? []
  return part ?? null
}

// Packages are looked for from the built program as from the sources.
const require = createRequire(import.meta.url)
const plain = () => require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')
const bold = () => require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf')
const wasm = () => require.resolve('@resvg/resvg-wasm/index_bg.wasm')
const PARTS = { 'dejavu-fonts-ttf': plain, '@resvg/resvg-wasm': wasm }

let typefaceRead: Typeface | undefined
let wasmRead: Uint8Array | undefined

function isThere(find: () => string): boolean {
  try {
    find()
    return true
  } catch {
    return false
  }
}
