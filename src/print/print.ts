import { join } from 'node:path'
import type { Drawing } from '../label/drawing.ts'
import { pdfOf } from '../label/render/pdf.ts'
import { sheetPages } from '../label/sheet.ts'
import type { Errand, PrintTarget } from '../lines/errand.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { entryText } from '../words/entries.ts'
import { type PrintTrouble, printedText, printTroubleTold } from '../words/printing.ts'
import { type Choice, choosePrint } from './choose-print.ts'
import { toFreeFile } from './destinations/free-file.ts'
import { send } from './destinations/send.ts'
import type { Sent } from './destinations/sent.ts'
import { missingPart, typeface } from './fonts.ts'
import type { Made } from './made.ts'
import { makeDrawings } from './make-drawings.ts'
import { renderLabels } from './render-labels.ts'
import { findStocks, labelsFolder } from './stocks.ts'
import { usualHow } from './usual.ts'

/** Where things lie around a print. */
export interface PrintPlaces {
  /** The folder of the jobs. */
  home: string
  /** Where paths begin. */
  cwd: string
  /** Whether there is a standard output that takes a file. */
  stdout: boolean
}

/** Draws what is asked for and sends it where it is to go. */
export async function print(
  { what, how }: Extract<Errand, { errand: 'print' }>,
  session: Session,
  { home, cwd, stdout }: PrintPlaces,
): Promise<ErrandOutcome> {
  const { stocks } = findStocks(home)
  const choice = choosePrint(what, how, usualHow(home), stocks)
  if ('code' in choice) return failed(session, choice)
  if (choice.target?.target === 'stdout' && !stdout) return failed(session, { code: 'no-standard-output' })
  const missing = missingPart()
  if (missing !== null) return failed(session, { code: 'part-missing', part: missing })
  const now = new Date()
  const made = makeDrawings(session, what, choice, now)
  if (!made.ok) return failed(session, made.trouble, made.entries)
  const bytes = await render(made, choice, now)
  if ('code' in bytes) return failed(session, bytes, made.entries)
  return deliver(bytes, { session, made, choice, folder: join(labelsFolder(home), 'out'), cwd })
}

async function render(made: Made, choice: Choice, now: Date): Promise<Uint8Array | PrintTrouble> {
  const pages = made.pages ? repeated(made.pages, choice.copies) : onSheets(made.labels, choice)
  if ('code' in pages) return pages
  if (choice.form === 'pdf') return pdfOf(pages, { typeface: typeface(), title: made.title, made: now })
  return renderLabels(made.pages ? pages : made.labels, choice)
}

/** One whole set after the other. */
function repeated(pages: Drawing[], copies: number): Drawing[] {
  return Array.from({ length: copies }, () => pages).flat()
}

function onSheets(
  labels: readonly Drawing[],
  { stock, from, shift, copies }: Choice,
): Drawing[] | PrintTrouble {
  const all = labels.flatMap((label) => Array.from({ length: copies }, () => label))
  const placed = sheetPages(stock, all, { from, shift })
  return placed.ok ? placed.pages : placed.refusal
}

interface Delivery {
  session: Session
  made: Made
  choice: Choice
  /** Where what has no target of its own goes. */
  folder: string
  cwd: string
}

async function deliver(
  bytes: Uint8Array,
  { session, made, choice, folder, cwd }: Delivery,
): Promise<ErrandOutcome> {
  const { target, form, stock } = choice
  const { title, notes, entries, dealt } = made
  const count = (made.pages ?? made.labels).length
  const unit = made.pages ? 'page' : 'label'
  const done = (kind: PrintTarget['target'], where: string): ErrandOutcome => ({
    ok: true,
    text: [
      ...entriesText(session, entries),
      ...printedText({ title, count, unit, stock: stock.name, form, kind, where, notes }),
    ],
    entries,
    answer: { title, count, stock: stock.name, form, where, dealt, notes },
    ...(kind === 'stdout' && { bytes }),
  })
  if (target?.target === 'stdout') return done('stdout', 'standard output')
  const kind = target?.target ?? 'file'
  const sent: Sent =
    target === null
      ? await toFreeFile(bytes, { folder, name: made.name, ending: ENDINGS[form] })
      : await send(bytes, target, { cwd })
  if (sent.ok) return done(kind, sent.where)
  const { code: why, where, partly } = sent
  return failed(session, { code: 'not-sent', why, where, partly, kind, dealt }, entries)
}

const ENDINGS = {
  pdf: 'pdf',
  svg: 'svg',
  png: 'png',
  'label-roll': 'label.txt',
  'receipt-roll': 'receipt.bin',
}

function failed(session: Session, trouble: PrintTrouble, entries: readonly Entry[] = []): ErrandOutcome {
  return {
    ok: false,
    exit: trouble.code === 'not-sent' ? 'not-recorded' : 'refused',
    code: trouble.code === 'command-refused' ? trouble.refused : trouble.code,
    told: printTroubleTold(trouble),
    entries,
    text: entriesText(session, entries),
  }
}

function entriesText({ state }: Session, entries: readonly Entry[]): string[] {
  return entries.map((entry) => `${entry.n}  ${entryText(state, entry)}`)
}
