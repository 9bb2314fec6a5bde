import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Drawing, Shape } from '../../../src/label/drawing.ts'
import { type TemplateAbout, templatePages } from '../../../src/label/layout/template.ts'
import { svgOf } from '../../../src/label/render/svg.ts'
import type { TemplateContent, TemplatePlace } from '../../../src/label/template-content.ts'
import { typeface } from '../../../src/print/fonts.ts'
import type { PositionLayout } from '../../../src/trade/position-layout/position-layout.ts'
import { proposeLayout } from '../../../src/trade/position-layout/propose-layout.ts'
import { readLayout } from '../../../src/trade/position-layout/read-layout.ts'
import { svgPicture } from '../../support/decode/svg.ts'
import { jsqrCodes, zxingSymbols } from '../../support/decode/symbols.ts'
import { type Ink, inkOf, overprinted } from './ink.ts'

const fonts = typeface()
const a4 = { width: 210, height: 297 }
const letter = { width: 215.9, height: 279.4 }
const code = '017004295'

const capNames = ['I1', 'I2', 'I3', 'I4', 'E1', 'E2', 'E3', 'E4']
const caps = sheet(capNames.map((position) => ({ position, caption: null, stands: false, diameterMm: null })))
const pump = sheet(
  [1, 2, 3, 4, 5, 6].map((n) => ({
    position: `${n}`,
    caption: n === 4 ? 'M6x40 hex 8' : 'M6x25 hex 8',
    stands: n === 4,
    diameterMm: 6,
  })),
)

describe('a set of caps', () => {
  const page = drawn(caps, proposed(caps), { arrow: 'left' })

  test('lies on a sheet turned to where the boxes are larger, one box each', () => {
    expect([page.width, page.height]).toEqual([297, 210])
    const boxes = page.shapes.filter(({ kind }) => kind === 'box')
    expect(boxes).toHaveLength(8)
    expect(new Set(boxes.map((box) => box.kind === 'box' && `${box.width} ${box.height}`)).size).toBe(1)
  })

  test('has I and E in a row each, columns below each other, each name outside its box', () => {
    const at = (name: string) => middle(named(page, name))
    expect(at('I3').y).toBeCloseTo(at('I1').y, 1)
    expect(at('I1').x).toBeLessThan(at('I2').x)
    expect(at('E1').y).toBeGreaterThan(at('I1').y + 20)
    expect(at('E2').x).toBeCloseTo(at('I2').x, 0)
  })

  test('has an arrow at each piece, all to the side whose edge says what they point to', () => {
    const heads = page.shapes.filter((shape) => shape.kind === 'polygon')
    // Each piece has one, and the note at the edge two.
    expect(heads).toHaveLength(8 + 2)
    for (const { points } of heads) {
      const [tip, ...base] = points
      expect(tip?.x).toBeLessThan(Math.min(...base.map(({ x }) => x)))
    }
    const note = page.shapes.find((shape) => shape.kind === 'text' && shape.text === caps.edge)
    expect(note).toMatchObject({ turn: 270 })
    expect(note?.kind === 'text' && note.x).toBeLessThan(20)
  })

  test.each([
    ['up', (tip: number, base: number) => tip < base, 'y'],
    ['down', (tip: number, base: number) => tip > base, 'y'],
    ['left', (tip: number, base: number) => tip < base, 'x'],
    ['right', (tip: number, base: number) => tip > base, 'x'],
  ] as const)('arrows %s point there, and the note stands on that side', (arrow, isBeyond, axis) => {
    const turned = drawn(caps, proposed(caps), { arrow })
    for (const shape of turned.shapes) {
      if (shape.kind !== 'polygon') continue
      const [tip, base] = shape.points
      expect(isBeyond(tip?.[axis] ?? 0, base?.[axis] ?? 0)).toBe(true)
    }
    const inks = inkOf(turned, fonts)
    const note = inks.find(({ shape }) => shape.kind === 'text' && shape.text === caps.edge)
    const boxes = inks.filter(({ shape }) => shape.kind === 'box')
    expect(boxes.every((box) => isBeyond(middle(note)[axis], middle(box)[axis]))).toBe(true)
  })

  test('says what is marked, whose it is, and where it lies', () => {
    expect(textsOf(page)).toEqual(
      expect.arrayContaining([caps.title, caps.home, caps.mark, caps.job, 'tray 3', caps.how, caps.scale]),
    )
  })
})

