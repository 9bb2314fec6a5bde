import { beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest'
import { labelCode } from '../../../src/label/code.ts'
import { hearInput } from '../../../src/ui/hooks/hear-input.ts'
import { jobWith, say } from '../support/bench.ts'

beforeEach(() => {
  vi.useFakeTimers()
  onTestFinished(() => {
    vi.useRealTimers()
  })
})

/** A tightening of eight bolts in hand, and a keyboard on which time passes. */
function atTheBolts() {
  const bench = jobWith(
    'begin cover off, does not hide',
    'off 8 M8x30 hex 10 cover bolts into new bag',
    'end',
    'tighten cover bolts: 20 Nm',
    'take 1',
    'fit cover bolts',
  )
  let hear: (chunk: string) => void = () => {}
  const stop = hearInput(bench.desk, {
    subscribe: (listener) => {
      hear = listener
      return () => {}
    },
  })
  onTestFinished(stop)
  hear('step 1\r')
  const ticked = () => bench.desk.session?.entries().filter(({ type }) => type === 'tightened').length ?? 0
  return {
    ...bench,
    ticked,
    hear: (chunk: string) => hear(chunk),
    /** Each chunk that long after the one before, and then a while without any. */
    press: (...chunks: [after: number, chunk: string][]) => {
      for (const [after, chunk] of chunks) {
        vi.advanceTimersByTime(after)
        hear(chunk)
      }
      vi.advanceTimersByTime(2000)
    },
  }
}

const NOT_TAKEN = 'Enter came again at once, as from a key held down: that one was not taken.'

/** What a keyboard sends while a key is held for two seconds: the press, and after a pause one each `every`. */
function heldDown(first: number, every: number): [number, string][] {
  const repeats = Math.floor((2000 - first) / every)
  return [
    [2000, '\r'],
    [first, '\r'],
    ...Array.from({ length: repeats }, (): [number, string] => [every, '\r']),
  ]
}

describe('Enter alone ticks a bolt', () => {
  test('once for each press', () => {
    const { press, ticked, answer } = atTheBolts()
    press([2000, '\r'], [400, '\r'], [130, '\r'], [2000, '\r'])
    expect(ticked()).toBe(4)
    expect(answer()).not.toContain(NOT_TAKEN)
  })

  test.each([
    ['an X server', 660, 40],
    ['a desktop', 250, 33],
    ['a console', 500, 92],
    ['another desktop', 375, 90],
  ])('once for a press of two seconds, as %s repeats it', (_, first, every) => {
    const { press, ticked, answer } = atTheBolts()
    press(...heldDown(first, every))
    expect(ticked()).toBe(1)
    expect(answer()).toContain(NOT_TAKEN)
    press([1000, '\r'])
    expect(ticked()).toBe(2)
    expect(answer()).not.toContain(NOT_TAKEN)
  })

  test.each([
    ['each by itself', ['\r', '\r']],
    ['in one chunk', ['\r\r']],
    ['with line feeds', ['\r\n\r\n']],
    ['as line feeds', [' \x7f\n\n']],
  ])('once for a key that bounces, %s', (_, chunks) => {
    const { press, ticked } = atTheBolts()
    press([2000, ''], ...chunks.map((chunk): [number, string] => [8, chunk]))
    expect(ticked()).toBe(1)
  })

  test('not for the bounce of the Enter that sent a line', () => {
    const { press, ticked } = atTheBolts()
    press([2000, '1\r\r'])
    expect(ticked()).toBe(1)
  })

  test.each([
    ['two Enters', ['', '\r\r']],
    ['TAB and Enter', ['', '\t\r']],
    ['ETX and Enter', ['\x02', '\x03\r']],
  ])('not for the second of %s with which a scanner ends a code', (_, [begin, end]) => {
    const { press, entries, desk } = atTheBolts()
    const before = entries()
    press([2000, `${begin}${labelCode(1, 1)}${end}`])
    expect(desk.screen.at).toBe('scan')
    expect(entries()).toBe(before)
  })

  test('before what is typed right after it', () => {
    const { press, ticked, line } = atTheBolts()
    press([2000, '\r'], [300, '\r'], [40, 'M8'])
    expect(ticked()).toBe(2)
    expect(line()).toBe('M8|')
  })

  test('and never another than the one it was pressed for', () => {
    const { hear, ticked, desk, answer } = atTheBolts()
    vi.advanceTimersByTime(2000)
    hear('\r')
    vi.advanceTimersByTime(300)
    hear('\r')
    const { commands } = JSON.parse(desk.claim ?? '')
    desk.session?.send(commands[0])
    vi.advanceTimersByTime(2000)
    expect(ticked()).toBe(2)
    expect(answer()).toContain('Another terminal was quicker: that Enter was not taken.')
  })
})

test('a number does what it was typed for, or nothing where another terminal renumbered the rows', () => {
  const { hear, shelf, path, desk, answer, entries, line } = atTheBolts()
  hear('.3\rreopen 1 because of a leak\rtake 1\rstep 1\r1')
  expect(JSON.stringify(desk.meaning())).toContain('"do":"fit"')
  say(shelf.open(path), 'fit cover bolts')
  desk.session?.refresh()
  const before = entries()
  hear('\r')
  expect(entries()).toBe(before)
  expect(line()).toBe('1|')
  expect(answer()).toContain('Another terminal was quicker: that Enter was not taken.')
  vi.advanceTimersByTime(2000)
  hear('\r')
  expect(entries()).toBe(before + 1)
})

test('what is typed is taken at any speed, and Enter where it records nothing', () => {
  const { press, entries, desk } = atTheBolts()
  const before = entries()
  press([2000, 'note one\rnote two\rnote three\r'])
  expect(entries()).toBe(before + 3)
  press([2000, '.2\r'], [0, '\r\r\r'])
  expect(desk.ended).toBeNull()
})

test('a paste whose end does not come is told, and given up by Esc', () => {
  const { press, entries, answer, line } = atTheBolts()
  const before = entries()
  press([2000, '\x1b[200~note one\n'], [100, '1\r'])
  expect(entries()).toBe(before)
  expect(answer()).toContain('A paste has begun whose end has not come')
  press([2000, '\x1b'])
  expect(answer()).toContain('The paste was given up')
  press([2000, '1'])
  expect(line()).toBe('1|')
  press([2000, '\x15\x1b[200~8 M6\x1b'], [100, '[201~'])
  expect(line()).toBe('8 M6|')
})
