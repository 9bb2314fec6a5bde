import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { groupedCode, labelCode } from '../../../src/label/code.ts'
import type { Drawing, Shape } from '../../../src/label/drawing.ts'
import type { LabelContent } from '../../../src/label/label-content.ts'
import { layOut } from '../../../src/label/layout/lay-out.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { contains, type Footprint, footprints, overlap } from './footprints.ts'
import { bag, blank, flag, tag } from './samples.ts'
import { shippedStock } from './shipped-stock.ts'

const fonts = typeface()
const rolls = ['roll-57x32', 'roll-64x34', 'roll-100x50', 'receipt-58', 'receipt-80']
const sheets = ['a4-8', 'a4-24', 'a4-40', 'a4-65', 'letter-10', 'letter-30']

describe('what each label holds', () => {
  test.each([...rolls, ...sheets])('a bag on %s says all of it', (name) => {
    const { drawing, shortened } = laidOn(name, bag)
    const words = textOf(drawing)
    expect(shortened.filter((part) => part !== 'job')).toEqual([])
    for (const word of ['BAG 3', '1 of 2', 'FIT AGAIN', '017 0003 18', 'valve', 'M6x25', 'hex 8', 'step 1']) {
      expect(words).toContain(word)
    }
  })

  test.each([...rolls, ...sheets])('a blank on %s has at least two lines to write on', (name) => {
    const { drawing } = laidOn(name, blank)
    const rules = drawing.shapes.filter((shape) => shape.kind === 'line')
    expect(rules.length).toBeGreaterThanOrEqual(2)
    expect(textOf(drawing)).toContain('017 0044 89')
    for (const rule of rules) expect(rule.to.x - rule.from.x).toBeGreaterThanOrEqual(14)
  })

  test.each([...rolls, 'a4-8', 'a4-24', 'letter-10', 'a4', 'letter'])(
    'the tag on %s says its state largest',
    (name) => {
      const { drawing } = laidOn(name, tag)
      expect(textOf(drawing)).toContain('NOT READY')
      expect(textOf(drawing)).toContain('14 pieces off')
      const texts = drawing.shapes.filter((shape) => shape.kind === 'text')
      const largest = texts.reduce((a, b) => (b.size > a.size ? b : a))
      expect(largest).toMatchObject({ reversed: true })
    },
  )

  test.each([
    ['a4-24', 3],
    ['letter-10', 3],
    ['roll-64x34', 3],
    ['roll-100x50', 3],
    ['a4-65', 1],
    ['a4-40', 1],
  ])('%s has room for %d symbols', (name, count) => {
    expect(symbolsOf(laidOn(name, bag).drawing)).toHaveLength(count)
  })

  test('a bag of few words has three on 64 x 34 mm, and so has an unused label', () => {
    const few = { ...bag, what: ['8 × cover bolts M6x25'], where: ['cover, step 1'], warnings: [] }
    expect(symbolsOf(laidOn('roll-64x34', few).drawing)).toHaveLength(3)
    expect(symbolsOf(laidOn('roll-64x34', blank).drawing)).toHaveLength(3)
  })

  test('two symbols lie at opposite corners', () => {
    const [one, two] = symbolsOf(laidOn('a4-24', bag).drawing)
    expect(Math.hypot((one?.x ?? 0) - (two?.x ?? 0), (one?.y ?? 0) - (two?.y ?? 0))).toBeGreaterThan(45)
  })

  test('the code and the heading are read at arm’s length on 64 x 34 mm', () => {
    const { drawing } = laidOn('roll-64x34', bag)
    // Digits are 0.73 of the em high; 16 minutes of arc at 70 cm are 3.3 mm.
    expect(sizeOf(drawing, '017 0003 18') * 0.73).toBeGreaterThan(3.3)
    expect(sizeOf(drawing, 'BAG 3') * 0.73).toBeGreaterThan(3.3)
  })

  test('a caution stands white on black behind its sign', () => {
    const { drawing } = laidOn('roll-100x50', { ...bag, warnings: ['arrow to the timing side'] })
    const caution = drawing.shapes.find((shape) => shape.kind === 'text' && shape.reversed)
    expect(caution).toMatchObject({ text: '! arrow to the timing side' })
  })

  test('Greek, Cyrillic and umlauts are set', () => {
    const { drawing } = laidOn('a4-24', { ...bag, what: ['4 × βίδες M8x30', '2 × болты M6', '1 × Öldüse'] })
    expect(textOf(drawing)).toContain('βίδες')
    expect(textOf(drawing)).toContain('болты')
    expect(textOf(drawing)).toContain('Öldüse')
  })
})