describe('bolts', () => {
  test('have a hole of their thread and half a millimetre, with a cross hair, and say their size', () => {
    const page = drawn(pump, outline('1 2 3 / 6 5 4', pump))
    const holes = holesOf(page)
    expect(holes.map(({ radius }) => radius * 2)).toEqual(Array(6).fill(6.5))
    for (const { x, y } of holes) {
      const hairs = page.shapes.filter(
        (shape) => shape.kind === 'line' && near(middleOf(shape.from, shape.to), { x, y }),
      )
      expect(hairs).toHaveLength(2)
    }
    expect(textsOf(page).filter((text) => text === 'M6x25 hex 8')).toHaveLength(5)
    expect(page.shapes.find((shape) => shape.kind === 'text' && shape.text === 'M6x40 hex 8')).toMatchObject({
      weight: 'strong',
    })
  })

  test('have nothing written where their heads lie', () => {
    for (const layout of [outline('circle', pump), outline('row', pump), outline('2x3', pump)]) {
      const page = drawn(pump, layout)
      const texts = inkOf(page, fonts).filter(({ shape }) => shape.kind === 'text')
      for (const { x, y } of holesOf(page)) {
        // Across a hexagon flange bolt M6: 14.2 mm at most (ISO 4162, from memory).
        const head = { left: x - 7.1, right: x + 7.1, top: y - 7.1, bottom: y + 7.1 }
        expect(texts.filter((text) => overlap(text, head))).toEqual([])
      }
    }
  })
})

describe('at full size', () => {
  test.each([
    ['row', 20],
    ['2x3', 42],
    ['circle', 35.5],
  ])('%s with %f mm between neighbours has just that between the holes', (typed, pitch) => {
    const result = templatePages(pump, outline(typed, pump), a4, about({ pitch }))
    expect(result).toMatchObject({ ok: true, spacing: { x: pitch, y: pitch, isFullSize: true } })
    const holes = holesOf(pageOf(result))
    for (const [one, other] of [
      [0, 1],
      [1, 2],
      [4, 5],
    ]) {
      expect(distance(holes[one as number], holes[other as number])).toBeCloseTo(pitch, 6)
    }
    if (typed === '2x3') expect(distance(holes[0], holes[3])).toBeCloseTo(pitch, 6)
    if (typed === 'circle') expect(distance(holes[5], holes[0])).toBeCloseTo(pitch, 6)
  })

  test('a check line of 100 mm lies on every sheet', () => {
    for (const paper of [a4, letter]) {
      const page = drawn(caps, proposed(caps), {}, paper)
      const lines = page.shapes.filter((shape) => shape.kind === 'line')
      expect(lines.some(({ from, to }) => Math.abs(to.x - from.x - 100) < 1e-9 && from.y === to.y)).toBe(true)
      expect(textsOf(page)).toContain('this line is 100 mm: print without scaling')
    }
  })

  test('a pitch too large for the paper is refused, and the one named instead fits', () => {
    const result = templatePages(pump, outline('row', pump), a4, about({ pitch: 60 }))
    // Five times 60 mm alone are longer than the longer side.
    expect(result).toMatchObject({ ok: false, refusal: { code: 'template-pitch-large', pitch: 60 } })
    if (result.ok || result.refusal.code !== 'template-pitch-large') return
    const { needs, largest } = result.refusal
    expect(needs.width).toBeGreaterThan(300 + 20)
    expect(needs.width).toBeLessThan(300 + 60)
    expect(isDrawn(pump, 'row', { pitch: largest })).toBe(true)
    expect(isDrawn(pump, 'row', { pitch: (largest ?? 0) + 0.5 })).toBe(false)
    // The paper that is said to be needed is enough.
    expect(templatePages(pump, outline('row', pump), needs, about({ pitch: 60 })).ok).toBe(true)
  })

  test('a pitch at which names would overlap is refused, and the one named instead does', () => {
    const result = templatePages(pump, outline('row', pump), a4, about({ pitch: 8 }))
    expect(result).toMatchObject({ ok: false, refusal: { code: 'template-pitch-small', pitch: 8 } })
    if (result.ok || result.refusal.code !== 'template-pitch-small') return
    const { least } = result.refusal
    expect(isDrawn(pump, 'row', { pitch: least })).toBe(true)
    expect(isDrawn(pump, 'row', { pitch: (least ?? 0) - 0.5 })).toBe(false)
  })
})

