import xterm from '@xterm/headless'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { drawer } from '../../../src/ui/terminal/drawer.ts'

const size = { columns: 12, rows: 5 }

/** What a terminal shows after frames were drawn one over the other. */
async function screenAfter(frames: readonly string[], forgetBefore = -1) {
  const terminal = new xterm.Terminal({ cols: size.columns, rows: size.rows, allowProposedApi: true })
  const screen = drawer()
  const write = (text: string) => new Promise<void>((resolve) => terminal.write(text, resolve))
  await write('\x1b[?7l')
  for (const [index, frame] of frames.entries()) {
    if (index === forgetBefore) {
      screen.forget()
      await write('\x1b[2J')
    }
    await write(screen.draw(frame, size.rows, { x: 3, y: 1 }))
  }
  const { active } = terminal.buffer
  const rows = Array.from(
    { length: size.rows },
    (_, row) => active.getLine(row)?.translateToString(true) ?? '',
  )
  return { rows, cursor: { x: active.cursorX, y: active.cursorY } }
}

describe('drawing', () => {
  test('writes only the rows that changed', () => {
    const screen = drawer()
    screen.draw('one\ntwo\nthree', 5, undefined)
    const bytes = screen.draw('one\n2\nthree', 5, undefined)
    expect(bytes).toContain('2')
    expect(bytes).not.toContain('one')
    expect(bytes).not.toContain('three')
  })

  test('holds the terminal back while several rows change, and ends with the cursor in its place', () => {
    const screen = drawer()
    const cursor = { x: 3, y: 1 }
    const whole = screen.draw('one\ntwo\nthree', 5, cursor)
    expect(whole.split('\x1b[?2026h')).toHaveLength(2)
    expect(whole.indexOf('\x1b[?2026l')).toBeGreaterThan(whole.indexOf('three'))
    expect(whole.endsWith('\x1b[2;4H\x1b[?25h')).toBe(true)
    expect(screen.draw('one\n2\nthree', 5, cursor)).not.toContain('2026')
  })

  test('a row of the whole width keeps its last character', async () => {
    const { rows } = await screenAfter(['short', '123456789012'])
    expect(rows[0]).toBe('123456789012')
  })

  test('a row wider than the window pushes no other away', async () => {
    const { rows } = await screenAfter(['123456789012345\ntwo'])
    expect(rows[1]).toBe('two')
  })

  test('more rows than the window has are left out', async () => {
    const { rows } = await screenAfter(['1\n2\n3\n4\n5\n6\n7'])
    expect(rows).toEqual(['1', '2', '3', '4', '5'])
  })

  test('whatever was drawn before, the last frame stands there whole, and the cursor in its place', async () => {
    const row = fc.stringMatching(/^[a-z ]{0,12}$/)
    const frame = fc.array(row, { minLength: 1, maxLength: 5 }).map((rows) => rows.join('\n'))
    await fc.assert(
      fc.asyncProperty(
        fc.array(frame, { minLength: 1, maxLength: 6 }),
        fc.nat(6),
        async (frames, forgetBefore) => {
          const { rows, cursor } = await screenAfter(frames, forgetBefore)
          const last = (frames.at(-1) ?? '').split('\n').map((text) => text.trimEnd())
          expect(rows.map((text) => text.trimEnd())).toEqual(
            [...last, '', '', '', '', ''].slice(0, size.rows),
          )
          expect(cursor).toEqual({ x: 3, y: 1 })
        },
      ),
      { numRuns: 60 },
    )
  })
})