describe('what does not fit', () => {
  test('a long name is cut, its count and size are not', () => {
    const what = [`12 × ${'intermediate housing bolts of the long kind '.repeat(8)}M8x65 hex 13`]
    for (const name of ['a4-24', 'a4-40', 'a4-65', 'roll-57x32']) {
      const { drawing, shortened } = laidOn(name, { ...bag, what })
      expect(shortened).toContain('what')
      expect(textOf(drawing)).toMatch(/12 × .*…/)
      expect(textOf(drawing)).toContain('M8x65')
      expect(textOf(drawing)).toContain('hex 13')
    }
  })

  test('of many lots the first are named, and the rest counted', () => {
    const what = Array.from({ length: 30 }, (_, n) => `${n + 2} × bolts M8x${30 + n}`)
    const { drawing, shortened } = laidOn('a4-24', { ...bag, what })
    const words = textOf(drawing)
    const left = Number(/and (\d+) more lots/.exec(words)?.[1])
    const named = what.filter((lot) => words.includes(lot))
    expect(shortened).toContain('what')
    expect(named).toEqual(what.slice(0, 30 - left))
    expect(named.length).toBeGreaterThanOrEqual(3)
  })

  test('on the smallest label half the name is left, and not only that there is one', () => {
    const what = ['6 × extraordinarily long flange head bolts with captive washers M8x40 hex 13']
    const { drawing } = laidOn('a4-65', { ...bag, what, warnings: ['caps are line-bored, never swap'] })
    expect(textOf(drawing)).toMatch(/6 × extraord[a-z ]*…/)
    expect(textOf(drawing)).not.toMatch(/\blots?\b/)
  })

  test('the job is cut at its end, behind its number', () => {
    const { drawing, shortened } = laidOn('a4-24', {
      ...bag,
      job: '017 the blue twin of the neighbour, winter',
    })
    expect(shortened).toContain('job')
    expect(textOf(drawing)).toMatch(/017 the blue [a-z, ]*…/)
  })

  test('characters that the fonts lack are named, with the label', () => {
    const content = { ...bag, what: ['8 × 螺栓 M6'], where: ['cover 🔩'] }
    expect(layOut(content, { width: 64, height: 34 }, { typeface: fonts, dpi: 300 })).toEqual({
      ok: false,
      refusal: { code: 'no-glyph', label: 'bag 3', characters: ['螺', '栓', '🔩'] },
    })
  })

  test('what is not seen, and printer commands, come to plain text or nothing', () => {
    const what = ['8 × \x1b[31mred\x1b[0m bolts\x00\u202e M6', '^XA^FD bolts ^XZ', '\u200b']
    const { drawing } = laidOn('a4-24', { ...bag, what })
    expect(textOf(drawing)).toContain('8 × red bolts M6')
    expect(textOf(drawing)).toContain('^XA^FD bolts ^XZ')
    expect(textOf(drawing)).not.toMatch(/[\p{Cc}\p{Cf}]/u)
  })

  test.each([
    ['a label lower than the smallest symbol', { width: 60, height: 10 }, 'symbol-too-small'],
    ['a label with room for nothing but a symbol', { width: 15, height: 15 }, 'label-too-small'],
  ])('%s is refused', (_, size, code) => {
    const laid = layOut(bag, size, { typeface: fonts, dpi: 600 })
    expect(laid).toMatchObject({ ok: false, refusal: { code, label: 'bag 3' } })
  })

  test('the smallest symbol of a 203 dpi printer takes 14.5 mm, of a 300 dpi printer 12.3 mm', () => {
    // 29 modules with the quiet zone, of 4 dots at 203 dpi (0.5005 mm) and of 5 dots at 300 dpi (0.4233 mm).
    const low = layOut(bag, { width: 60, height: 10 }, { typeface: fonts, dpi: 203 })
    const high = layOut(bag, { width: 60, height: 10 }, { typeface: fonts, dpi: 300 })
    expect(low).toMatchObject({ refusal: { needed: expect.closeTo((29 * 4 * 25.4) / 203, 6) } })
    expect(high).toMatchObject({ refusal: { needed: expect.closeTo((29 * 5 * 25.4) / 300, 6) } })
  })
})

describe('whatever a label says, and however large it is', () => {
  test('nothing overlaps, all lies inside, quiet zones are free, code and kept figures are whole', () => {
    fc.assert(
      fc.property(anyContent, anySize, fc.constantFrom(203, 300, 600), (content, size, dpi) => {
        const laid = layOut(content, size, { typeface: fonts, dpi })
        if (!laid.ok) return
        expectClean(laid.drawing, dpi)
        const words = textOf(laid.drawing)
        expect(words.replaceAll(' ', '')).toContain(groupedCode(content.code).slice(4).replaceAll(' ', ''))
      }),
      { numRuns: 100 },
    )
  })
})

