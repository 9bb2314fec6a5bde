import PDFDocument from 'pdfkit'
import type { Drawing, Shape } from '../drawing.ts'
import { plainText } from '../plain-text.ts'
import { drawableText, type Typeface } from '../typeface.ts'
import { darkRuns } from './dark-runs.ts'
import { dash } from './dash.ts'

/**
 * A PDF of these pages, each at its own size. The text in it is text and can be searched and copied; the fonts
 * are embedded. The same pages, title and date always make the same bytes.
 */
export async function pdfOf(
  pages: readonly Drawing[],
  { typeface, title, made }: { typeface: Typeface; title: string; made: Date },
): Promise<Uint8Array<ArrayBuffer>> {
  const pdf = new PDFDocument({
    autoFirstPage: false,
    // An empty name keeps the library from opening a font of its own.
    font: '',
    pdfVersion: '1.7',
    info: { Title: plainText(title), Creator: 'putback', CreationDate: made },
  })
  pdf.registerFont('plain', typeface.files.plain as PDFKit.Mixins.PDFFontSource)
  pdf.registerFont('strong', typeface.files.strong as PDFKit.Mixins.PDFFontSource)
  for (const { width, height, shapes } of pages) {
    pdf.addPage({ size: [points(width), points(height)], margin: 0 })
    for (const shape of shapes) draw(pdf, shape, typeface)
  }
  pdf.end()
  const parts: Uint8Array<ArrayBuffer>[] = []
  for await (const part of pdf) parts.push(part as unknown as Uint8Array<ArrayBuffer>)
  return new Uint8Array(await new Blob(parts).arrayBuffer())
}

/** Millimetres in points of 1/72 inch. */
function points(length: number): number {
  return (length * 72) / 25.4
}

function draw(pdf: PDFKit.PDFDocument, shape: Shape, typeface: Typeface): void {
  switch (shape.kind) {
    case 'symbol':
      drawSymbol(pdf, shape)
      break
    case 'text':
      drawText(pdf, shape, drawableText(shape.text, typeface))
      break
    case 'line':
      pdf.moveTo(points(shape.from.x), points(shape.from.y)).lineTo(points(shape.to.x), points(shape.to.y))
      stroke(pdf, shape.width, shape.dashed)
      break
    case 'box':
      outlineBox(pdf, shape)
      if (shape.filled) pdf.fill()
      else stroke(pdf, shape.line)
      break
    case 'circle':
      pdf.circle(points(shape.x), points(shape.y), points(shape.radius))
      stroke(pdf, shape.line, shape.dashed)
      break
    case 'polygon':
      pdf.polygon(...shape.points.map(({ x, y }) => [points(x), points(y)])).fill()
      break
  }
}

function drawSymbol(pdf: PDFKit.PDFDocument, { x, y, module, modules }: Shape & { kind: 'symbol' }): void {
  for (const { row, from, to } of darkRuns(modules)) {
    const [left, top] = [x + from * module, y + row * module]
    pdf.rect(points(left), points(top), points((to - from) * module), points(module))
  }
  // One fill for all: drawn one by one, viewers would leave light seams between the rows.
  pdf.fill()
}

function drawText(pdf: PDFKit.PDFDocument, shape: Shape & { kind: 'text' }, text: string): void {
  const [x, y] = [points(shape.x), points(shape.y)]
  pdf.save()
  if (shape.turn) pdf.rotate(shape.turn, { origin: [x, y] })
  if (shape.reversed) pdf.fillColor('white')
  pdf.font(shape.weight, points(shape.size)).text(text, x, y, { lineBreak: false, baseline: 'alphabetic' })
  pdf.restore()
}

function outlineBox(pdf: PDFKit.PDFDocument, shape: Shape & { kind: 'box' }): void {
  const { x, y, width, height, corner = 0 } = shape
  const round = Math.min(corner, width / 2, height / 2)
  if (round > 0) pdf.roundedRect(points(x), points(y), points(width), points(height), points(round))
  else pdf.rect(points(x), points(y), points(width), points(height))
}

function stroke(pdf: PDFKit.PDFDocument, width: number, dashed?: boolean): void {
  // In PDF a width of 0 is the thinnest line that the device can draw; here it is none:
  // the operator n ends a path without drawing it.
  if (width <= 0) {
    pdf.addContent('n')
    return
  }
  pdf.lineWidth(points(width))
  if (dashed) pdf.dash(points(dash.on), { space: points(dash.off) })
  pdf.stroke()
  if (dashed) pdf.undash()
}
