import type { Drawing } from '../label/drawing.ts'
import type { LabelContent } from '../label/label-content.ts'
import type { LayoutRefusal } from '../label/layout/laid.ts'
import { layOut } from '../label/layout/lay-out.ts'
import type { Entry } from '../session/stored-entry.ts'
import type { PrintTrouble } from '../words/printing.ts'
import { type CutLabel, shortenedText } from '../words/shortened-labels.ts'
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

/** What was recorded before labels are drawn. */
export type Recorded = Partial<Pick<Made, 'entries' | 'dealt'>>

/** Nothing was drawn, and why. */
export function notMade(trouble: PrintTrouble, entries: readonly Entry[] = []): NotMade {
  return { ok: false, trouble, entries }
}

/** Whole pages. */
export function madePages(pages: Drawing[], about: { title: string; name: string; notes?: string[] }): Made {
  return { ok: true, labels: [], pages, notes: [], entries: [], dealt: null, ...about }
}

/** The number of the job as files are named by it, and as it stands on every label: `017`. */
export function jobPart(no: number): string {
  return String(no).padStart(3, '0')
}

/** Labels, laid out for their stock. `entries` and `dealt`: what was recorded for them before. */
export function madeLabels(
  contents: readonly LabelContent[],
  { stock, dpi }: Choice,
  about: { title: string; name: string } & Recorded,
): Made | NotMade {
  const labels: Drawing[] = []
  const cut: CutLabel[] = []
  const refusals: LayoutRefusal[] = []
  for (const content of contents) {
    const laid = layOut(content, stock.label, { typeface: typeface(), dpi })
    if (!laid.ok) {
      refusals.push(laid.refusal)
      continue
    }
    labels.push(laid.drawing)
    cut.push({ label: content.name, parts: laid.shortened })
  }
  const [refused] = refusals
  if (refused) {
    // All at once, so that they are not found one print after the other.
    return notMade(refusals.length === 1 ? refused : { code: 'labels-not-drawn', refusals }, about.entries)
  }
  return { ok: true, labels, pages: null, notes: shortenedText(cut), entries: [], dealt: null, ...about }
}
