import { describe, expect, test } from 'vitest'
import type { Going, Where } from '../mistakes/mistake.ts'
import { addTallies } from './add-tallies.ts'
import { auditFindings } from './audit-findings.ts'
import { isMet, jobGoals } from './goal.ts'
import { findingsIn, withFindings } from './in-readme.ts'
import { findingsText } from './mistakes-table.ts'
import { type ClassTally, stoppedAt, type Tally } from './tally.ts'

function row(
  name: string,
  going: Going,
  stopped: Partial<Record<Where, number>>,
  more: Partial<ClassTally> = {},
): ClassTally {
  const { asked = 0, unseen = 0 } = more
  const made = Object.values(stopped).reduce((sum, count) => sum + count, 0) + asked + unseen
  const rest: Pick<ClassTally, 'refusals' | 'passed' | 'group' | 'from' | 'byChance'> = {
    byChance: 0,
    refusals: {},
    passed: [],
    group: 'omission',
    from: 'made up',
  }
  return { name, going, made, stopped: stoppedAt(stopped), asked, unseen, ...rest, ...more }
}

const ROWS: readonly ClassTally[] = [
  row('fastener left out', 'left out', { 'step closed': 9000, 'last gate': 12 }),
  row('hose end left out', 'left out', { 'step closed': 1500 }, { unseen: 1 }),
  row('cap left out', 'left out', { 'next step': 40 }),
  row('matched piece swapped', 'wrong', { 'at once': 1200 }, { group: 'wrong installation' }),
  row(
    'matched piece turned round',
    'wrong',
    { 'step closed': 30 },
    { group: 'wrong installation', unseen: 70 },
  ),
  row('bolt taken out of its order', 'wrong', { 'next line': 9 }, { group: 'wrong installation' }),
  row('bag of another job', 'wrong', { 'at once': 80 }, { group: 'wrong part' }),
  row('pass begun in the middle', 'broken off', { 'at once': 25 }, { group: 'other' }),
  row('fastener, ticked', 'ticked', { 'last round': 900, 'second look': 60 }, { asked: 3, unseen: 37 }),
  row('mark, ticked', 'ticked', {}, { unseen: 11 }),
  row('rag never written down', 'never written', {}, { unseen: 5 }),
]

function tally(from: number, jobs: number, rows: readonly ClassTally[] = []): Tally {
  const costs = {
    lines: 900 * jobs,
    entries: 880 * jobs,
    confirmations: 70 * jobs,
    overrides: 0,
    scans: 4,
    refusals: 2,
    questions: 30 * jobs,
  }
  const shapes = { 'flat twin': jobs }
  return {
    from,
    to: from + jobs,
    mistakes: rows.length === 0 ? 0 : 20,
    jobs,
    cleared: jobs,
    shapes,
    rows: [...rows],
    falseBlocks: [],
    unexplained: [],
    costs,
    byJob: { omissions: { jobs, passed: 0 }, places: { jobs, passed: 0 } },
  }
}

const ABOUT = {
  part: 1,
  date: '2026-11-30',
  seeds: ['jobs with mistakes 1 to 700', 'clean jobs 5001 to 6000'],
}
const goals = jobGoals(tally(1, 700, ROWS), tally(5001, 1000))
const text = findingsText({ ...ABOUT, goals, rows: ROWS, costs: ['A job takes 900 lines.'] })

describe('the goals', () => {
  test('are counted from the rows that they speak of', () => {
    expect(goals.map(({ tries, hits }) => [hits, tries])).toEqual([
      [10_552, 10_553],
      [1200, 1200],
      [1000, 1000],
      [1700, 1700],
    ])
    expect(goals.map(isMet)).toEqual([true, true, true, true])
  })

  test.each([
    [
      'a hold in a clean job',
      { falseBlocks: [{ seed: 5002, shape: 'flat twin', line: 'done', code: 'step-blocked', what: '' }] },
      2,
    ],
    ['a clean job that was not cleared', { cleared: 999 }, 2],
    ['a piece that nothing explains', { unexplained: [{ seed: 5003, shape: 'flat twin', what: '' }] }, 3],
    ['too few clean jobs', { jobs: 999, cleared: 999 }, 2],
  ])('are missed with %s', (_, clean, missed) => {
    const found = jobGoals(tally(1, 700, ROWS), { ...tally(5001, 1000), ...clean })
    expect(found.flatMap((goal, place) => (isMet(goal) ? [] : [place]))).toEqual([missed])
  })

  test('are missed where one in a thousand omissions and one more passes, or a wrong piece is taken at first', () => {
    const passing = row('cap left out', 'left out', {}, { unseen: 11 })
    const taken = row('matched piece swapped', 'wrong', { 'step closed': 1 }, { group: 'wrong installation' })
    const found = jobGoals(tally(1, 700, [...ROWS, passing, taken]), tally(5001, 1000))
    expect(found.map(isMet)).toEqual([false, false, true, true])
  })
})