describe('too many for the paper', () => {
  const bolts = (count: number) =>
    sheet(
      Array.from({ length: count }, (_, index) => ({
        // Of three digits all, so that fewer are no narrower.
        position: `${index + 101}`,
        caption: 'M8x30',
        stands: false,
        diameterMm: 8,
      })),
    )

  test('a row is refused with the columns that fit, and these do', () => {
    const result = templatePages(bolts(40), outline('row', bolts(40)), a4, about({}))
    expect(result).toMatchObject({ ok: false, refusal: { code: 'template-too-dense', positions: 40 } })
    if (result.ok || result.refusal.code !== 'template-too-dense') return
    const { fits, columns, rows } = result.refusal
    expect(fits).toBe((columns ?? 0) * (rows ?? 0))
    const many = bolts((columns ?? 0) * (rows ?? 0))
    expect(isDrawn(many, `${rows}x${columns}`)).toBe(true)
    expect(isDrawn(bolts(fits + (columns ?? 0)), `${(rows ?? 0) + 1}x${columns}`)).toBe(false)
  })

  test('a circle is refused with the number that fits, and one more does not', () => {
    const result = templatePages(bolts(120), outline('circle', bolts(120)), a4, about({}))
    if (result.ok || result.refusal.code !== 'template-too-dense') return expect.unreachable()
    const { fits } = result.refusal
    expect(fits).toBeGreaterThan(12)
    expect(isDrawn(bolts(fits), 'circle')).toBe(true)
    expect(isDrawn(bolts(fits + 1), 'circle')).toBe(false)
  })
})

describe('refused', () => {
  test('a layout of other positions', () => {
    const result = templatePages(pump, proposed(caps), a4, about({}))
    expect(result).toEqual({
      ok: false,
      refusal: {
        code: 'template-places',
        missing: ['1', '2', '3', '4', '5', '6'],
        twice: [],
        unknown: capNames,
      },
    })
  })

  test.each([
    ['title', { ...caps, title: 'cam caps 🔧' }, '🔧'],
    ['caption', sheet([{ ...(pump.places[0] as TemplatePlace), caption: 'שמאל' }]), 'ש'],
  ])('a %s that the fonts cannot draw', (_what, content, character) => {
    const result = templatePages(content, proposed(content), a4, about({}))
    expect(result).toMatchObject({ ok: false, refusal: { code: 'template-characters' } })
    if (result.ok || result.refusal.code !== 'template-characters') return
    expect(result.refusal.characters).toContain(character)
  })

  test('paper too narrow for the check line', () => {
    const result = templatePages(caps, proposed(caps), { width: 105, height: 148 }, about({}))
    expect(result).toMatchObject({ ok: false, refusal: { code: 'template-page-small' } })
  })
})

