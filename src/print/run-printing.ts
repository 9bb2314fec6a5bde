import { mkdirSync } from 'node:fs'
import { basename } from 'node:path'
import type { Stock } from '../label/stock.ts'
import type { Errand, HowPrinted } from '../lines/errand.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import type { Session } from '../session/session.ts'
import { badStockText, howText, type PrintTrouble, printTroubleTold } from '../words/printing.ts'
import { type PrintPlaces, print } from './print.ts'
import { findStocks, labelsFolder } from './stocks.ts'
import { keepUsual, usualHow } from './usual.ts'

type Printing = Extract<Errand, { errand: 'print' | 'print-usual' | 'stocks' }>
type Usual = Extract<Errand, { errand: 'print-usual' }>

/** Prints, or tells and keeps how it is done. `home` is the folder of the jobs, `cwd` where paths begin. */
export async function runPrinting(
  errand: Printing,
  session: Session,
  places: PrintPlaces,
): Promise<ErrandOutcome> {
  switch (errand.errand) {
    case 'print':
      return print(errand, session, places)
    case 'print-usual':
      return usual(errand, places.home)
    case 'stocks':
      return stocks(places.home)
    default:
      return errand satisfies never
  }
}

function usual({ how }: Usual, home: string): ErrandOutcome {
  const { stocks } = findStocks(home)
  const trouble = how && usualTrouble(how, stocks)
  if (trouble)
    return { ok: false, exit: 'refused', code: trouble.code, told: printTroubleTold(trouble), entries: [] }
  const before = usualHow(home)
  const now = how === null ? {} : usualNow(before, how, stocks)
  if (now !== before) {
    mkdirSync(home, { recursive: true, mode: 0o700 })
    keepUsual(home, now)
  }
  return { ok: true, text: [howText(now)], entries: [], answer: now }
}

/** Another stock is in another printer, unless that is said too. */
function usualNow(before: HowPrinted, how: HowPrinted, stocks: ReadonlyMap<string, Stock>): HowPrinted {
  if (Object.keys(how).length === 0) return before
  const kindOf = ({ stock }: HowPrinted) => stocks.get(stock ?? '')?.kind
  const isOther = how.stock !== undefined && kindOf(how) !== kindOf(before)
  return isOther ? how : { ...before, ...how }
}

function usualTrouble(
  { stock, from, copies, to }: HowPrinted,
  stocks: ReadonlyMap<string, Stock>,
): PrintTrouble | null {
  if (stock !== undefined && !stocks.has(stock))
    return { code: 'no-such-stock', stock, known: [...stocks.keys()] }
  if (from !== undefined || copies !== undefined)
    return { code: 'not-usual', what: from === undefined ? 'copies' : 'from' }
  return to?.target === 'file' || to?.target === 'stdout' ? { code: 'not-usual', what: 'file' } : null
}

function stocks(home: string): ErrandOutcome {
  const { stocks: known, bad } = findStocks(home)
  const widest = Math.max(...[...known.keys()].map((name) => name.length))
  const rows = [...known.values()].map(({ name, says }) => `${name.padEnd(widest)}  ${says}`)
  return {
    ok: true,
    text: [
      ...rows,
      ...bad.map(({ path, why }) => badStockText(basename(path), why)),
      'Check the measures against your sheet or roll: "labels calibration on NAME".',
      `A stock of your own is a file of measures in ${labelsFolder(home)}.`,
    ],
    entries: [],
    answer: { stocks: [...known.values()], bad },
  }
}
