import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import jsqr from 'jsqr'
import { prepareZXingModule, type ReaderOptions, readBarcodes } from 'zxing-wasm/reader'
import type { Picture } from './camera.ts'

/** Every text that the decoder putback reads photos with finds in a picture; by its own defaults, or as asked. */
export async function zxingReads(picture: Picture, options: ReaderOptions = {}): Promise<string[]> {
  ready ??= prepare()
  await ready
  const results = await readBarcodes(colours(picture), { formats: ['QRCode'], ...options })
  return results.filter((result) => result.isValid).map((result) => result.text)
}

/**
 * What a decoder that shares no code with the first, and knows of one symbol a picture only, finds in it. It takes noise
 * for modules, so where it finds nothing it is shown the picture once more with every four pixels made one.
 */
export function jsqrReads(picture: Picture): string[] {
  const found = jsqrRead(picture)
  return found.length > 0 ? found : jsqrRead(halved(picture))
}

function jsqrRead(picture: Picture): string[] {
  const { data, width, height } = colours(picture)
  const found = jsqr.default(data, width, height, { inversionAttempts: 'dontInvert' })
  return found ? [found.data] : []
}

let ready: Promise<unknown> | undefined

function prepare(): Promise<unknown> {
  const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm')
  const { buffer, byteOffset, byteLength } = readFileSync(wasm)
  const wasmBinary = buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer
  return prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true })
}

function halved({ width, height, bytes }: Picture): Picture {
  const half = { width: width >> 1, height: height >> 1 }
  const out = new Uint8ClampedArray(half.width * half.height)
  for (let y = 0; y < half.height; y++) {
    for (let x = 0; x < half.width; x++) {
      const at = 2 * y * width + 2 * x
      const four = [bytes[at], bytes[at + 1], bytes[at + width], bytes[at + width + 1]] as number[]
      out[y * half.width + x] = four.reduce((sum, grey) => sum + grey, 0) / 4
    }
  }
  return { ...half, bytes: out }
}

function colours({ width, height, bytes }: Picture) {
  const data = new Uint8ClampedArray(width * height * 4)
  for (let place = 0; place < bytes.length; place++) {
    const grey = bytes[place] as number
    data[4 * place] = grey
    data[4 * place + 1] = grey
    data[4 * place + 2] = grey
    data[4 * place + 3] = 255
  }
  return { data, width, height, colorSpace: 'srgb' as const }
}