describe('the symbols', () => {
  test.each([203, 300])('both are read by two decoders at %i dpi, in far corners', async (dpi) => {
    const page = drawn(caps, proposed(caps), { arrow: 'up', dpi })
    const picture = await svgPicture(svgOf(page, fonts), dpi)
    const found = await zxingSymbols(picture)
    expect(found.map((each) => each.code)).toEqual([code, code])
    expect(jsqrCodes(picture, found, (30 / 25.4) * dpi)).toEqual([code, code])
    const [one, other] = found
    const apart = (distance(one, other) * 25.4) / dpi
    expect(apart).toBeGreaterThan(0.75 * Math.hypot(page.width, page.height))
    expect(textsOf(page).filter((text) => text === '017 0042 95')).toHaveLength(2)
  })

  test('are left out where the set lies in no one container', () => {
    const page = drawn({ ...caps, container: null }, proposed(caps))
    expect(page.shapes.some(({ kind }) => kind === 'symbol')).toBe(false)
  })
})

describe('whatever the layout', () => {
  const position = fc.stringMatching(/^[A-ZÄÖg]?[a-zу]{0,2}[0-9]{1,3}$/)
  const caption = fc.constantFrom(
    null,
    'M6x25',
    'M8x45 hex 12 with washer',
    '2.475',
    'dot to the left, as cast',
  )
  const place = fc.record({
    position,
    caption,
    stands: fc.boolean(),
    diameterMm: fc.constantFrom(null, 4, 6, 8, 12, 20),
  })
  const places = fc.uniqueArray(place, { minLength: 1, maxLength: 40, selector: (each) => each.position })
  const typed = fc.constantFrom('proposed', 'row', 'circle', 'wide', 'tall', 'scattered')
  const cases = fc.record({
    places,
    typed,
    page: fc.constantFrom(a4, letter),
    arrow: fc.constantFrom(null, 'up', 'down', 'left', 'right'),
    pitch: fc.constantFrom(null, null, 18, 25.5, 40),
    hasCode: fc.boolean(),
    long: fc.boolean(),
  })

  test('nothing is printed over anything, all keeps to the margins, and each position stands once', () => {
    let drawings = 0
    fc.assert(
      fc.property(cases, ({ typed: kind, page: paper, hasCode, long, ...each }) => {
        const base = sheet(each.places, long)
        const content = hasCode ? base : { ...base, container: null }
        const result = templatePages(content, layoutOf(kind, content), paper, about(each))
        if (!result.ok) {
          expect(result.refusal.code).toMatch(/^template-(too-dense|pitch-small|pitch-large)$/)
          return
        }
        drawings += 1
        const page = pageOf(result)
        const inks = inkOf(page, fonts)
        expect(overprinted(inks)).toEqual([])
        for (const ink of inks) {
          // The quiet zone of a symbol may lie in the margin: it is no ink.
          const quiet = ink.shape.kind === 'symbol' ? 4 * ink.shape.module : 0
          expect(Math.min(ink.left, ink.top) + quiet).toBeGreaterThan(9)
          expect(ink.right - quiet).toBeLessThan(page.width - 9)
          expect(ink.bottom - quiet).toBeLessThan(page.height - 9)
        }
        for (const { position: name } of content.places) {
          expect(namesIn(page).filter((text) => text === name)).toHaveLength(1)
        }
        const laid = content.places.filter(({ diameterMm }) => diameterMm === null).length
        expect(page.shapes.filter(({ kind: shape }) => shape === 'box')).toHaveLength(laid)
        expect(holesOf(page)).toHaveLength(content.places.length - laid)
      }),
      { numRuns: 150 },
    )
    // More than a third of the cases can be drawn: fewer than a sixth would be no chance.
    expect(drawings).toBeGreaterThan(25)
  })
})

