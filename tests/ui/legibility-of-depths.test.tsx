import { Terminal } from '@xterm/headless'
import chalk from 'chalk'
import { render } from 'ink-testing-library'
import { afterEach, describe, expect, test } from 'vitest'
import type { Desk } from '../../src/ui/desk/desk.ts'
import type { Size } from '../../src/ui/layout.ts'
import { Frame, frameRows } from '../../src/ui/screens/frame.tsx'
import { textOf } from '../../src/ui/text/line.ts'
import { EVERY_SCREEN } from './support/every-screen.ts'

const size: Size = { width: 80, height: 24 }
const level = chalk.level

afterEach(() => {
  chalk.level = level
})

/** Screens that have every tone between them. */
const shown = EVERY_SCREEN.filter(({ name }) =>
  ['now, going back', 'step, tighten', 'back, under way', 'left, clear', 'due', 'scan, not good'].includes(
    name,
  ),
)

/** What a terminal is found out to be: without colours, of sixteen, of 256, of all. */
const depths = [0, 1, 2, 3] as const

describe.each(shown)('$name, as a terminal gets it', ({ open }) => {
  test('has the same text with however many colours', async () => {
    const desk = await open(size, true)
    const texts = frameRows(desk, size).rows.map((row) => textOf(row).trimEnd())
    for (const depth of depths)
      expect((await seen(drawn(desk, depth))).map(({ text }) => text)).toEqual(texts)
  })

  test('has no colours where there are none', async () => {
    const desk = await open(size, true)
    expect(drawn(desk, 0)).not.toContain('\x1b')
    // NO_COLOR on a terminal that has them: bold and turned round are no colours.
    expect(colours(drawn(desk, 2, false))).toEqual([])
  })

  test('has no letters that are bold and of a colour as well', async () => {
    const desk = await open(size, true)
    for (const depth of depths)
      for (const { cells } of await seen(drawn(desk, depth)))
        for (const cell of cells) expect(cell.isBold && cell.isColoured).toBe(false)
  })
})

test('every tone is on one of these', async () => {
  const desks = await Promise.all(shown.map(({ open }) => open(size, true)))
  const tones = new Set(
    desks.flatMap((desk) =>
      frameRows(desk, size)
        .rows.flat()
        .map(({ tone }) => tone),
    ),
  )
  expect([...tones]).toEqual(
    expect.arrayContaining(['plain', 'strong', 'large', 'here', 'good', 'wait', 'active', 'stop']),
  )
  for (const depth of [1, 2, 3] as const)
    expect(desks.flatMap((desk) => colours(drawn(desk, depth)))).not.toEqual([])
})

/** A whole frame, as Ink hands it over. */
function drawn(desk: Desk, depth: (typeof depths)[number], colour = true): string {
  chalk.level = depth
  const app = render(<Frame desk={desk} size={size} colour={colour} placeCursor={() => {}} />)
  const frame = app.lastFrame() ?? ''
  app.unmount()
  return frame
}

/** The parameters of SGR (ECMA-48, 8.3.117) that colour: 30 to 49, and 90 to 107 as aixterm added them. */
function colours(frame: string): string[] {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the sequences that are looked for
  const parameters = [...frame.matchAll(/\x1b\[([\d;]*)m/g)].flatMap(([, list = '']) => list.split(';'))
  return parameters.filter((each) => /^(?:[34]\d|9\d|10[0-7])$/.test(each))
}

interface Seen {
  text: string
  cells: { isBold: boolean; isColoured: boolean }[]
}

/** The rows as a terminal that others wrote has them on its screen. */
async function seen(frame: string): Promise<Seen[]> {
  const terminal = new Terminal({ cols: size.width, rows: size.height, allowProposedApi: true })
  await new Promise<void>((done) => terminal.write(frame.replaceAll('\n', '\r\n'), done))
  return Array.from({ length: size.height }, (_, y) => {
    const row = terminal.buffer.active.getLine(y)
    const cells = Array.from({ length: size.width }, (_, x) => row?.getCell(x)).flatMap((cell) =>
      cell ? [{ isBold: cell.isBold() !== 0, isColoured: !cell.isFgDefault() }] : [],
    )
    return { text: row?.translateToString().trimEnd() ?? '', cells }
  })
}
