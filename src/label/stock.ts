import * as z from 'zod/mini'

/** A label stock by its measures alone, in millimetres. A whole sheet of paper is a stock of one label. */
export interface Stock {
  /** What a user calls it, and the name of its file: `a4-24`. */
  name: string
  /** One line on what it is: `24 labels of 64 x 33.9 mm on A4`. */
  says: string
  /** A sheet to be put into a printer, or one label of a roll. Of a receipt roll, what can be printed on. */
  page: { width: number; height: number }
  columns: number
  rows: number
  label: { width: number; height: number }
  /** From the edges of the page to the first label. */
  margin: { left: number; top: number }
  /** Between labels. */
  gap: { x: number; y: number }
  /** Radius of the corners of a label. */
  corner: number
  /** What the printer that it is for can print, dots to the inch. */
  dpi: number
  /** Sheets go to a page printer, rolls to a label printer; a receipt roll is cut where the label ends. */
  kind: 'sheet' | 'roll' | 'receipt'
}

/** What is wrong with one field of a stock, by its path: `page.width`. */
export type StockFault =
  | { wrong: 'missing' | 'not-known' | 'not-as-asked'; at: string }
  | { wrong: 'too-small'; at: string; least: number }
  | { wrong: 'too-large'; at: string; most: number }
  /** The labels of all columns (or rows) reach so far; the page ends before. In millimetres. */
  | { wrong: 'beyond-page'; at: 'columns' | 'rows'; reach: number; page: number }

export type StockReading =
  | { ok: true; stock: Stock }
  | { ok: false; refusal: { code: 'not-a-stock'; faults: StockFault[] } }

/** How many labels a page holds. */
export function labelsOnPage(stock: Stock): number {
  return stock.columns * stock.rows
}

/**
 * Reads a stock out of JSON of any origin. Every measure is checked, the labels lie inside the page and, with gaps of
 * nothing or more, beside each other. All faults are named at once.
 */
export function readStock(raw: unknown): StockReading {
  const parsed = schema.safeParse(raw)
  const faults = parsed.success
    ? faultsOfGeometry(parsed.data)
    : parsed.error.issues.flatMap((issue) => faultsOf(issue, raw))
  if (parsed.success && faults.length === 0) return { ok: true, stock: parsed.data }
  return { ok: false, refusal: { code: 'not-a-stock', faults } }
}

// As in the journal's entries: compiling costs more than it saves.
z.config({ jitless: true })

// The largest page of a common office printer is 297 by 420 mm; a roll may be longer. Common practice.
const pageSide = z.number().check(z.minimum(10), z.maximum(1000))
const labelSide = z.number().check(z.minimum(5), z.maximum(1000))
const distance = z.number().check(z.minimum(0), z.maximum(1000))
const perPage = z.int().check(z.minimum(1), z.maximum(100))

const schema: z.ZodMiniType<Stock> = z.strictObject({
  name: z.string().check(z.regex(/^[a-z0-9][a-z0-9-]{0,39}$/)),
  says: z.string().check(z.regex(/^[^\p{Cc}\p{Cf}]{1,200}$/u)),
  page: z.strictObject({ width: pageSide, height: pageSide }),
  columns: perPage,
  rows: perPage,
  label: z.strictObject({ width: labelSide, height: labelSide }),
  margin: z.strictObject({ left: distance, top: distance }),
  gap: z.strictObject({ x: distance, y: distance }),
  corner: distance,
  dpi: z.int().check(z.minimum(100), z.maximum(2400)),
  kind: z.enum(['sheet', 'roll', 'receipt']),
})

// In millimetres: what the widest heads of roll printers print is eight and a half inches. From memory.
const widestHead = 216

// Sums of tenths of a millimetre are not exact in binary; the page is.
const rounding = 1e-6

function faultsOfGeometry({ page, columns, rows, label, margin, gap, corner, kind }: Stock): StockFault[] {
  const faults: StockFault[] = []
  const right = margin.left + columns * label.width + (columns - 1) * gap.x
  const bottom = margin.top + rows * label.height + (rows - 1) * gap.y
  if (right > page.width + rounding) {
    faults.push({ wrong: 'beyond-page', at: 'columns', reach: right, page: page.width })
  }
  if (bottom > page.height + rounding) {
    faults.push({ wrong: 'beyond-page', at: 'rows', reach: bottom, page: page.height })
  }
  if (kind !== 'sheet' && page.width > widestHead)
    faults.push({ wrong: 'too-large', at: 'page.width', most: widestHead })
  const roundest = Math.min(label.width, label.height) / 2
  if (corner > roundest) faults.push({ wrong: 'too-large', at: 'corner', most: roundest })
  return faults
}

function faultsOf(issue: z.core.$ZodIssue, raw: unknown): StockFault[] {
  const at = issue.path.map(String).join('.')
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({ wrong: 'not-known', at: at === '' ? key : `${at}.${key}` }))
    case 'too_small':
      return [{ wrong: 'too-small', at, least: Number(issue.minimum) }]
    case 'too_big':
      return [{ wrong: 'too-large', at, most: Number(issue.maximum) }]
    case 'invalid_type':
      return [{ wrong: valueAt(raw, issue.path) === undefined ? 'missing' : 'not-as-asked', at }]
    default:
      return [{ wrong: 'not-as-asked', at }]
  }
}

function valueAt(raw: unknown, path: readonly PropertyKey[]): unknown {
  let value = raw
  for (const key of path) value = value instanceof Object ? Reflect.get(value, key) : undefined
  return value
}
