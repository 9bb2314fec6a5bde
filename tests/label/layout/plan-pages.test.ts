import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { groupedCode, labelCode } from '../../../src/label/code.ts'
import type { Drawing, Shape } from '../../../src/label/drawing.ts'
import { planPages } from '../../../src/label/layout/plan-pages.ts'
import type { PlanItem, PlanStep, PrintedPlan } from '../../../src/label/printed-plan.ts'
import { pdfOf } from '../../../src/label/render/pdf.ts'
import { typeface } from '../../../src/print/fonts.ts'
import { pdfPicture } from '../../support/decode/pdf.ts'
import { zxingSymbols } from '../../support/decode/symbols.ts'

// ISO 216 and the definition of Letter, in millimetres.
const A4 = { width: 210, height: 297 }
const LETTER = { width: 215.9, height: 279.4 }
const about = { typeface: typeface(), dpi: 600 }

describe.each([
  ['A4', A4],
  ['Letter', LETTER],
])('on %s', (_, page) => {
  test('every page has the job, the date and its number in its head, and its own size', () => {
    const pages = laid(plan({ steps: steps(30) }), page)
    expect(pages.length).toBeGreaterThan(3)
    for (const [index, { width, height, shapes }] of pages.entries()) {
      expect({ width, height }).toEqual(page)
      const texts = textsOf(shapes)
      expect(texts[0]).toBe('017 the blue twin')
      expect(texts[1]).toBe(`25 Nov 2026 · page ${index + 1} of ${pages.length}`)
    }
  })

  test('nothing lies outside the margins or over anything else', () => {
    for (const drawing of laid(plan({ steps: steps(12) }), page)) expect(faultsOf(drawing)).toEqual([])
  })
})

test('every step has a symbol of its own that another program reads, and its code beside it in digits', async () => {
  const pages = laid(plan({ steps: steps(9) }), A4)
  const read: string[] = []
  const pdf = await pdfOf(pages, { typeface: typeface(), title: 'plan', made: new Date(0) })
  for (const number of pages.keys()) {
    const found = await zxingSymbols(await pdfPicture(pdf, 300, number + 1))
    read.push(...found.sort((a, b) => a.y - b.y).map(({ code }) => code))
  }
  const codes = [9000, ...Array.from({ length: 9 }, (_, n) => 9001 + n)].map((no) => labelCode(17, no))
  expect(read).toEqual(codes)
  const texts = pages.flatMap(({ shapes }) => textsOf(shapes))
  for (const code of codes) expect(texts).toContain(groupedCode(code))
})

test('a step above those that a label code has room for has no symbol', () => {
  const [page] = laid(plan({ steps: [step(1000, { code: null })] }), A4)
  expect(page?.shapes.filter(({ kind }) => kind === 'symbol')).toHaveLength(1)
})

test('there is a box for each tick, and what is done is ticked', () => {
  const items: PlanItem[] = [
    tick('bolts', [{ label: '', done: true }]),
    tick(
      'caps',
      ['I1', 'I2', 'I3'].map((label) => ({ label, done: label === 'I2' })),
    ),
    grid(['1', '2', '3', '4'], 2),
  ]
  const boxes = (isDone: boolean) =>
    laid(plan({ steps: [step(1, { items, isDone })] }), A4)[0]?.shapes.filter(
      (shape) => shape.kind === 'box' && !shape.filled && shape.width === shape.height,
    )
  expect(boxes(true)).toHaveLength(1 + 3 + 8)
  // An open step has one more, to say that all of it is done.
  expect(boxes(false)).toHaveLength(1 + 3 + 8 + 1)
  const strokes = laid(plan({ steps: [step(1, { items, isDone: true })] }), A4)[0]?.shapes.filter(
    (shape) => shape.kind === 'line' && shape.from.x !== shape.to.x && shape.from.y !== shape.to.y,
  )
  expect(strokes).toHaveLength(2 * (1 + 1 + 3))
})

test('a page that begins in the middle of a step says of which', () => {
  const items = Array.from({ length: 40 }, (_, n) => tick(`piece ${n + 1}`))
  const [, second] = laid(plan({ steps: [step(4, { title: 'valve cover', items })] }), A4)
  expect(textsOf(second?.shapes ?? [])[2]).toBe('4  valve cover, continued')
})

test('a short step stands on one page, whatever stands before it', () => {
  for (let count = 1; count < 40; count++) {
    const items = Array.from({ length: count }, (_, n) => tick(`piece ${n + 1}`))
    const short = step(5, { title: 'valve cover', items: [tick('cover'), tick('bolts')] })
    const pages = laid(plan({ steps: [step(4, { items }), short] }), A4).map(({ shapes }) => textsOf(shapes))
    const holding = pages.filter((texts) => texts.includes('valve cover') || texts.includes('cover'))
    expect(holding).toHaveLength(1)
    expect(holding[0]).toEqual(expect.arrayContaining(['valve cover', 'cover', 'bolts', 'done']))
  }
})

