import { wholeDots } from '../label/render/on-dots.ts'
import type { Stock } from '../label/stock.ts'
import type { HowPrinted, Printed, PrintForm, PrintTarget } from '../lines/errand.ts'
import type { PrintTrouble } from '../words/printing.ts'

/** How something is printed, with everything decided. */
export interface Choice {
  stock: Stock
  form: PrintForm
  /** Null is a file in the folder of what is printed, named after what it is. */
  target: PrintTarget | null
  dpi: number
  from: number
  copies: number
  shift: { x: number; y: number }
}

/** What was said goes before what is usual, and that before what suits most. */
export function choosePrint(
  what: Printed,
  said: HowPrinted,
  usual: HowPrinted,
  stocks: ReadonlyMap<string, Stock>,
): Choice | PrintTrouble {
  const isSheet = what.print === 'plan' || what.print === 'template'
  const how = isSheet ? said : withUsual(said, usual, stocks)
  const name = how.stock ?? (isSheet ? paperOf(usual, stocks) : usualStock(what, how))
  const stock = stocks.get(name.toLowerCase())
  if (!stock) return { code: 'no-such-stock', stock: name, known: [...stocks.keys()] }
  const vain = saidInVain(what, said)
  if (vain) return { code: 'only-for-labels', what: vain }
  const target = how.to ?? null
  const form = how.form ?? formFor(stock, target)
  if (isRoll(form) && isPages(what)) return { code: 'not-on-a-roll', form }
  if (isRoll(form) && stock.kind === 'sheet') return { code: 'stock-is-no-roll', stock: stock.name, form }
  const dpi = how.dpi ?? stock.dpi
  const { from = 1, copies = 1 } = how
  if (copies < 1) return { code: 'no-copies' }
  const { width, height } = dotsOf(isPages(what) ? stock.page : stock.label, dpi)
  const areDots = form !== 'pdf' && form !== 'svg'
  if (areDots && width * height > MOST_DOTS) return { code: 'too-many-dots', width, height, dpi }
  return { stock, form, target, dpi, from, copies, shift: how.shift ?? { x: 0, y: 0 } }
}

/**
 * A target of one's own goes with the usual stock, but a stock of one's own not with the printer of another; nor does a
 * form that it does not take: a printer of rolls would print the inside of a PDF as text.
 */
function withUsual(said: HowPrinted, usual: HowPrinted, stocks: ReadonlyMap<string, Stock>): HowPrinted {
  const ofOther = said.stock !== undefined && said.stock !== usual.stock
  const { form, to, dpi, shift, ...rest } = usual
  const stock = stocks.get(usual.stock ?? '')
  const takes = form ?? (stock && formFor(stock, to ?? null))
  const otherForm = said.form !== undefined && takes !== undefined && said.form !== takes
  const printer = ofOther || otherForm || said.to !== undefined ? {} : { form, to, dpi }
  const shifted = ofOther ? {} : { shift }
  return defined({ ...rest, ...printer, ...shifted, ...said })
}

/** A picture holds one label: what to say of more, or null. */
export function tooManyForPicture({ form, copies }: Choice, labels: number): PrintTrouble | null {
  const count = labels * copies
  const isPicture = form === 'svg' || form === 'png'
  return isPicture && count !== 1 ? { code: 'one-label-only', count, form } : null
}

/** What was said of single labels, where whole pages are printed: it would change nothing, and nobody would know. */
function saidInVain(what: Printed, { from, shift }: HowPrinted): 'from' | 'shift' | null {
  if (from !== undefined && isPages(what)) return 'from'
  // The calibration page shows what a shift does.
  return shift !== undefined && isPages(what) && what.print !== 'calibration' ? 'shift' : null
}

function isPages({ print }: Printed): boolean {
  return print === 'plan' || print === 'template' || print === 'calibration'
}

/** Twice an A4 page at 600 dpi. The rasteriser holds four bytes for each dot. */
const MOST_DOTS = 70_000_000

function dotsOf({ width, height }: { width: number; height: number }, dpi: number) {
  return { width: wholeDots(width, dpi), height: wholeDots(height, dpi) }
}

function defined(how: HowPrinted): HowPrinted {
  return Object.fromEntries(Object.entries(how).filter(([, value]) => value !== undefined))
}

function usualStock(what: Printed, { form, to }: HowPrinted): string {
  if (form === 'receipt-roll') return 'receipt-80'
  if (what.print === 'flags' && form !== 'pdf' && (isRoll(form) || to?.target === 'tcp')) return 'flag-100x25'
  if (form === 'label-roll' || form === 'svg' || form === 'png') return 'roll-64x34'
  return to?.target === 'tcp' || to?.target === 'device' ? 'roll-64x34' : 'a4-24'
}

/** The size of paper that goes with the labels: Letter where those are on Letter. */
function paperOf({ stock = '' }: HowPrinted, stocks: ReadonlyMap<string, Stock>): string {
  return Math.abs((stocks.get(stock)?.page.width ?? 0) - 215.9) < 0.1 ? 'letter' : 'a4'
}

/** A printer on the network or a cable takes its own commands; everything else is a PDF. */
function formFor({ kind }: Stock, target: PrintTarget | null): PrintForm {
  if (kind === 'sheet' || target === null || target.target === 'file') return 'pdf'
  return kind === 'receipt' ? 'receipt-roll' : 'label-roll'
}

function isRoll(form: PrintForm | undefined): boolean {
  return form === 'label-roll' || form === 'receipt-roll'
}
