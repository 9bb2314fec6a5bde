import type { Drawing } from '../label/drawing.ts'
import { pdfOf } from '../label/render/pdf.ts'
import { sheetPages } from '../label/sheet.ts'
import type { Errand } from '../lines/errand.ts'
import type { ErrandOutcome } from '../session/errands.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { type PrintTrouble, printedText, printTroubleTold } from '../words/printing.ts'
import { type Choice, choosePrint } from './choose-print.ts'
import { toFreeFile } from './destinations/free-file.ts'
import { send } from './destinations/send.ts'
import type { Sent } from './destinations/sent.ts'
import { typeface } from './fonts.ts'
import type { Made } from './made.ts'
import { makeDrawings } from './make-drawings.ts'
import { renderLabels } from './render-labels.ts'
import { findStocks, labelsFolder } from './stocks.ts'
import { usualHow } from './usual.ts'

/** Draws what is asked for and sends it where it is to go. */
export async function print(
  { what, how }: Extract<Errand, { errand: 'print' }>,
  session: Session,
  { home, cwd }: { home: string; cwd: string },
): Promise<ErrandOutcome> {
  const { stocks } = findStocks(home)
  const choice = choosePrint(what, how, usualHow(home), stocks)
  if ('code' in choice) return refused(choice)
  const now = new Date()
  const made = makeDrawings(session, what, choice, now)
  if (!made.ok) return refused(made.trouble, made.entries)
  const bytes = await render(made, choice, now)
  if ('code' in bytes) return refused(bytes, made.entries)
  return deliver(bytes, made, choice, { folder: `${labelsFolder(home)}/out`, cwd })
}

async function render(made: Made, choice: Choice, now: Date): Promise<Uint8Array | PrintTrouble> {
  const pages = made.pages ?? onSheets(made.labels, choice)
  if ('code' in pages) return pages
  if (choice.form === 'pdf') return pdfOf(pages, { typeface: typeface(), title: made.title, made: now })
  return renderLabels(made.pages ?? made.labels, choice)
}

function onSheets(
  labels: readonly Drawing[],
  { stock, from, shift, copies }: Choice,
): Drawing[] | PrintTrouble {
  const all = labels.flatMap((label) => Array.from({ length: copies }, () => label))
  const placed = sheetPages(stock, all, { from, shift })
  return placed.ok ? placed.pages : placed.refusal
}

async function deliver(
  bytes: Uint8Array,
  made: Made,
  { target, form, stock }: Choice,
  { folder, cwd }: { folder: string; cwd: string },
): Promise<ErrandOutcome> {
  const about = {
    count: (made.pages ?? made.labels).length,
    unit: made.pages ? ('page' as const) : ('label' as const),
    title: made.title,
    stock: stock.name,
    form,
    notes: made.notes,
  }
  const { entries } = made
  if (target?.target === 'stdout') {
    return {
      ok: true,
      text: printedText({ ...about, where: 'standard output' }),
      entries,
      answer: about,
      bytes,
    }
  }
  const sent: Sent =
    target === null
      ? await toFreeFile(bytes, { folder, name: made.name, ending: ENDINGS[form] })
      : await send(bytes, target, { cwd })
  if (!sent.ok) {
    const trouble: PrintTrouble = {
      code: 'not-sent',
      why: sent.code,
      where: sent.where,
      partly: sent.partly,
      kind: target?.target ?? 'file',
      dealt: made.dealt,
    }
    return { ok: false, exit: 'not-recorded', code: trouble.code, told: printTroubleTold(trouble), entries }
  }
  return {
    ok: true,
    text: printedText({ ...about, where: sent.where }),
    entries,
    answer: { ...about, where: sent.where, bytes: bytes.length, dealt: made.dealt },
  }
}

const ENDINGS = {
  pdf: 'pdf',
  svg: 'svg',
  png: 'png',
  'label-roll': 'label.txt',
  'receipt-roll': 'receipt.bin',
}

function refused(trouble: PrintTrouble, entries: readonly Entry[] = []): ErrandOutcome {
  const code = trouble.code === 'command-refused' ? trouble.refused : trouble.code
  return { ok: false, exit: 'refused', code, told: printTroubleTold(trouble), entries }
}