test('the box that closes a step never stands alone on a page', () => {
  for (let count = 1; count < 60; count++) {
    const items = Array.from({ length: count }, (_, n) => tick(`piece ${n + 1}`))
    for (const { shapes } of laid(plan({ steps: [step(4, { items })] }), A4)) {
      const texts = textsOf(shapes)
      // Beyond the two of the head and the line that says of which step.
      if (texts.includes('done')) expect(texts.indexOf('done')).toBeGreaterThan(3)
    }
  }
})

test('a torque pattern wider than the page goes on in further rows, in the same order', () => {
  const fasteners = Array.from({ length: 60 }, (_, n) => `B${n + 1}`)
  const pages = laid(plan({ steps: [step(1, { items: [grid(fasteners, 3)] })] }), A4)
  const shown = pages.flatMap(({ shapes }) => textsOf(shapes)).filter((text) => /^B\d+$/.test(text))
  expect(shown).toEqual(fasteners)
  for (const drawing of pages) expect(faultsOf(drawing)).toEqual([])
})

test.each([
  ['arrow \u05d0', 'plan, step 1', ['\u05d0']],
  ['part \u{1f527}', 'plan, step 1', ['\u{1f527}']],
  ['\u4e2d\u6587', 'plan, step 1', ['\u4e2d', '\u6587']],
])('what the fonts lack is refused by where it stands and by name: %s', (text, label, characters) => {
  expect(planPages(plan({ steps: [step(1, { notes: [text] })] }), A4, about)).toEqual({
    ok: false,
    refusal: { code: 'no-glyph', label, characters },
  })
})

test('a label is no page for a plan', () => {
  expect(planPages(plan(), { width: 64, height: 33.9 }, about)).toEqual({
    ok: false,
    refusal: { code: 'label-too-small', label: 'plan', width: 64, height: 33.9 },
  })
})

test('umlauts, Greek and Cyrillic are drawn', () => {
  const notes = ['Zylinderköpfe, größer', 'κεφαλή κυλίνδρου', 'головка цилиндра']
  const texts = laid(plan({ steps: [step(1, { notes })] }), A4).flatMap(({ shapes }) => textsOf(shapes))
  for (const note of notes) expect(texts).toContain(`· ${note}`)
})

describe('whatever the names', () => {
  // Printable text of any length, with what typed or imported names may hide in it.
  const name = fc.oneof(
    fc.string({ minLength: 1, maxLength: 40 }),
    fc.string({ minLength: 1, maxLength: 500 }),
    fc.string({ minLength: 400, maxLength: 500, unit: fc.constantFrom('W', 'i', '-', '8') }),
    fc.constantFrom('bolts\n^XA^FO0\u001b[2J', '\u202eTFEL', 'a\u200bb', '   ', 'Ö'.repeat(300)),
  )
  const box = fc.record({ label: name, done: fc.boolean() })
  const item: fc.Arbitrary<PlanItem> = fc.oneof(
    fc.record({
      kind: fc.constant('tick' as const),
      text: name,
      from: fc.array(name, { maxLength: 3 }),
      notes: fc.array(name, { maxLength: 2 }),
      boxes: fc.array(box, { minLength: 1, maxLength: 8 }),
    }),
    fc
      .tuple(fc.array(name, { minLength: 1, maxLength: 12 }), fc.integer({ min: 1, max: 20 }), name)
      .map(([fasteners, passes, text]) => ({ ...grid(fasteners, passes), text })),
    fc.record({ kind: fc.constant('write' as const), text: name }),
  )
  const some = fc.array(name, { maxLength: 3 })
  const anyPlan = fc
    .record({
      job: name,
      machine: name,
      reasons: some,
      title: name,
      before: name,
      items: fc.array(item, { maxLength: 4 }),
      texts: some,
    })
    .map(({ job, machine, reasons, title, before, items, texts }) => ({
      ...plan({ steps: [step(1, { title, before, items, cautions: texts, notes: texts }), ...steps(2)] }),
      job,
      machine,
      reasons,
      containers: [
        { ...container(3), heading: `BAG 3 ${title}`, what: texts, where: texts, warnings: texts },
      ],
      loose: [{ place: 'On the bench', what: texts }],
    }))

  test('nothing is overprinted, nothing leaves the margins, nothing that steers is left', () => {
    fc.assert(
      fc.property(anyPlan, fc.constantFrom(A4, LETTER), (any, page) => {
        for (const drawing of laid(any, page)) {
          expect(faultsOf(drawing)).toEqual([])
          expect(textsOf(drawing.shapes).join('')).not.toMatch(/[\p{Cc}\p{Cf}]/u)
        }
      }),
      { numRuns: 60 },
    )
  })
})

