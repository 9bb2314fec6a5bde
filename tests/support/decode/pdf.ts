import type { PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Picture } from '../../../src/label/render/rasteriser.ts'
import { getDocument } from './pdf-js.ts'

/** A text of a PDF page: where its baseline begins, in millimetres from the top left corner of the page. */
export interface PdfText {
  text: string
  x: number
  y: number
  /** In millimetres. */
  width: number
  font: string
}

export interface PdfPage {
  /** In millimetres. */
  width: number
  height: number
  texts: PdfText[]
}

/** What pdf.js finds on the pages of a PDF: their sizes and the text on them. */
export async function readPdf(pdf: Uint8Array): Promise<{ title: string; pages: PdfPage[] }> {
  return opened(pdf, async (document) => {
    const { info } = await document.getMetadata()
    const pages: PdfPage[] = []
    for (let number = 1; number <= document.numPages; number++) {
      const page = await document.getPage(number)
      const [left = 0, bottom = 0, right = 0, top = 0] = page.view
      const { items } = await page.getTextContent({ disableNormalization: true })
      const texts = items.flatMap((item) => {
        if (!('str' in item) || item.str === '') return []
        const [x = 0, y = 0] = item.transform.slice(4)
        return [
          { text: item.str, x: mm(x - left), y: mm(top - y), width: mm(item.width), font: item.fontName },
        ]
      })
      pages.push({ width: mm(right - left), height: mm(top - bottom), texts })
    }
    return { title: String((info as { Title?: unknown }).Title ?? ''), pages }
  })
}

/** A page of a PDF as pdf.js and Skia draw it. */
export async function pdfPicture(pdf: Uint8Array, dpi: number, number = 1): Promise<Picture> {
  return opened(pdf, async (document) => {
    const page = await document.getPage(number)
    const viewport = page.getViewport({ scale: dpi / 72 })
    const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)]
    // pdf.js brings a canvas of its own: its paths cannot be drawn on another.
    const { canvas, context } = (document.canvasFactory as CanvasFactory).create(width, height)
    await page.render({ canvas, canvasContext: context, viewport }).promise
    return { width, height, rgba: new Uint8Array(context.getImageData(0, 0, width, height).data) }
  })
}

/** What is used here of the canvas of pdf.js, the types of which belong to a browser. */
interface CanvasFactory {
  create(
    width: number,
    height: number,
  ): {
    canvas: null
    context: { getImageData(x: number, y: number, width: number, height: number): { data: Uint8Array } }
  }
}

async function opened<T>(pdf: Uint8Array, use: (document: PDFDocumentProxy) => Promise<T>): Promise<T> {
  // pdf.js takes the bytes over: it gets its own. Its messages are none of the test report.
  const loading = getDocument({ data: pdf.slice(), verbosity: 0 })
  try {
    return await use(await loading.promise)
  } finally {
    await loading.destroy()
  }
}

function mm(points: number): number {
  return (points * 25.4) / 72
}
