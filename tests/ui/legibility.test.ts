import { describe, expect, test } from 'vitest'
import type { Desk } from '../../src/ui/desk/desk.ts'
import { bodyHeight, type Size, SMALLEST } from '../../src/ui/layout.ts'
import type { ScreenName } from '../../src/ui/navigation.ts'
import { frameRows } from '../../src/ui/screens/frame.tsx'
import { type Line, textOf, widthOf } from '../../src/ui/text/line.ts'
import { EVERY_SCREEN } from './support/every-screen.ts'

const usual: Size = { width: 80, height: 24 }
const wide: Size = { width: 200, height: 60 }

/** A letter that is read from two metres is five rows high; a glance takes in a dozen words. */
const LETTER_ROWS = 5
const MOST_WORDS = 12

/** Lists, forms and texts: there is no one thing on them to be large. Every other screen has its card. */
const WITHOUT_CARD: readonly ScreenName[] = [
  'jobs',
  'new-job',
  'lies',
  'log',
  'found',
  'proposals',
  'which',
  'paste',
  'help',
  'photos',
  'sum',
  'draw',
  'leave',
  'told',
  'wait',
]

describe.each(EVERY_SCREEN)('$name', ({ at, open }) => {
  test('keeps within the terminal, says the same without colour, and one thing in large letters', async () => {
    const desk = await open()
    expect(desk.screen.at).toBe(at)
    for (const size of [wide, SMALLEST, usual]) {
      const rows = frame(desk, size)
      expect(rows).toHaveLength(size.height)
      for (const row of rows) expect(widthOf(row)).toBeLessThanOrEqual(size.width)
    }
    // A label's symbol is drawn by the colours where there are any, and turned round by a choice where there are none.
    if (at !== 'qr')
      expect(frame(await open(usual, true), usual).map(textOf)).toEqual(frame(desk, usual).map(textOf))
    expect(desk.page().large === null).toBe(WITHOUT_CARD.includes(at))
    if (desk.page().large !== null) expectOneCard(desk)
  })
})

function frame(desk: Desk, size: Size): Line[] {
  desk.resize(size)
  return frameRows(desk, size).rows
}

function expectOneCard(desk: Desk): void {
  // The line has to be empty for its key.
  desk.press({ key: 'clear' })
  desk.press({ text: '*' })
  const first = HEAD + desk.above().length
  const card = frame(desk, usual).slice(first, first + bodyHeight(usual, desk))
  const isLarge = (row: Line) => row.some(({ tone }) => tone === 'large')
  expect(card.filter(isLarge).length).toBeGreaterThanOrEqual(LETTER_ROWS)
  const words = card.filter((row) => !isLarge(row)).flatMap((row) => textOf(row).match(/\S*\w\S*/g) ?? [])
  expect(words.length).toBeLessThanOrEqual(MOST_WORDS)
}

/** Rows above the screen's own. */
const HEAD = 3
