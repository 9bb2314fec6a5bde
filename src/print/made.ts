import type { Drawing } from '../label/drawing.ts'
import type { LabelContent } from '../label/label-content.ts'
import { layOut } from '../label/layout/lay-out.ts'
import type { Entry } from '../session/stored-entry.ts'
import type { PrintTrouble } from '../words/printing.ts'
import type { Choice } from './choose-print.ts'
import { typeface } from './fonts.ts'

/** What was drawn: labels one by one, or whole pages. */
export interface Made {
  ok: true
  labels: Drawing[]
  pages: Drawing[] | null
  /** In words, and as its file is named. */
  title: string
  name: string
  notes: string[]
  /** What was recorded for it. */
  entries: readonly Entry[]
  /** The numbers dealt to the labels of this run. */
  dealt: { from: number; to: number } | null
}

export interface NotMade {
  ok: false
  trouble: PrintTrouble
  entries: readonly Entry[]
}

/** Nothing was drawn, and why. */
export function notMade(trouble: PrintTrouble, entries: readonly Entry[] = []): NotMade {
  return { ok: false, trouble, entries }
}

/** Whole pages. */
export function madePages(pages: Drawing[], about: { title: string; name: string; notes?: string[] }): Made {
  return { ok: true, labels: [], pages, notes: [], entries: [], dealt: null, ...about }
}

/** Labels, laid out for their stock. */
export function madeLabels(
  contents: readonly LabelContent[],
  { stock, dpi }: Choice,
  about: { title: string; name: string; entries?: readonly Entry[]; dealt?: Made['dealt'] },
): Made | NotMade {
  const labels: Drawing[] = []
  const notes: string[] = []
  for (const content of contents) {
    const laid = layOut(content, stock.label, { typeface: typeface(), dpi })
    if (!laid.ok) return notMade(laid.refusal, about.entries)
    labels.push(laid.drawing)
    if (laid.shortened.length > 0) notes.push(`${content.name}: shortened ${laid.shortened.join(', ')}`)
  }
  return { ok: true, labels, pages: null, notes, entries: [], dealt: null, ...about }
}
