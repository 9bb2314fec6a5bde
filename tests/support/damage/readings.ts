import { readCode } from '../../../src/label/code.ts'
import type { Frame } from './camera.ts'
import type { Mishap } from './damages.ts'
import { jsqrReads, zxingReads } from './decoders.ts'
import type { GreyImage } from './grey-image.ts'
import { labelImage, type PlacedSymbol, type PrintedLabel } from './label-image.ts'

/** What two decoders made of one damaged label. */
export interface Reading {
  zxing: boolean
  /** Null when it was not asked. */
  jsqr: boolean | null
  /** Valid label codes that the label does not carry. */
  wrong: string[]
  /** Texts that are no label code, such as a symbol seen in the type. They harm nobody: check digits refuse them. */
  strays: string[]
}

/**
 * Reads a label after a mishap: the decoder of putback's own photos in a picture of the whole label; the other, which
 * knows of one symbol a picture only, held close to each symbol in turn as a scanner is. `image`: the label as it was
 * printed, where it is more than its symbols.
 */
export async function readingAfter(
  mishap: Mishap,
  code: string,
  label: PrintedLabel,
  options: { jsqr: boolean; image?: GreyImage | undefined },
): Promise<Reading> {
  const damaged = mishap.befalls(options.image ?? labelImage(label))
  const whole = mishap.seen(damaged, around({ left: 0, top: 0, ...sizeOf(label) }, benchAround))
  const camera = await zxingReads(whole)
  const scanner: string[] = []
  for (const symbol of options.jsqr ? label.symbols : []) {
    if (scanner.includes(code)) break
    scanner.push(...jsqrReads(mishap.seen(damaged, closeUp(symbol))))
  }
  const others = [...new Set([...camera, ...scanner])].filter((text) => text !== code)
  const isCode = (text: string) => readCode(text).kind === 'code'
  return {
    zxing: camera.includes(code),
    jsqr: options.jsqr ? scanner.includes(code) : null,
    wrong: others.filter(isCode),
    strays: others.filter((text) => !isCode(text)),
  }
}

const benchAround = 24
const quietZone = 4

function sizeOf({ width, height }: PrintedLabel) {
  return { width, height }
}

function closeUp({ left, top, module, modules }: PlacedSymbol): Frame {
  const side = modules.length * module
  return around({ left, top, width: side, height: side }, (quietZone + 2) * module)
}

function around({ left, top, width, height }: Frame, margin: number): Frame {
  return { left: left - margin, top: top - margin, width: width + 2 * margin, height: height + 2 * margin }
}
