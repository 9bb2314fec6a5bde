import { describe, expect, test } from 'vitest'
import { frameRows } from '../../../src/ui/screens/frame.tsx'
import { textOf } from '../../../src/ui/text/line.ts'
import { jobWith, screens } from '../support/bench.ts'

/** A step under way in which some bolts are tightened, seen on a terminal. */
function tightening(
  off: string,
  { size = { width: 80, height: 24 }, passes = '20 Nm, 40 Nm, 90 deg', lines = [] as string[] } = {},
) {
  const { shelf } = jobWith(
    'begin head off, does not hide',
    `off ${off} into new bag`,
    'off cylinder head into bench',
    'end',
    ...lines,
    `tighten head bolts: ${passes}`,
    'take 1',
    'fit cylinder head',
    'fit head bolts',
  )
  const seen = screens(shelf, size)
  seen.enter('step 1')
  return { ...seen, frame: () => frameRows(seen.desk, size).rows.map(textOf) }
}

const many = (letter: string, count: number) =>
  Array.from({ length: count }, (_, index) => `${letter}${index + 1}`)

/** How often each name stands in some rows, as a word of its own. */
function counts(rows: readonly string[], names: readonly string[]): number[] {
  const words = rows.join(' ').split(/[^A-Za-z0-9]+/)
  return names.map((name) => words.filter((word) => word === name).length)
}

/** The rows of the drawing alone: from its heading to the passes. */
function drawing(rows: readonly string[]): string[] {
  const from = rows.findIndex((row) => row.startsWith('TIGHTENING'))
  const to = rows.findIndex((row) => /^ +[>✓·] 1: /.test(row))
  return rows.slice(from + 1, to)
}

describe('a tightening drawn where its bolts lie', () => {
  const names = [...many('A', 20), ...many('B', 20)]

  test.each(['as proposed', '2x20', '5x8', 'circle'])(
    '40 bolts, %s, fit on 80 by 24 with the next one and the line',
    (form) => {
      const lines = form === 'as proposed' ? [] : [`layout head bolts: ${form}`]
      const { frame } = tightening('40 M10x120 E14 head bolts @A1..A20,B1..B20', { lines })
      const rows = frame()
      expect(rows).toHaveLength(24)
      for (const row of rows) expect(row.length).toBeLessThanOrEqual(80)
      expect(counts(drawing(rows), names)).toEqual(names.map(() => 1))
      expect(rows.join('\n')).toMatch(/NEXT: (TURN|A1)/)
      expect(rows.join('\n')).toMatch(/ > 1: 20 Nm +· 2: 40 Nm +· 3: 90 deg/)
    },
  )

  test('40 bolts in one row go on where two dots say so', () => {
    const { frame } = tightening('40 M10x120 E14 head bolts', { lines: ['layout head bolts: row'] })
    const all = Array.from({ length: 40 }, (_, index) => `${index + 1}`)
    expect(counts(drawing(frame()), all)).toEqual(all.map(() => 1))
    expect(drawing(frame()).filter((row) => row.trimEnd().endsWith('..')).length).toBeGreaterThan(0)
  })

  test('200 bolts are listed, and said to be; the next one is in sight', () => {
    const { text, frame, enter } = tightening('200 M8x20 hex 13 head bolts', {
      passes: '20 Nm order 200..1',
    })
    const all = Array.from({ length: 200 }, (_, index) => `${index + 1}`)
    expect(counts(drawing(text().split('\n')), all)).toEqual(all.map(() => 1))
    expect(text()).toContain('Nobody drew how they lie: a list, in order')
    expect(frame().join('\n')).toContain('>200·')
    enter('', '')
    expect(frame().join('\n')).toContain('>198·')
  })

  test('200 in a circle are too many for a picture', () => {
    const { text } = tightening('200 M8x20 hex 13 head bolts', { lines: ['layout head bolts: circle'] })
    expect(text()).toContain('Too many for a picture: a list, in order.')
  })

  test('says which are through, which is next, and which come after it', () => {
    const { enter, frame } = tightening('4 M10x120 E14 head bolts @A1,A2,B1,B2', {
      lines: ['layout head bolts: A1 A2 / B1 B2'],
      passes: '20 Nm, 90 deg order A2,B1,A1,B2',
    })
    enter('', '')
    expect(drawing(frame()).map((row) => row.trim().replace(/ +/g, ' '))).toEqual([
      '[A1 ·] A2 ✓',
      '',
      'B1 ✓ B2 ·',
    ])
    expect(frame().join('\n')).toContain('> 1: 20 Nm 2/4   · 2: 90 deg')
    expect(frame().join('\n')).toContain('then B2')
  })

  test('a bolt that may have been turned stands with a question mark', () => {
    const { enter, frame } = tightening('4 M10x120 E14 head bolts @A1,A2,B1,B2', {
      lines: ['layout head bolts: A1 A2 / B1 B2'],
      passes: '90 deg order A1,A2,B1,B2',
    })
    enter('', 'stop')
    enter('step 1')
    expect(drawing(frame()).join('\n')).toMatch(/A1 ✓ +\[A2 \?\]/)
  })

  test('names that tell of no rows stand in the grid of passes until somebody draws them', () => {
    const { enter, frame } = tightening('4 M10x120 E14 head bolts')
    expect(frame().join('\n')).toMatch(/1 {2}20 Nm +> +· +· +·/)
    enter('layout head bolts: 2x2')
    enter('step 1')
    expect(drawing(frame()).map((row) => row.trim().replace(/ +/g, ' '))).toEqual([
      '[1 ·] 2 ·',
      '',
      '3 · 4 ·',
    ])
  })

  test('a large terminal has room for all of it', () => {
    const size = { width: 160, height: 48 }
    const { frame } = tightening('40 M10x120 E14 head bolts @A1..A20,B1..B20', {
      size,
      lines: ['layout head bolts: circle'],
    })
    expect(counts(drawing(frame()), names)).toEqual(names.map(() => 1))
    expect(drawing(frame()).length).toBeGreaterThan(18)
  })
})

describe('where pieces of several sizes go', () => {
  const lots = [
    'begin pump off, does not hide',
    'off 2 M6x25 hex 10 pump bolts @1,2 into new bag',
    'off 2 M6x110 hex 10 pump bolts @3,4 into new bag',
    'end',
    'layout pump bolts: 2x2',
    'take 1',
  ]

  test('is drawn by size while they go back, with those that are next', () => {
    const { enter, text } = jobWith(...lots)
    enter('step 1')
    expect(text()).toContain('WHERE THEY GO: 4 pump bolts')
    expect(text()).toMatch(/ 1 M6x25 bag 1 +2 M6x25 bag 1/)
    expect(text()).toMatch(/\[3 M6x110 bag 2\] *\[4 M6x110 bag 2\]/)
    enter('')
    expect(text()).toMatch(/\[1 M6x25\] +\[2 M6x25\]/)
    expect(text()).toMatch(/ 3 M6x110 ✓ +4 M6x110 ✓/)
  })

  test('and the arrows of matched pieces with them', () => {
    const { enter, text } = jobWith(
      'begin caps off, does not hide',
      'off cam caps I1..I2 into new bag',
      'end',
      'layout cam caps: I1 I2 arrow left',
      'take 1',
    )
    enter('step 1')
    expect(text()).toMatch(/\[I1 ←\] +I2 ←/)
    enter('')
    expect(text()).toMatch(/ I1 ← ✓ +\[I2 ←\]/)
  })
})
