import { metText } from './mistakes-table.ts'
import { percentDown, shareText } from './share-text.ts'

/** What in the findings, as they stand in Markdown, does not agree with itself. Empty when all of it does. */
export function auditFindings(text: string): string[] {
  const [goals = [], mistakes = []] = tablesIn(text)
  return [
    ...SAYS.filter((what) => !what.test(text)).map((what) => `does not say ${what.source}`),
    ...(goals.length < 4 ? ['has too few goals'] : goals.flatMap(auditGoal)),
    ...(mistakes.length < 10 ? ['has too few mistakes'] : mistakes.flatMap(auditMistake)),
    ...auditSums(mistakes),
  ]
}

const SAYS = [
  /npm run bench:mistakes`/,
  /on \d{4}-\d\d-\d\d/,
  /Seeds: .*\d+ to \d+/,
  /proves the tool, not the person/,
  /Asked: /,
  /Unseen: /,
]

type Row = readonly string[]

function auditGoal(row: Row): string[] {
  const [what = '', tried, so, share, wanted = '', met] = row
  const tries = countOf(tried)
  const hits = countOf(so)
  const [, least = '', of = ''] = /^([\d.]+) % of ([\d,]+)$/.exec(wanted) ?? []
  const goal = { what, tries, hits, least: Number(least) / 100, wanted: countOf(of) }
  return [
    ...differing(`share of ${what}`, share, shareText(hits, tries)),
    ...differing(`wanted of ${what}`, `${least} %`, percentDown(goal.least)),
    ...differing(`met of ${what}`, met, metText(goal)),
  ]
}

function auditMistake(row: Row): string[] {
  const [name, , stopped] = row
  const { made, where, asked, unseen } = countsOf(row)
  const all = sum(where.map(({ count }) => count))
  return [
    ...differing(`${name}, stopped, asked and unseen`, all + asked + unseen, made),
    ...differing(`share of ${name}`, stopped, shareText(all, made)),
  ]
}

/** Each bold line is the sum of those beneath it, up to the next bold one. */
function auditSums(rows: readonly Row[]): string[] {
  const starts = rows.flatMap((row, place) => (isSum(row) ? [place] : []))
  if (starts[0] !== 0) return ['begins without a sum']
  return starts.flatMap((start, nth) => {
    const head = countsOf(rows[start] ?? [])
    const parts = rows.slice(start + 1, starts[nth + 1]).map(countsOf)
    const places = new Set([...head.where, ...parts.flatMap(({ where }) => where)].map(({ place }) => place))
    const name = rows[start]?.[0]
    const at = (counts: Counts, place: string) =>
      sum(counts.where.filter((each) => each.place === place).map(({ count }) => count))
    return [
      ...differing(`made of ${name}`, sum(parts.map(({ made }) => made)), head.made),
      ...differing(`asked of ${name}`, sum(parts.map(({ asked }) => asked)), head.asked),
      ...differing(`unseen of ${name}`, sum(parts.map(({ unseen }) => unseen)), head.unseen),
      ...[...places].flatMap((place) =>
        differing(`${place} of ${name}`, sum(parts.map((part) => at(part, place))), at(head, place)),
      ),
    ]
  })
}

interface Counts {
  made: number
  where: { place: string; count: number }[]
  asked: number
  unseen: number
}

function countsOf([, made, , where = '', asked, unseen]: Row): Counts {
  const parts = where === '' ? [] : where.split(/, (?=[a-z])/)
  return {
    made: countOf(made),
    where: parts.map((part) => {
      const [, place = '', count] = /^(.*) ([\d,]+)$/.exec(part) ?? []
      return { place, count: countOf(count) }
    }),
    asked: countOf(asked),
    unseen: countOf(unseen),
  }
}

function isSum([name = '']: Row): boolean {
  return name.startsWith('**')
}

/** The rows of each table, without their heads. */
function tablesIn(text: string): Row[][] {
  return [...text.matchAll(/(?:^\|.*\|\n?)+/gm)].map(([block]) =>
    block
      .trim()
      .split('\n')
      .slice(2)
      .map((line) =>
        line
          .split('|')
          .slice(1, -1)
          .map((cell) => cell.trim()),
      ),
  )
}

function countOf(text = ''): number {
  return /^\d[\d,]*$/.test(text) ? Number(text.replaceAll(',', '')) : Number.NaN
}

function sum(counts: readonly number[]): number {
  return counts.reduce((total, count) => total + count, 0)
}

function differing<Value>(what: string, found: Value, wanted: Value): string[] {
  return found === wanted ? [] : [`${what} is ${found}, and comes to ${wanted}`]
}
