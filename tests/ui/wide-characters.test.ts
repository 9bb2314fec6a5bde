import { describe, expect, test } from 'vitest'
import { frameRows } from '../../src/ui/screens/frame.tsx'
import { textOf, widthOf } from '../../src/ui/text/line.ts'
import { jobWith } from './support/bench.ts'

/** Names of two columns a character, of none, and of several code points a character. */
const NAMES = [
  'シリンダーヘッド 缸盖 off',
  '밸브 커버 볼트',
  'e\u0301ti\u0300o\u0302 bru\u0302le\u0301e',
  'wrench 🔧 of 👩🏽‍🔧',
  'Ω₀ Привод',
]

function withWideNames() {
  const [step = '', ...pieces] = NAMES
  const bench = jobWith(
    `begin ${step}`,
    ...pieces.map((name, index) => `off ${index + 2} ${name} into new bag`),
    'off 4 ボルト M6x25 into new bag',
  )
  const { desk } = bench
  const frame = (width: number, height = 24) => {
    desk.resize({ width, height })
    return frameRows(desk, { width, height }).rows
  }
  return { ...bench, frame }
}

describe('names of wide, combining and joined characters', () => {
  test.each([64, 80, 81, 120, 300])(
    'leave no row wider than a window of %s columns, on any screen',
    (width) => {
      const { enter, frame, type } = withWideNames()
      for (const line of ['.', '.1', '.2', '.3', '.4', '.5', 'scan 1', 'step 1', 'qr 2', 'where ボルト']) {
        enter(line)
        const rows = frame(width)
        expect(rows).toHaveLength(24)
        expect(Math.max(...rows.map(widthOf)), line).toBeLessThanOrEqual(width)
        expect(rows.filter((row) => widthOf(row) === width && textOf(row).includes('─')).length).toBe(2)
      }
      enter('.1')
      type('9 🔧🔧🔧 ボルト'.repeat(12))
      expect(Math.max(...frame(width).map(widthOf))).toBeLessThanOrEqual(width)
    },
  )

  test('line up under each other: what is in a container begins in the same column', () => {
    const { enter, frame } = withWideNames()
    enter('.2')
    const rows = frame(100).filter((row) => /^ +\d+ {2}/.test(textOf(row)))
    const columns = rows.map((row) => widthOf(textOf(row).slice(0, textOf(row).indexOf(' × ') - 1)))
    expect(rows).toHaveLength(NAMES.length)
    expect(new Set(columns).size).toBe(1)
  })

  test('stand whole where they have room', () => {
    const { enter, frame } = withWideNames()
    enter('.2')
    const text = frame(120).map(textOf).join('\n')
    for (const name of NAMES.slice(1, 3)) expect(text).toContain(name.normalize())
  })
})
