import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { labelsOnPage, readStock } from '../../src/label/stock.ts'

const a4Of24 = {
  name: 'a4-24',
  says: '24 labels on A4',
  page: { width: 210, height: 297 },
  columns: 3,
  rows: 8,
  label: { width: 64, height: 33.9 },
  margin: { left: 6.5, top: 12.9 },
  gap: { x: 2.5, y: 0 },
  corner: 2,
  dpi: 600,
  kind: 'sheet',
}

const shipped = readdirSync('labels').filter((file) => file.endsWith('.json'))

describe('the stocks in labels/', () => {
  test.each(shipped)('%s is a stock named as its file', (file) => {
    const reading = readStock(JSON.parse(readFileSync(`labels/${file}`, 'utf8')))
    expect(reading).toMatchObject({ ok: true, stock: { name: file.replace('.json', '') } })
  })

  // A4 of ISO 216; Letter 8.5 by 11 inches, as ANSI/ASME Y14.1 has its size A.
  test.each(shipped.filter((file) => /^(a4|letter)/.test(file)))('%s is as large as its paper', (file) => {
    const { page } = JSON.parse(readFileSync(`labels/${file}`, 'utf8'))
    const paper = file.startsWith('a4') ? [210, 297] : [8.5 * 25.4, 11 * 25.4]
    expect(page.width).toBeCloseTo(paper[0] ?? 0, 6)
    expect(page.height).toBeCloseTo(paper[1] ?? 0, 6)
  })

  // Labels are cut symmetrically out of the paper; a typing slip in one measure shows as a lopsided sheet.
  test.each(shipped)('%s lies in the middle of its page', (file) => {
    const { page, columns, rows, label, margin, gap } = JSON.parse(readFileSync(`labels/${file}`, 'utf8'))
    const right = page.width - margin.left - columns * label.width - (columns - 1) * gap.x
    const bottom = page.height - margin.top - rows * label.height - (rows - 1) * gap.y
    expect(Math.abs(right - margin.left)).toBeLessThan(0.11)
    expect(Math.abs(bottom - margin.top)).toBeLessThan(0.11)
  })

  test.each([
    ['a4-8.json', 8],
    ['a4-24.json', 24],
    ['a4-40.json', 40],
    ['a4-65.json', 65],
    ['letter-10.json', 10],
    ['letter-30.json', 30],
    ['a4.json', 1],
    ['flag-100x25.json', 1],
  ])('%s holds %d labels', (file, labels) => {
    const reading = readStock(JSON.parse(readFileSync(`labels/${file}`, 'utf8')))
    expect(reading.ok && labelsOnPage(reading.stock)).toBe(labels)
  })
})

describe('what is no stock, and why', () => {
  test.each([
    ['nothing', null, [{ wrong: 'not-as-asked', at: '' }]],
    ['a text', 'a4-24', [{ wrong: 'not-as-asked', at: '' }]],
    ['a list', [a4Of24], [{ wrong: 'not-as-asked', at: '' }]],
    ['no width', { ...a4Of24, page: { height: 297 } }, [{ wrong: 'missing', at: 'page.width' }]],
    ['a measure in words', { ...a4Of24, corner: '2 mm' }, [{ wrong: 'not-as-asked', at: 'corner' }]],
    ['no number', { ...a4Of24, corner: Number.NaN }, [{ wrong: 'not-as-asked', at: 'corner' }]],
    [
      'an endless page',
      { ...a4Of24, page: { width: 210, height: Number.POSITIVE_INFINITY } },
      [{ wrong: 'not-as-asked', at: 'page.height' }],
    ],
    [
      'labels that overlap',
      { ...a4Of24, gap: { x: -1, y: 0 } },
      [{ wrong: 'too-small', at: 'gap.x', least: 0 }],
    ],
    ['no columns', { ...a4Of24, columns: 0 }, [{ wrong: 'too-small', at: 'columns', least: 1 }]],
    ['half a row', { ...a4Of24, rows: 7.5 }, [{ wrong: 'not-as-asked', at: 'rows' }]],
    [
      'a page of a kilometre',
      { ...a4Of24, page: { width: 1e6, height: 297 } },
      [{ wrong: 'too-large', at: 'page.width', most: 1000 }],
    ],
    [
      'a fourth column',
      { ...a4Of24, columns: 4 },
      [{ wrong: 'beyond-page', at: 'columns', reach: 270, page: 210 }],
    ],
    [
      'too far down',
      { ...a4Of24, margin: { left: 6.5, top: 30 } },
      [{ wrong: 'beyond-page', at: 'rows', reach: expect.closeTo(301.2, 6), page: 297 }],
    ],
    [
      'a roll wider than any printer of rolls',
      { ...a4Of24, kind: 'roll', page: { width: 300, height: 297 } },
      [{ wrong: 'too-large', at: 'page.width', most: 216 }],
    ],
    [
      'corners rounder than a circle',
      { ...a4Of24, corner: 17 },
      [{ wrong: 'too-large', at: 'corner', most: 16.95 }],
    ],
    [
      'fields nobody knows',
      { ...a4Of24, brand: 'x', page: { width: 210, height: 297, depth: 1 } },
      expect.arrayContaining([
        { wrong: 'not-known', at: 'brand' },
        { wrong: 'not-known', at: 'page.depth' },
      ]),
    ],
    ['a name that is a path', { ...a4Of24, name: '../a4' }, [{ wrong: 'not-as-asked', at: 'name' }]],
    [
      'a line that steers the terminal',
      { ...a4Of24, says: '\x1b[2J' },
      [{ wrong: 'not-as-asked', at: 'says' }],
    ],
    ['another kind', { ...a4Of24, kind: 'drum' }, [{ wrong: 'not-as-asked', at: 'kind' }]],
  ])('%s', (_, raw, faults) => {
    expect(readStock(raw)).toEqual({ ok: false, refusal: { code: 'not-a-stock', faults } })
  })

  test('any value at all is answered, never thrown at', () => {
    fc.assert(
      fc.property(fc.anything(), fc.constantFrom(...Object.keys(a4Of24)), (value, field) => {
        expect(typeof readStock(value).ok).toBe('boolean')
        expect(typeof readStock({ ...a4Of24, [field]: value }).ok).toBe('boolean')
      }),
    )
  })
})
