import { type Going, PLACES } from '../mistakes/mistake.ts'
import { type Goal, isMissed, isTooFew } from './goal.ts'
import { countText, percentDown, shareText } from './share-text.ts'
import type { ClassTally } from './tally.ts'

/** What a run of the simulation came to, as it is shown. */
export interface Findings {
  /** Which part of the whole run it was: 1 for all of it. */
  part: number
  /** The day of the run, `2026-11-30`. */
  date: string
  /** Which seeds each part was run with, in words. */
  seeds: readonly string[]
  goals: readonly Goal[]
  rows: readonly ClassTally[]
  /** What a job takes, in words. */
  costs: readonly string[]
}

/** The command that prints it. */
const COMMAND = 'npm run bench:mistakes'

const SECTIONS: readonly { going: Going; says: string }[] = [
  { going: 'left out', says: 'not done, and not said to be done' },
  { going: 'wrong', says: 'done wrongly' },
  { going: 'broken off', says: 'made by who took up broken-off work, after 60 days' },
  { going: 'ticked', says: 'said to be done, though it was not' },
  { going: 'never written', says: 'never told to the record' },
]

/** All of it in Markdown: the goals, every kind of mistake, what a job takes, and what it does not prove. */
export function findingsText({ part, date, seeds, goals, rows, costs }: Findings): string {
  const sections = SECTIONS.flatMap(({ going, says }) =>
    section(
      says,
      rows.filter((row) => row.going === going),
    ),
  )
  return [
    `Printed by \`${part < 1 ? `PUTBACK_MISTAKES=${part} ` : ''}${COMMAND}\` on ${date}, with limits of 95 % confidence (Clopper and Pearson).`,
    `Seeds: ${seeds.join('; ')}.`,
    'It proves the tool, not the person: what is said to be done and was not is found only where the tool makes one look again,',
    'and what was never told to the record is asked about at most.',
    '',
    table(['', 'tried', 'as wanted', 'share', 'wanted', 'met'], goals.map(goalCells)),
    '',
    'Every kind of mistake, and where it was stopped before the first start. Asked: the tool asks about it and holds up nothing.',
    'Unseen: the first start was cleared over it.',
    '',
    table(['mistake', 'made', 'stopped', 'where', 'asked', 'unseen'], sections),
    '',
    ...costs.map((each) => `- ${each}`),
  ].join('\n')
}

/** In one word whether a goal is met. */
export function metText(goal: Goal): 'yes' | 'no' | 'too few' {
  if (isMissed(goal)) return 'no'
  return isTooFew(goal) ? 'too few' : 'yes'
}

function goalCells(goal: Goal): string[] {
  const { what, tries, hits, least, wanted } = goal
  return [
    what,
    countText(tries),
    countText(hits),
    shareText(hits, tries),
    `${percentDown(least)} of ${countText(wanted)}`,
    metText(goal),
  ]
}

/** A line for each kind, under their sum. */
function section(says: string, rows: readonly ClassTally[]): string[][] {
  if (rows.length === 0) return []
  const [bold = '', ...sums] = rowCells(says, rows)
  return [
    [`**${bold}**`, ...sums],
    ...[...rows].sort((a, b) => b.made - a.made).map((row) => rowCells(row.name, [row])),
  ]
}

function rowCells(says: string, rows: readonly ClassTally[]): string[] {
  const sum = (count: (row: ClassTally) => number) => rows.reduce((total, row) => total + count(row), 0)
  const made = sum((row) => row.made)
  const at = PLACES.map((place) => ({ place, count: sum((row) => row.stopped[place]) }))
  return [
    says,
    countText(made),
    shareText(
      at.reduce((total, { count }) => total + count, 0),
      made,
    ),
    at.flatMap(({ place, count }) => (count > 0 ? [`${place} ${countText(count)}`] : [])).join(', '),
    countText(sum((row) => row.asked)),
    countText(sum((row) => row.unseen)),
  ]
}

/** Columns as wide as their widest cell, as tables stand in Markdown by hand. */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((cell, column) =>
    Math.max(cell.length, ...rows.map((row) => row[column]?.length ?? 0)),
  )
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join(' | ')} |`
  return [line(head), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)].join('\n')
}
