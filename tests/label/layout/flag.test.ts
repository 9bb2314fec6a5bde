import { describe, expect, test } from 'vitest'
import type { Drawing } from '../../../src/label/drawing.ts'
import { layOut } from '../../../src/label/layout/lay-out.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { footprints } from './footprints.ts'
import { flag } from './samples.ts'
import { shippedStock } from './shipped-stock.ts'

const fonts = typeface()
const stocks = ['flag-100x25', 'flag-80x20', 'a4-24', 'roll-64x34', 'roll-64x34-300dpi', 'letter-10', 'a4-8']

describe('folded round the hose', () => {
  test.each(stocks)(
    'the faces of %s stand at the same distance from the fold, on top of each other',
    (name) => {
      const { drawing, faces } = flagOn(name)
      const [left, right] = faces.map(reach) as [Reach, Reach]
      const face = faceBounds(drawing)
      // The fold is the mirror: what is so far left of it comes to lie on what is so far right of it.
      const mirrored = { from: drawing.width - face.left.to, to: drawing.width - face.left.from }
      expect(Math.abs(mirrored.from - face.right.from)).toBeLessThan(0.1)
      expect(Math.abs(mirrored.to - face.right.to)).toBeLessThan(0.1)
      expect(Math.abs(left.top - right.top)).toBeLessThan(0.1)
      expect(Math.abs(left.bottom - right.bottom)).toBeLessThan(0.1)
      for (const [side, bounds] of [
        [left, face.left],
        [right, face.right],
      ] as const) {
        expect(side.from).toBeGreaterThan(bounds.from - 0.1)
        expect(side.to).toBeLessThan(bounds.to + 0.1)
      }
    },
  )

  test.each(stocks)('both faces of %s say the same, upright', (name) => {
    const { drawing, faces } = flagOn(name)
    const [left, right] = faces.map((face) => face.map(({ shape }) => shape))
    expect(left?.length).toBeGreaterThan(3)
    expect(right?.length).toBe(left?.length)
    const shift = (drawing.width + Math.PI * 10) / 2
    for (const [n, shape] of (left ?? []).entries()) {
      const twin = right?.[n]
      if (shape.kind === 'line' || shape.kind === 'polygon') throw new Error(`A face has no ${shape.kind}`)
      expect(twin).toEqual({ ...shape, x: expect.closeTo(shape.x + shift, 6) })
      if (shape.kind === 'text') expect(shape.turn).toBeUndefined()
    }
  })

  test.each([5, 10, 16])('round a hose of %d mm the middle stays free for its girth', (hose) => {
    const { drawing, faces } = flagOn('flag-100x25', hose)
    const [left, right] = faces.map(reach) as [Reach, Reach]
    expect(right.from - left.to).toBeGreaterThanOrEqual(Math.PI * hose)
    const fold = drawing.shapes.filter((shape) => shape.kind === 'line' && shape.dashed)
    expect(fold).toMatchObject([{ from: { x: 50 }, to: { x: 50 } }])
  })

  test('each face names its end, its port, the other end, what it is and the code, with a symbol of its own', () => {
    const { faces } = flagOn('flag-100x25')
    for (const face of faces) {
      const words = face.map(({ shape }) => (shape.kind === 'text' ? shape.text : '')).join(' ')
      for (const word of ['A', 'radiator', 'top', '↔ thermostat', 'coolant hose', '017 0051']) {
        expect(words).toContain(word)
      }
      expect(face.filter(({ shape }) => shape.kind === 'symbol')).toHaveLength(1)
      const sizes = face.flatMap(({ shape }) =>
        shape.kind === 'text' ? { text: shape.text, size: shape.size } : [],
      )
      expect(sizes.reduce((a, b) => (b.size > a.size ? b : a)).text).toBe('A')
    }
  })
})

describe('too short', () => {
  test('the width that would do is named, and does', () => {
    const laid = layOut(flag, { width: 48, height: 50 }, { typeface: fonts, dpi: 203 })
    // By hand: pi x 10 round the hose, and twice a symbol of 29 x 0.5005 mm with 0.8 mm on both sides.
    const needed = Math.PI * 10 + 2 * ((29 * 4 * 25.4) / 203 + 1.6)
    expect(laid).toMatchObject({
      ok: false,
      refusal: { code: 'flag-too-short', width: 48, needed: expect.closeTo(needed, 6), hose: 10 },
    })
    expect(layOut(flag, { width: needed + 0.01, height: 50 }, { typeface: fonts, dpi: 203 }).ok).toBe(true)
  })

  test('the own port is never cut, for two ports may begin alike: the label is refused instead', () => {
    const own = `radiator ${'lower left hand side '.repeat(6)}outlet`
    const laid = layOut({ ...flag, own }, { width: 80, height: 20 }, { typeface: fonts, dpi: 203 })
    expect(laid).toMatchObject({ ok: false, refusal: { code: 'label-too-small', label: flag.name } })
  })
})

interface Reach {
  from: number
  to: number
  top: number
  bottom: number
}

function flagOn(name: string, hose?: number) {
  const { label, dpi } = shippedStock(name)
  const laid = layOut(flag, label, { typeface: fonts, dpi, hose })
  if (!laid.ok) throw new Error(`Refused: ${JSON.stringify(laid.refusal)}`)
  const { drawing } = laid
  const printed = footprints(drawing, fonts).filter(({ shape }) => shape.kind !== 'line')
  const middle = drawing.width / 2
  const faces = [
    printed.filter(({ x, width }) => x + width <= middle),
    printed.filter(({ x }) => x >= middle),
  ]
  expect(faces.flat()).toHaveLength(printed.length)
  return { drawing, faces }
}

function reach(face: ReturnType<typeof footprints>): Reach {
  return {
    from: Math.min(...face.map(({ x }) => x)),
    to: Math.max(...face.map(({ x, width }) => x + width)),
    top: Math.min(...face.map(({ y }) => y)),
    bottom: Math.max(...face.map(({ y, height }) => y + height)),
  }
}

/** From the short marks where the hose begins and ends: each face lies between one of them and its end of the label. */
function faceBounds({ width, shapes }: Drawing) {
  const marks = shapes.flatMap((shape) => (shape.kind === 'line' && !shape.dashed ? shape.from.x : []))
  return {
    left: { from: 0, to: Math.min(...marks) },
    right: { from: Math.max(...marks), to: width },
  }
}
