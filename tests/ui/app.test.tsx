import { render } from 'ink-testing-library'
import { expect, onTestFinished, test, vi } from 'vitest'
import { App } from '../../src/ui/app.tsx'
import { jobWith } from './support/bench.ts'

/** The screens as Ink lays them out, in a window of 100 by 24, with a keyboard. */
function shown(...lines: string[]) {
  const bench = jobWith(...lines)
  const listeners = new Set<(chunk: string) => void>()
  const cursors: unknown[] = []
  const terminal = {
    subscribe(listener: (chunk: string) => void) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    placeCursor: (place: unknown) => cursors.push(place),
  }
  const app = render(<App desk={bench.desk} terminal={terminal} colour={false} />)
  onTestFinished(() => app.unmount())
  return {
    ...bench,
    frame: () => app.lastFrame() ?? '',
    press: (chunk: string) => {
      for (const listener of listeners) listener(chunk)
    },
    cursors,
  }
}

test('a frame has the job, the screens, two rules and the line', async () => {
  const { frame } = shown('begin valve cover off', 'off 8 M6x25 valve cover bolts')
  await vi.waitFor(() => expect(frame()).toContain('[. NOW]'))
  const rows = frame().split('\n')
  expect(rows).toHaveLength(24)
  expect(rows[0]).toMatch(/^blue twin 001 .*off 8 = 8 in containers$/)
  expect(rows.filter((row) => row.startsWith('─'))).toHaveLength(2)
  expect(rows.filter((row) => row.startsWith(' >'))).toHaveLength(1)
})

test('what is typed is drawn, understood and carried out', async () => {
  const { frame, press, cursors } = shown()
  press('.1\r8 M6x25 hex 10 valve cover bolts')
  await vi.waitFor(() => expect(frame()).toContain(' > 8 M6x25 hex 10 valve cover bolts'))
  expect(frame()).toContain('M6, pitch 1 assumed, length 25 mm · hex 10')
  expect(cursors.at(-1)).toMatchObject({ x: ' > 8 M6x25 hex 10 valve cover bolts'.length })
  press('\r')
  await vi.waitFor(() => expect(frame()).toContain('off 8 = 8 in containers'))
  expect(frame()).toContain('✓ RECORDED')
})

test('an ESC that nothing follows clears the line', async () => {
  const { frame, press } = shown()
  press('half a li')
  await vi.waitFor(() => expect(frame()).toContain(' > half a li'))
  press('\x1b')
  await vi.waitFor(() => expect(frame()).not.toContain('half a li'))
})

test('an arrow cut in two is still an arrow', async () => {
  const { frame, press } = shown()
  press('bolts\x1b')
  press('[D\x1b[D')
  press('X')
  await vi.waitFor(() => expect(frame()).toContain(' > bolXts'))
})

test('large letters take the room there is', async () => {
  const { frame, press } = shown('begin x off', 'off 4 nuts into new bag')
  press('scan 1\r*')
  await vi.waitFor(() => expect(frame()).toContain('█████'))
  const letters = frame()
    .split('\n')
    .filter((row) => row.includes('██'))
  expect(letters.length).toBeGreaterThanOrEqual(5)
})

test('nothing in a name steers the terminal, whoever wrote the record', async () => {
  const bench = shown()
  const title = 'head \x1b[2J\x1b[31m\x1b]0;mine\x07\x9b5A\u202eoff'
  bench.desk.session?.send({ do: 'begin-strip', title })
  for (const screen of ['.1', '.2', '.3', '.4', '.5', '.']) {
    bench.press(`${screen}\r`)
    await vi.waitFor(() => expect(bench.frame()).toContain(`[${screen}`))
    // biome-ignore lint/suspicious/noControlCharactersInRegex: bold and inverse are ours
    const own = bench.frame().replace(/\x1b\[(?:1|7|22|27|39|49)m/g, '')
    expect(own.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u)
  }
  expect(bench.frame()).toContain('step 1, head off')
})
