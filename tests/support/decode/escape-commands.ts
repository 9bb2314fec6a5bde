import type { Bitmap } from '../../../src/label/render/bitmap.ts'

/**
 * Interprets the escape commands of receipt printers as their manuals give them, into one picture for each piece of
 * paper that is cut off. Like the printers it looks for real-time commands in every byte, pictures included. Whatever
 * is not known here is an error, printable text among it.
 */
export function readEscapeCommands(bytes: Uint8Array): Bitmap[] {
  for (const [index, byte] of bytes.entries()) {
    if (byte === 0x10 && [0x04, 0x05, 0x14].includes(bytes[index + 1] ?? 0)) {
      throw new Error(`A real-time command at ${index}`)
    }
  }
  const pieces: Bitmap[] = []
  let rows: Uint8Array[] = []
  let at = 0
  const next = () => {
    const byte = bytes[at++]
    if (byte === undefined) throw new Error('The bytes end within a command')
    return byte
  }
  while (at < bytes.length) {
    const [lead, letter] = [next(), next()]
    const command = `${lead === 0x1b ? 'ESC' : lead === 0x1d ? 'GS' : lead} ${String.fromCharCode(letter)}`
    switch (command) {
      case 'ESC @':
        break
      case 'ESC d':
        next()
        break
      case 'GS v': {
        if (next() !== 0x30 || next() !== 0) throw new Error('A raster picture that is not understood')
        const rowBytes = next() + 256 * next()
        const height = next() + 256 * next()
        for (let row = 0; row < height; row++) rows.push(Uint8Array.from({ length: rowBytes }, next))
        break
      }
      case 'GS V': {
        if (next() !== 66) throw new Error('A cut that is not understood')
        next()
        pieces.push(stacked(rows))
        rows = []
        break
      }
      default:
        throw new Error(`Unknown command ${command} at ${at - 2}`)
    }
  }
  if (rows.length > 0) throw new Error('The last piece is not cut off')
  return pieces
}

function stacked(rows: readonly Uint8Array[]): Bitmap {
  const rowBytes = rows[0]?.length ?? 0
  if (rows.some((row) => row.length !== rowBytes)) throw new Error('Bands of different widths')
  return {
    width: 8 * rowBytes,
    height: rows.length,
    rowBytes,
    dots: Uint8Array.from(rows.flatMap((row) => [...row])),
  }
}
