import qrcode from 'qrcode'
import { labelCode } from '../../src/label/code.ts'
import type { Drawing } from '../../src/label/drawing.ts'
import type { LabelContent } from '../../src/label/label-content.ts'
import { layOut } from '../../src/label/layout/lay-out.ts'
import { bitmapOf } from '../../src/label/render/bitmap.ts'
import { labelRollBytes } from '../../src/label/render/label-roll.ts'
import { pdfOf } from '../../src/label/render/pdf.ts'
import { openRasteriser } from '../../src/label/render/rasteriser.ts'
import { sheetPages } from '../../src/label/sheet.ts'
import type { Stock } from '../../src/label/stock.ts'
import { rasteriserWasm, typeface } from '../../src/print/fonts.ts'
import { alternate, figure, type Printer, ratio } from '../measure.ts'

const count = 1_000

/** A thousand labels from their words to a PDF of sheets, and to a label roll, against the QR library alone. */
export async function run({ print }: Printer): Promise<void> {
  const codes = Array.from({ length: count }, (_, index) => labelCode(1, index + 1))
  const rasteriser = await openRasteriser(rasteriserWasm())
  const [alone = 0, laid = 0, pdf = 0, roll = 0] = await alternate(5, [
    () => timed(() => codes.map(symbolAlone)),
    () => timed(() => drawings(codes, sheet)),
    () => timed(() => pdfOfSheets(drawings(codes, sheet))),
    () =>
      timed(() =>
        labelRollBytes(drawings(codes.slice(0, 50), rollLabel).map((each) => dots(each, rasteriser))),
      ),
  ])
  print(`qrcode, symbols alone       ${perSecond(count, alone)}`)
  print(`laid out                    ${perSecond(count, laid)}`)
  print(`laid out and drawn as PDF   ${perSecond(count, pdf)}, ${ratio(pdf, alone)} the time of the symbols`)
  print(`as dots for a label roll    ${perSecond(50, roll)}, at ${rollLabel.dpi} dots to the inch`)
}

const sheet: Stock = {
  name: 'sheet',
  says: '24 labels on A4',
  page: { width: 210, height: 297 },
  columns: 3,
  rows: 8,
  label: { width: 64, height: 33.9 },
  margin: { left: 9, top: 12.9 },
  gap: { x: 0, y: 0 },
  corner: 0,
  dpi: 600,
  kind: 'sheet',
}

const rollLabel: Stock = {
  ...sheet,
  name: 'roll',
  says: 'a label of a roll',
  page: sheet.label,
  columns: 1,
  rows: 1,
  margin: { left: 0, top: 0 },
  dpi: 203,
  kind: 'roll',
}

function symbolAlone(code: string): void {
  qrcode.create([{ data: code, mode: 'numeric' }], { errorCorrectionLevel: 'H' })
}

function drawings(codes: readonly string[], stock: Stock): Drawing[] {
  return codes.map((code, index) => {
    const laid = layOut(container(code, index + 1), stock.label, { typeface: typeface(), dpi: stock.dpi })
    if (!laid.ok) throw new Error(laid.refusal.code)
    return laid.drawing
  })
}

function container(code: string, no: number): LabelContent {
  return {
    kind: 'container',
    name: `bag ${no}`,
    code,
    heading: `BAG ${no}`,
    part: null,
    what: [`${no} × valve cover bolts M6x25 hex 8`, 'sealing washers'],
    where: [`valve cover, step ${no}`],
    status: 'FIT AGAIN',
    warnings: [],
    job: '1 blue twin',
    date: '2026-03-14',
  }
}

async function pdfOfSheets(labels: readonly Drawing[]): Promise<Uint8Array> {
  const sheets = sheetPages(sheet, labels, { from: 1, shift: { x: 0, y: 0 } })
  if (!sheets.ok) throw new Error(sheets.refusal.code)
  return pdfOf(sheets.pages, { typeface: typeface(), title: 'Labels', made: new Date(0) })
}

function dots(label: Drawing, rasteriser: Parameters<typeof bitmapOf>[2]['rasteriser']) {
  return bitmapOf(label, rollLabel.dpi, { typeface: typeface(), rasteriser })
}

async function timed(work: () => unknown): Promise<number> {
  const from = performance.now()
  await work()
  return performance.now() - from
}

function perSecond(labels: number, milliseconds: number): string {
  return figure((labels * 1000) / milliseconds, 'labels/s')
}