function sheet(places: readonly TemplatePlace[], isLong = false): TemplateContent {
  const title = isLong ? `${'very long names of caps and bolts '.repeat(8)}1–9` : 'cam caps I1–I4, E1–E4'
  return {
    kind: 'template',
    name: 'template',
    title,
    home: isLong ? 'a home that is told at length '.repeat(6) : 'camshafts',
    mark: isLong ? 'a mark that is told at length '.repeat(10) : 'arrow towards the chain',
    edge: isLong ? 'arrow: towards '.repeat(20) : 'arrow: towards the chain',
    how: 'Lay each piece into its own box.',
    scale: 'Not to scale: positions as they lie to each other.',
    check: 'this line is 100 mm: print without scaling',
    job: '017 the blue twin',
    places: [...places],
    container: { name: 'tray 3', code },
  }
}

function about(more: Partial<TemplateAbout>): TemplateAbout {
  return { typeface: fonts, arrow: null, pitch: null, dpi: 300, ...more }
}

function drawn(
  content: TemplateContent,
  layout: PositionLayout,
  more: Partial<TemplateAbout> = {},
  paper = a4,
): Drawing {
  return pageOf(templatePages(content, layout, paper, about(more)))
}

function isDrawn(content: TemplateContent, typed: string, more: Partial<TemplateAbout> = {}): boolean {
  return templatePages(content, outline(typed, content), a4, about(more)).ok
}

function pageOf(result: ReturnType<typeof templatePages>): Drawing {
  if (!result.ok) throw new Error(JSON.stringify(result.refusal))
  const [page, ...more] = result.pages
  if (!page || more.length > 0) throw new Error('not one page')
  return page
}

function positionsOf({ places }: TemplateContent): string[] {
  return places.map(({ position }) => position)
}

function proposed(content: TemplateContent): PositionLayout {
  return proposeLayout(positionsOf(content)).layout
}

function outline(typed: string, content: TemplateContent): PositionLayout {
  const reading = readLayout(typed, positionsOf(content))
  if (!reading.understood) throw new Error(JSON.stringify(reading.fault))
  return reading.value
}

function layoutOf(kind: string, content: TemplateContent): PositionLayout {
  const positions = positionsOf(content)
  const across = Math.ceil(Math.sqrt(positions.length))
  if (kind === 'proposed') return proposed(content)
  if (kind === 'wide') return outline(`2x${Math.ceil(positions.length / 2)}`, content)
  if (kind === 'tall') return outline(`${Math.ceil(positions.length / 3)}x3`, content)
  if (kind !== 'scattered') return outline(kind, content)
  // Every other row is shifted by one, with gaps.
  const places = positions.map((position, index) => {
    const y = Math.floor(index / across)
    return { position, x: 2 * (index % across) + (y % 2), y }
  })
  return { shape: 'free', places }
}

function textsOf({ shapes }: Drawing): string[] {
  return shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))
}

/** What is set in strong type between the two rules: names, and captions that stand out. */
function namesIn({ shapes }: Drawing): string[] {
  const sizes = shapes.flatMap((shape) => (shape.kind === 'text' && shape.weight === 'strong' ? [shape] : []))
  return sizes.map(({ text }) => text)
}

function named(page: Drawing, name: string): Ink | undefined {
  return inkOf(page, fonts).find(({ shape }) => shape.kind === 'text' && shape.text === name)
}

function holesOf({ shapes }: Drawing): Extract<Shape, { kind: 'circle' }>[] {
  return shapes.filter((shape) => shape.kind === 'circle')
}

function middle(ink: Ink | undefined): { x: number; y: number } {
  if (!ink) throw new Error('not drawn')
  return { x: (ink.left + ink.right) / 2, y: (ink.top + ink.bottom) / 2 }
}

function middleOf(one: { x: number; y: number }, other: { x: number; y: number }) {
  return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 }
}

function near(one: { x: number; y: number }, other: { x: number; y: number }): boolean {
  return distance(one, other) < 1e-6
}

function distance(one?: { x: number; y: number }, other?: { x: number; y: number }): number {
  if (!one || !other) throw new Error('not drawn')
  return Math.hypot(one.x - other.x, one.y - other.y)
}

function overlap(one: Omit<Ink, 'shape'>, other: Omit<Ink, 'shape'>): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom
}
