import type { Bitmap } from '../../../src/label/render/bitmap.ts'

/** A label as a printer would print it, and how often. */
export interface PrintedLabel {
  bitmap: Bitmap
  copies: number
}

/**
 * Interprets the caret commands of label-roll printers as their manuals give them: a command is a caret and two
 * characters, its parameters run to the next caret. Anything that is not known here is an error, not skipped.
 */
export function readCaretCommands(bytes: Uint8Array): PrintedLabel[] {
  const labels: PrintedLabel[] = []
  let label: { width: number; length: number; x: number; y: number; copies: number; dots?: Bitmap } | null =
    null
  for (const { name, values } of commandsOf(bytes)) {
    if (name === 'XA') {
      if (label) throw new Error('^XA within a label')
      label = { width: 0, length: 0, x: 0, y: 0, copies: 1 }
      continue
    }
    if (!label) throw new Error(`^${name} outside of a label`)
    switch (name) {
      case 'PW':
        label.width = number(values)
        break
      case 'LL':
        label.length = number(values)
        break
      case 'LH':
        if (values !== '0,0') throw new Error(`Origin moved: ${values}`)
        break
      case 'FO':
        ;[label.x = 0, label.y = 0] = values.split(',').map(number)
        break
      case 'GF':
        label.dots = graphic(values)
        break
      case 'FS':
        break
      case 'PQ':
        label.copies = number(values)
        break
      case 'XZ':
        labels.push(printed(label))
        label = null
        break
      default:
        throw new Error(`Unknown command ^${name}`)
    }
  }
  if (label) throw new Error('The last label has no end')
  return labels
}

function commandsOf(bytes: Uint8Array): { name: string; values: string }[] {
  const text = Buffer.from(bytes).toString('latin1')
  if (/[^\n -}]/.test(text)) throw new Error('A byte that is no caret command')
  const [before, ...commands] = text.split('^')
  if (before !== '') throw new Error(`Text before the first command: ${before}`)
  // Printers pass over line ends.
  return commands.map((command) => ({
    name: command.slice(0, 2),
    values: command.slice(2).replaceAll('\n', ''),
  }))
}

function graphic(values: string): Bitmap {
  const [form, sent, total, rowBytes, data] = values.split(',')
  if (form !== 'A' || sent !== total)
    throw new Error(`A graphic field that is not understood: ${form},${sent}`)
  const dots = Uint8Array.from(data?.match(/[0-9A-F]{2}/g) ?? [], (pair) => Number.parseInt(pair, 16))
  if (data?.length !== 2 * dots.length || dots.length !== number(total))
    throw new Error('Wrong length of data')
  const across = number(rowBytes)
  return { width: 8 * across, height: dots.length / across, rowBytes: across, dots }
}

/** The field on the label at its origin, cut off where the label ends. */
function printed(label: {
  width: number
  length: number
  x: number
  y: number
  copies: number
  dots?: Bitmap
}): PrintedLabel {
  const { width, length: height, dots: field, copies } = label
  const bitmap = {
    width,
    height,
    rowBytes: Math.ceil(width / 8),
    dots: new Uint8Array(Math.ceil(width / 8) * height),
  }
  if (!field) throw new Error('A label without a field')
  for (let y = 0; y < field.height; y++) {
    for (let x = 0; x < field.width; x++) {
      if (((field.dots[y * field.rowBytes + (x >> 3)] ?? 0) & (0x80 >> (x & 7))) === 0) continue
      const [column, row] = [label.x + x, label.y + y]
      if (column >= width || row >= height) throw new Error(`A dot outside of the label: ${column}, ${row}`)
      const at = row * bitmap.rowBytes + (column >> 3)
      bitmap.dots[at] = (bitmap.dots[at] ?? 0) | (0x80 >> (column & 7))
    }
  }
  return { bitmap, copies }
}

function number(text: string | undefined): number {
  if (!/^\d+$/.test(text ?? '')) throw new Error(`No number: ${text}`)
  return Number(text)
}
