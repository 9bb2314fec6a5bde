import { expect, test } from 'vitest'
import { jobWith } from '../../support/bench.ts'

const apart = [
  'begin head off, does not hide',
  'off cylinder head into bench',
  'off 4 M10x120 E14 head bolts, single-use into new bag',
  'end',
]

/** Where the number before some words of a screen leads. */
function leadsFrom(keys: string[], words: RegExp, ...lines: string[]) {
  const { enter, rows, desk } = jobWith(...apart, ...lines)
  enter(...keys)
  const row = rows().find((each) => words.test(each)) ?? ''
  enter(/^ *(\d+) /.exec(row)?.[1] ?? `nothing says ${words}`)
  return desk.screen
}

test('a step that waits for used bolts leads to the order that brings new ones', () => {
  expect(leadsFrom(['step 1'], /head bolts/i, 'buy 4 head bolts')).toEqual({ at: 'order', order: 'o1' })
})

test('without an order it puts the words that lift it into the line', () => {
  const { enter, line } = jobWith(...apart)
  enter('step 1', '1')
  expect(line()).toMatch(/^new 4 p2/)
})

test('what is left over leads to the check, the comparison and the shop that it waits for', () => {
  const left = (words: RegExp, ...lines: string[]) => leadsFrom(['.4'], words, ...lines)
  expect(left(/not checked/i, 'check cylinder head: look for cracks')).toEqual({ at: 'judge', piece: 'p1' })
  expect(left(/not compared/i, 'new cylinder head instead')).toEqual({ at: 'compare', piece: 'p3' })
  expect(left(/nobody has said/i, 'out cylinder head to Miller', 'came back b1')).toEqual({
    at: 'outing',
    outing: 'b1',
  })
})

test('what sits on a piece that is away leads to where that is', () => {
  const away = ['on cylinder head: 2 studs M8x40', 'out cylinder head to Miller']
  expect(leadsFrom(['step 1'], /studs/i, ...away)).toEqual({ at: 'outing', outing: 'b1' })
})
