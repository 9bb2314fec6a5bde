import type { Part } from '../label/layout/laid.ts'

/** A label on which not all fits. */
export interface CutLabel {
  /** `bag 3`. */
  label: string
  parts: readonly Part[]
}

/**
 * What does not stand whole on which labels, a line for each part: `shortened names on bag 6, bag 9`. That of the job
 * is not told: its number is in every code.
 */
export function shortenedText(labels: readonly CutLabel[]): string[] {
  return (Object.keys(PARTS) as (keyof typeof PARTS)[]).flatMap((part) => {
    const cut = labels.filter(({ parts }) => parts.includes(part)).map(({ label }) => label)
    if (cut.length === 0) return []
    const more = cut.length > most ? ` and ${cut.length - most} more` : ''
    return [`shortened ${PARTS[part]} on ${cut.slice(0, most).join(', ')}${more}`]
  })
}

const most = 8

const PARTS: Record<Exclude<Part, 'job'>, string> = {
  heading: 'the heading',
  what: 'names',
  where: 'where it goes',
  others: 'where the other end goes',
  warnings: 'cautions',
  reasons: 'reasons',
  machine: 'the name of the machine',
}