function laid(printed: PrintedPlan, page: { width: number; height: number }): Drawing[] {
  const result = planPages(printed, page, about)
  if (!result.ok) throw new Error(JSON.stringify(result.refusal))
  return result.pages
}

function plan(more: Partial<PrintedPlan> = {}): PrintedPlan {
  return {
    job: '017 the blue twin',
    machine: 'invented parallel twin',
    date: '25 Nov 2026',
    code: labelCode(17, 9000),
    state: 'NOT READY TO START',
    reasons: ['14 pieces off', 'coolant drained'],
    notes: ['leak-down cold: 6 %'],
    steps: steps(1),
    containers: Array.from({ length: 20 }, (_, n) => container(n + 1)),
    loose: [{ place: 'On the bench', what: ['1 × cylinder head → cylinder head, step 12'] }],
    ...more,
  }
}

function steps(count: number): PlanStep[] {
  return Array.from({ length: count }, (_, n) => step(n + 1))
}

function step(no: number, more: Partial<PlanStep> = {}): PlanStep {
  return {
    no,
    code: no > 999 ? null : labelCode(17, 9000 + no),
    title: 'cam chain and sprockets',
    standing: 'NOT YET',
    isDone: false,
    afterStart: false,
    before: 'after steps 9 and 17',
    cautions: ['ease evenly'],
    items: [tick('4 × bolts M6x25'), grid(['1', '2', '3', '4'], 2), { kind: 'write', text: 'result' }],
    notes: ['24 links between the dots'],
    ...more,
  }
}

function tick(text: string, boxes = [{ label: '', done: false }]): Extract<PlanItem, { kind: 'tick' }> {
  return { kind: 'tick', text, from: ['bag 3 (017 0003 42)'], notes: ['1 was missing'], boxes }
}

function grid(fasteners: string[], passes: number): Extract<PlanItem, { kind: 'grid' }> {
  return {
    kind: 'grid',
    text: 'tighten head bolts (t1)',
    caution: 'Values as typed.',
    fasteners,
    passes: Array.from({ length: passes }, (_, pass) => ({
      text: `pass ${pass + 1}: 20 Nm`,
      done: fasteners.map((_, index) => pass === 0 && index < 3),
    })),
  }
}

function container(no: number) {
  return {
    heading: `BAG ${no} head`,
    code: labelCode(17, no),
    part: '1 of 2',
    stands: 'in bin 2 on shelf 1',
    what: ['2 × side bolts M6x50 hex 8', 'USED, DO NOT FIT: 8 × head bolts M10x140 E14'],
    where: ['cylinder head, step 12'],
    status: 'MIXED',
    warnings: ['7 of 8, 1 was missing'],
  }
}

function textsOf(shapes: readonly Shape[]): string[] {
  return shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))
}

interface Area {
  what: string
  left: number
  top: number
  right: number
  bottom: number
}

/** What lies outside the margins, and what lies over a text, a symbol with its quiet zone, or a box to tick. */
function faultsOf({ width, height, shapes }: Drawing): string[] {
  const margin = 12
  const areas = shapes.flatMap(areaOf)
  const outside = areas.filter(
    ({ left, top, right, bottom }) =>
      left < margin - 0.01 ||
      top < margin - 2 ||
      right > width - margin + 0.01 ||
      bottom > height - margin + 0.01,
  )
  const over = areas.flatMap((one, index) =>
    areas.slice(index + 1).flatMap((other) => (meets(one, other) ? [`${one.what} over ${other.what}`] : [])),
  )
  return [...outside.map(({ what }) => `${what} outside`), ...over]
}

function meets(one: Area, other: Area): boolean {
  const slack = 0.02
  return (
    one.left < other.right - slack &&
    other.left < one.right - slack &&
    one.top < other.bottom - slack &&
    other.top < one.bottom - slack
  )
}

/** Frames and grounds of text are left out: text lies in them. So are the strokes of a tick. */
function areaOf(shape: Shape): Area[] {
  switch (shape.kind) {
    case 'text': {
      const { x, y, size, weight, text } = shape
      // Ink of capitals and descenders; the fonts reach little further.
      return [
        {
          what: text.slice(0, 20),
          left: x,
          top: y - size * 0.73,
          right: x + typeface().widthOf(text, size, weight),
          bottom: y + size * 0.2,
        },
      ]
    }
    case 'symbol': {
      const { x, y, module, modules } = shape
      const quiet = 4 * module
      const side = modules.length * module
      return [
        {
          what: 'symbol',
          left: x - quiet,
          top: y - quiet,
          right: x + side + quiet,
          bottom: y + side + quiet,
        },
      ]
    }
    case 'box': {
      const { x, y, width, height } = shape
      return width === height ? [{ what: 'box', left: x, top: y, right: x + width, bottom: y + height }] : []
    }
    default:
      return []
  }
}
