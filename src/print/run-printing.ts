import { mkdirSync } from 'node:fs'
import { basename } from 'node:path'
import type { Errand } from '../lines/errand.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import type { Session } from '../session/session.ts'
import { badStockText, howText, type PrintTrouble, printTroubleTold, sizeText } from '../words/printing.ts'
import { print } from './print.ts'
import { findStocks, labelsFolder } from './stocks.ts'
import { keepUsual, usualHow } from './usual.ts'

type Printing = Extract<Errand, { errand: 'print' | 'print-usual' | 'stocks' }>

/** Prints, or tells and keeps how it is done. `home` is the folder of the jobs, `cwd` where paths begin. */
export async function runPrinting(
  errand: Printing,
  session: Session,
  places: { home: string; cwd: string },
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

function usual({ how }: Extract<Errand, { errand: 'print-usual' }>, home: string): ErrandOutcome {
  const { stocks } = findStocks(home)
  const trouble = usualTrouble(how, stocks)
  if (trouble)
    return { ok: false, exit: 'refused', code: trouble.code, told: printTroubleTold(trouble), entries: [] }
  if (Object.values(how).some((each) => each !== undefined)) {
    mkdirSync(home, { recursive: true, mode: 0o700 })
    keepUsual(home, { ...usualHow(home), ...how })
  }
  const now = usualHow(home)
  return { ok: true, text: [howText(now)], entries: [], answer: now }
}

function usualTrouble(
  { stock, from, copies, to }: Extract<Errand, { errand: 'print-usual' }>['how'],
  stocks: ReadonlyMap<string, unknown>,
): PrintTrouble | null {
  if (stock !== undefined && !stocks.has(stock))
    return { code: 'no-such-stock', stock, known: [...stocks.keys()] }
  if (from !== undefined || copies !== undefined)
    return { code: 'not-usual', what: from === undefined ? 'copies' : 'from' }
  return to?.target === 'file' || to?.target === 'stdout' ? { code: 'not-usual', what: 'file' } : null
}

function stocks(home: string): ErrandOutcome {
  const { stocks: known, bad } = findStocks(home)
  const rows = [...known.values()].map((stock) => `${stock.name.padEnd(14)}  ${stock.says}${sizeText(stock)}`)
  return {
    ok: true,
    text: [
      ...rows,
      ...bad.map(({ path, why }) => badStockText(basename(path), why)),
      `A stock of your own is a file of measures in ${labelsFolder(home)}.`,
    ],
    entries: [],
    answer: { stocks: [...known.values()], bad },
  }
}