describe('runs added up', () => {
  test('a kind of mistake made in the same way is one row, and everything counts', () => {
    const [fastener, ...others] = ROWS
    const one = tally(1, 10, [fastener as ClassTally])
    const sum = addTallies(one, tally(11, 5, ROWS))
    expect(sum).toMatchObject({ from: 1, to: 16, jobs: 15, cleared: 15, shapes: { 'flat twin': 15 } })
    expect(sum.rows[0]).toMatchObject({ made: 18_024, stopped: { 'step closed': 18_000, 'last gate': 24 } })
    expect(sum.rows.slice(1)).toEqual(others)
    expect(sum.costs).toMatchObject({ lines: 13_500, scans: 8 })
    expect(one.rows[0]).toBe(fastener)
  })

  test('clean jobs are not added to jobs with mistakes', () => {
    expect(() => addTallies(tally(1, 1), tally(2, 1, ROWS))).toThrow('do not add up')
  })
})

describe('the table', () => {
  test('agrees with itself', () => expect(auditFindings(text)).toEqual([]))

  test('says which part of the whole run it is', () => {
    expect(text).toContain('`npm run bench:mistakes`')
    const some = findingsText({ ...ABOUT, part: 0.04, goals, rows: ROWS, costs: [] })
    expect(some).toContain('`PUTBACK_MISTAKES=0.04 npm run bench:mistakes`')
    expect(auditFindings(some)).toEqual([])
  })

  test('has every kind of mistake under the way in which it is made', () => {
    const names = [...text.matchAll(/^\| (\S.*?) +\| [\d,]+ +\| (?:\d|none|under)/gm)].map(([, name]) => name)
    expect(names).toEqual([
      'omissions of what is on record, not said to be done, stopped before the first start',
      'wrong positions refused at the first wrong piece',
      'jobs without a mistake that nothing refused, held up or said to be not yet due',
      'first starts with every piece home by the record, or its lack told below',
      '**not done, and not said to be done**',
      'fastener left out',
      'hose end left out',
      'cap left out',
      '**done wrongly**',
      'matched piece swapped',
      'matched piece turned round',
      'bag of another job',
      'bolt taken out of its order',
      '**made by who took up broken-off work, after 60 days**',
      'pass begun in the middle',
      '**said to be done, though it was not**',
      'fastener, ticked',
      'mark, ticked',
      '**never told to the record**',
      'rag never written down',
    ])
  })

  test.each([
    ['a count', '9,012', '9,013'],
    ['a place', 'step closed 9,000', 'step closed 8,999'],
    ['a place that has another name', 'last round 900', 'last gate 900'],
    ['what nobody saw', / 37( +)\|$/m, ' 36$1|'],
    ['a limit', /99\.9\d %( to 100 %)/, '99.80 %$1'],
    ['a goal that is met', /yes/, 'no'],
    ['a goal of its own', '99.9 % of 10,000', '99 % of 20,000'],
    ['the day', /on \d{4}-\d\d-\d\d/, 'lately'],
    ['the command', 'npm run bench:mistakes', 'npm test'],
    ['the seeds', /Seeds: .*/, 'Seeds.'],
    ['what it does not prove', 'It proves the tool, not the person', 'It proves all'],
    ['a whole section', /^\| \*\*said to be done.*\n/m, ''],
  ])('changed by hand in %s is found out', (_, was, becomes) => {
    const changed = text.replace(was, becomes)
    expect(changed).not.toBe(text)
    expect(auditFindings(changed)).not.toEqual([])
  })
})

describe('in the README', () => {
  const readme = 'Before.\n\n<!-- mistakes -->\n\nold\n\n<!-- end of mistakes -->\n\nAfter.\n'

  test('it takes the place of the last one, and nothing else changes', () => {
    const written = withFindings(readme, text)
    expect(findingsIn(written)).toBe(text)
    expect(written.replace(text, 'old')).toBe(readme)
  })

  test('without a place for it, it is said so', () => {
    expect(() => withFindings('Before.\n', text)).toThrow('no place for the mistakes')
  })
})
