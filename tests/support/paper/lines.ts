import { type PdfPage, type PdfText, readPdf } from '../decode/pdf.ts'

/** A stretch of text as an eye takes it: words on one baseline with nothing but a space between them. */
export interface SeenLine {
  text: string
  x: number
  y: number
}

/** The lines of each page of a PDF, from the top down and from left to right; nothing but what stands on the paper. */
export async function seenLines(pdf: Uint8Array): Promise<SeenLine[][]> {
  const { pages } = await readPdf(pdf)
  return pages.map(linesOf)
}

// Wider than a space of the largest type, narrower than any gap between columns.
const gap = 2.6

// Two sizes of type on one row differ by less, two rows by much more.
const sameRow = 0.6

function linesOf({ texts }: PdfPage): SeenLine[] {
  const sorted = texts.filter(({ text }) => text.trim() !== '').sort((a, b) => a.y - b.y || a.x - b.x)
  const rows: PdfText[][] = []
  for (const text of sorted) {
    const row = rows.at(-1)
    if (row?.[0] && text.y - row[0].y < sameRow) row.push(text)
    else rows.push([text])
  }
  return rows.flatMap((row) => stretches(row.sort((a, b) => a.x - b.x)))
}

function stretches(row: readonly PdfText[]): SeenLine[] {
  const lines: (SeenLine & { end: number })[] = []
  for (const { text, x, y, width } of row) {
    const last = lines.at(-1)
    const end = x + width
    if (last && x - last.end < gap) {
      const space = last.text.endsWith(' ') || text.startsWith(' ') || x - last.end < 0.2 ? '' : ' '
      last.text += space + text
      last.end = end
    } else lines.push({ text, x, y, end })
  }
  return lines.map(({ text, x, y }) => ({ text: text.replace(/\s+/g, ' ').trim(), x, y }))
}
