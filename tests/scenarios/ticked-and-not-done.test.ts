import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { workshop } from './workshop.ts'

const name = 'ticked-and-not-done.txt'
const job = readFileSync(join(import.meta.dirname, name), 'utf8')

/** All that was said to each line that begins so, in the order in which the job tells them. */
function saidTo(...beginnings: string[]): string[][] {
  const said: string[][] = []
  const run = workshop().run(job, name, (result, line) => {
    if (!beginnings.some((beginning) => line.replace(/^refused [a-z-]+: /, '').startsWith(beginning))) return
    said.push(result.ok ? result.text : [result.told.what, ...result.told.lines, result.told.cure])
  })
  expect(run.failure).toBeNull()
  return said
}

test('the round names every bag and tray that something was taken out of, with where it stands and what it held', () => {
  expect(saidTo('take 5').at(2)).toEqual([
    '41  took up step 5, Tip out every bag and tray, look round the bench',
    '    Tip out, one after the other:',
    '      bag 2 (cover) (001 0002 65): held 2 × cover clamps M6x12 hex 8 and 4 × valve cover bolts M6x25 hex 10',
    '      tray 4 (cam caps) on shelf 1 (001 0004 59): held 4 × cam caps I1, I2, I3, I4',
    '      Nothing in it: "count 2 = 0". One in it: "count 2 = 1".',
  ])
})

test('an empty bag says what it held, and how to say that one is in it', () => {
  expect(saidTo('2')).toEqual([
    [
      'bag 2 (cover), label 001 0002 65: EMPTY',
      expect.stringMatching(
        /^ {2}held 2 × cover clamps M6x12 hex 8 and 4 × valve cover bolts M6x25 hex 10, out since 20.*: home in step 1, valve cover$/,
      ),
      '  It should be empty. One in it: "count 2 = 1".',
    ],
  ])
})

test('what is found names what it may be, where the record has that, and the words that put it right', () => {
  const ELSE =
    'else look where it came from: "explain D PIECE from PLACE because ...", or "explain D unknown NAME because ..."'
  const found = saidTo('count').filter(([first = '']) => first.includes('does not have there'))
  expect(found.map(([, second = '']) => second.trim())).toEqual([
    `it may be 1 × valve cover bolt M6x25 hex 10, recorded as fitted in step 1, valve cover: "explain d1 p1 from machine because ..."; or 1 × cover clamp M6x12 hex 8, recorded as fitted in step 1, valve cover: "explain d1 p2 from machine because ..."; ${ELSE.replaceAll('D ', 'd1 ')}`,
    `it may be one of 4 × cam caps I1, I2, I3, I4, recorded as fitted in step 2, intake camshaft: "explain d2 PIECE from machine because ..."; ${ELSE.replaceAll('D ', 'd2 ')}`,
    `it may be 1 × valve cover bolt M6x25 hex 10, recorded on the bench: "explain d3 p1 from bench because ..."; or 1 × cover clamp M6x12 hex 8, recorded as fitted in step 1, valve cover: "explain d3 p2 from machine because ..."; ${ELSE.replaceAll('D ', 'd3 ')}`,
  ])
})

test('until it is explained the first start is held, and the refusal names the bag, the bolts and the step', () => {
  const held = saidTo('clear').filter((lines) => lines.some((line) => line.includes('not explained')))
  expect(held.map(([, line]) => line)).toEqual([
    'Count d1, bag 2: 1 that the record does not have there: not explained; it may be 1 × valve cover bolt M6x25 hex 10, recorded as fitted in step 1, valve cover, or another that lay in it.',
  ])
})

test('once explained, what is to be opened to reach its home is said, with what is built on top', () => {
  expect(saidTo('explain').map(([, line = '']) => line.trim())).toEqual([
    '1 × valve cover bolt M6x25 hex 10 belongs to valve cover, step 1: "reopen 1 because ..." opens step 1, then "fit p1".',
    'Cam cap I3 belongs to intake camshaft / cam caps / I3, step 2: "reopen 2 because ..." opens steps 1, 4, 6 and 2, then "fit p6 at I3".',
    '1 × cover clamp M6x12 hex 8 belongs to valve cover, step 1: "fit p2".',
  ])
})