const word = fc.oneof(
  fc.constantFrom(
    'bolt',
    'M6x25',
    'I1–I4',
    'hex',
    '8',
    'Nockenwellenversteller',
    'Ö',
    'Ǻg',
    '×',
    '→',
    'болт',
    '12.5',
  ),
  fc.string({ unit: fc.constantFrom(...'abcWMij1Ä'), minLength: 1, maxLength: 40 }),
)
const text = (most: number) =>
  fc.array(word, { minLength: 1, maxLength: most }).map((words) => words.join(' '))
const texts = fc.array(text(12), { maxLength: 6 })
const code = fc
  .tuple(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 9999 }))
  .map((n) => labelCode(...n))
const anyContent: fc.Arbitrary<LabelContent> = fc.oneof(
  fc.record({
    kind: fc.constant('container' as const),
    name: fc.constant('bag'),
    code,
    heading: fc.oneof(fc.constant('BAG 123'), text(5)),
    part: fc.constantFrom(null, '1 of 2', '10 of 12'),
    what: texts,
    where: texts,
    status: fc.constantFrom('FIT AGAIN', 'EMPTY', 'USED, DO NOT FIT'),
    warnings: texts,
    job: text(6),
    date: fc.constant('2025-11-25'),
  }),
  fc.record({ kind: fc.constant('blank' as const), name: fc.constant('label'), code, job: text(6) }),
  fc.record({
    kind: fc.constant('flag' as const),
    name: fc.constant('flag'),
    code,
    end: fc.constantFrom('A', 'B', 'AA'),
    what: text(4),
    own: text(4),
    others: texts,
    job: text(6),
  }),
  fc.record({
    kind: fc.constant('machine' as const),
    name: fc.constant('tag'),
    code,
    state: fc.constantFrom('NOT READY TO START', 'STARTED'),
    reasons: texts,
    machine: text(6),
    job: text(6),
    date: fc.constant('2025-11-25'),
  }),
)
const anySize = fc.oneof(
  fc.constantFrom(
    ...[...rolls, ...sheets, 'flag-100x25', 'flag-80x20', 'a4'].map((name) => shippedStock(name).label),
  ),
  fc.record({ width: fc.integer({ min: 15, max: 220 }), height: fc.integer({ min: 12, max: 120 }) }),
)

function expectClean(drawing: Drawing, dpi: number): void {
  const all = footprints(drawing, fonts)
  const page = { x: 0, y: 0, width: drawing.width, height: drawing.height }
  for (const each of all) expect({ ...each, inside: contains(page, each) }).toMatchObject({ inside: true })
  for (const [n, a] of all.entries()) {
    for (const b of all.slice(n + 1)) {
      if (overlap(a, b) && !belongTogether(a, b)) expect([a, b]).toEqual('apart')
    }
  }
  for (const { module } of symbolsOf(drawing)) {
    const dots = (module * dpi) / 25.4
    expect(dots).toBeCloseTo(Math.round(dots), 6)
    expect(dots).toBeGreaterThan(3.99)
    expect(module).toBeGreaterThan(0.3999)
  }
}

/** A text and the box it stands in; a box is no more than what it holds. */
function belongTogether(a: Footprint, b: Footprint): boolean {
  const [box, inner] = a.shape.kind === 'box' ? [a, b] : [b, a]
  if (box.shape.kind !== 'box' || inner.shape.kind !== 'text') return false
  return contains(box, inner) && (box.shape.filled === true) === (inner.shape.reversed === true)
}

function laidOn(name: string, content: LabelContent): { drawing: Drawing; shortened: string[] } {
  const { label, dpi } = shippedStock(name)
  const laid = layOut(content, label, { typeface: fonts, dpi })
  if (!laid.ok) throw new Error(`Refused: ${JSON.stringify(laid.refusal)}`)
  return laid
}

function textOf({ shapes }: Drawing): string {
  return shapes.flatMap((shape) => (shape.kind === 'text' ? shape.text : [])).join(' ')
}

function symbolsOf({ shapes }: Drawing): (Shape & { kind: 'symbol' })[] {
  return shapes.filter((shape) => shape.kind === 'symbol')
}

function sizeOf({ shapes }: Drawing, words: string): number {
  const text = shapes.find((shape) => shape.kind === 'text' && shape.text === words)
  return text?.kind === 'text' ? text.size : 0
}

// The pair is tested on its own in flag.test.ts; here it takes part in the random ones.
test('a flag on a sheet label is laid out', () => {
  expect(textOf(laidOn('a4-24', flag).drawing)).toContain('radiator top')
})
