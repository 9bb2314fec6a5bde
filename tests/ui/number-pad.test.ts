import { expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { emptyHome, screens, shelfIn } from './support/bench.ts'

/** What wants letters: each name once, a mark, and what the manual says of the bolts. */
const WRITTEN = [
  '',
  'tiny twin',
  '',
  'begin valve cover off',
  'valve cover into bench',
  'mark valve cover: arrow to front',
  '2 M6x25 hex 10 valve cover bolts into new bag',
  'begin cylinder head off',
  'cylinder head into bench',
  '4 M8x60 E12 head bolts',
  'rag > inlet port 1',
  'coolant out 2.1 L',
  'tighten head bolts: 20 Nm, 90 deg',
]

test('a job whose names were written needs digits, Enter, Backspace, . - + and the scanner, to the first start', () => {
  const home = emptyHome()
  const first = screens(shelfIn(home))
  first.enter(...WRITTEN)
  const pad = padOf(first)

  // Off: a new bag, a miscount that is taken back, a mistyped digit; words come by their number, the dot by a comma.
  pad('⏎', '3.2⏎', '0⏎', '2⏎', '7⌫3⏎')
  expect(first.answer()).toContain('3 × valve cover bolts M6x25 hex 10, into bag 3')
  // Another bag in hand by its label.
  pad('{1}', '⏎', '4,1⏎')
  expect(first.answer()).toContain('4 × valve cover bolts M6x25 hex 10, into bag 1')
  pad('7⏎')
  expect(first.state().strip).toBe(null)

  // Looked into and counted; back on the list with Backspace.
  pad('.2⏎', '+-3⏎', '2⏎', '3⏎', '0⏎')
  expect(first.text()).toContain('AGREES')
  pad('⏎', '⌫')
  expect(first.desk.screen).toEqual({ at: 'lies', words: '' })

  // What blocks the cover; the rag comes out, all is looked at, and the head goes back from its bags.
  pad('.3⏎', '1⏎')
  expect(first.text()).toContain('Step 2, cylinder head, comes before')
  pad('⏎', '1⏎', '⏎', '1⏎', '⏎', '⏎')
  expect(first.state().build).toBe(2)
  pad('{2}', '⏎', '⌫', '.0⏎', '⏎', '⏎', '⏎')
  expect(first.text()).toContain('TIGHTENING t1')
  pad('.0⏎', '⏎', '⏎', '⏎', '⏎', '⏎')
  expect(first.text()).toContain('1 of 4 through')

  // Work breaks off, and another day the bolt in doubt is answered, with the words that are usual.
  pad('.⏎', '9⏎', '⏎')
  expect(first.desk.ended).toBe(0)
  const second = screens(shelfIn(home))
  const padLater = padOf(second)
  expect(second.text()).toContain('perhaps turned already')
  padLater('⏎', '2⏎', '1⏎', '⏎', '⏎', '⏎')
  // How much went in, the end of the step, the next step with its mark, and the end of that.
  padLater('2.1⏎')
  expect(second.answer()).toContain('filled: coolant 2.1 L')
  padLater('⏎')
  expect(second.state().steps.get(2)?.built).toBe('done')
  padLater('.⏎', '⏎', '1⏎', '⏎', '⏎', '⏎', '⏎', '⏎', '⏎')
  expect([...second.state().marks.values()].map(({ confirmed }) => confirmed)).not.toContain(false)
  padLater('⏎', '.4⏎')
  expect(second.text()).toContain('NOTHING')
  padLater('1⏎', '2⏎')
  expect(second.state().started).toBe(true)
})

test('seven of eight are fitted with a dot, as they are counted where they come off', () => {
  const home = emptyHome()
  const bench = screens(shelfIn(home))
  bench.enter(
    '',
    'tiny twin',
    '',
    'begin cover off',
    '8 M6x25 bolts',
    'cover into bench',
    'end',
    'look 1',
    'take 1',
  )
  const pad = padOf(bench)
  expect(bench.text()).toContain('TO DO: 7.2 fits 7 of row 2')
  pad('9⏎')
  expect(bench.answer()).toContain('7.2 fits 7 of row 2')
  pad('⏎', '7.2⏎')
  expect(bench.answer()).toContain('Row 2 fits no number of pieces')
  pad('7.1⏎')
  expect(bench.text()).toContain('fit 1 × bolt M6x25')
  pad('2.⏎')
  expect(bench.answer()).toContain('REFUSED')
  expect(bench.text()).toContain('fit 1 × bolt M6x25')
})

/** Presses what a number pad has (⏎ and ⌫ are its Enter and Backspace), and scans `{container}`. */
function padOf({ type }: ReturnType<typeof screens>) {
  return (...keys: string[]) => {
    for (const each of keys) {
      expect(each).toMatch(/^(?:\{\d+\}|[0-9.,+\-⏎⌫]+)$/)
      type(
        each
          .replace(/\{(\d+)\}/, (_, no) => `${labelCode(1, Number(no))}\r`)
          .replaceAll('⏎', '\r')
          .replaceAll('⌫', '\x7f'),
      )
    }
  }
}
