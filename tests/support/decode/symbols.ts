import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import jsqr from 'jsqr'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import type { Picture } from '../../../src/label/render/rasteriser.ts'
import { cropped } from './picture.ts'

/** A symbol as a decoder found it: what it says, and the middle of it in dots of the picture. */
export interface Found {
  code: string
  x: number
  y: number
}

/** All QR symbols of a picture, as ZXing reads them; dark on light only, as simple hand scanners do. */
export async function zxingSymbols({ width, height, rgba }: Picture): Promise<Found[]> {
  await prepared()
  const image = { data: new Uint8ClampedArray(rgba), width, height, colorSpace: 'srgb' }
  const found = await readBarcodes(image as Parameters<typeof readBarcodes>[0], {
    formats: ['QRCode'],
    tryInvert: false,
    maxNumberOfSymbols: 255,
  })
  return found
    .filter(({ isValid }) => isValid)
    .map(({ text, position: { topLeft, bottomRight } }) => ({
      code: text,
      x: (topLeft.x + bottomRight.x) / 2,
      y: (topLeft.y + bottomRight.y) / 2,
    }))
}

/** The one QR symbol of a picture as jsQR reads it, null when it finds none. It looks for no more than one. */
export function jsqrCode({ width, height, rgba }: Picture): string | null {
  return (
    jsqr.default(new Uint8ClampedArray(rgba), width, height, { inversionAttempts: 'dontInvert' })?.data ??
    null
  )
}

/** What jsQR reads in the square around each symbol that ZXing found. */
export function jsqrCodes(picture: Picture, found: readonly Found[], side: number): (string | null)[] {
  const half = Math.round(side / 2)
  return found.map(({ x, y }) =>
    jsqrCode(cropped(picture, Math.round(x) - half, Math.round(y) - half, 2 * half, 2 * half)),
  )
}

let ready: Promise<unknown> | undefined

// Left to itself the decoder fetches its program from the network.
function prepared(): Promise<unknown> {
  const path = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm')
  ready ??= prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(readFileSync(path)).buffer },
    fireImmediately: true,
  })
  return ready
}
