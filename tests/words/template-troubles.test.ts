import { expect, test } from 'vitest'
import { type TemplateTrouble, templateTroubleText } from '../../src/words/template-troubles.ts'
import { off, strip } from '../support/commands.ts'
import { openJob, record } from '../support/journal.ts'

const { state } = record([
  openJob,
  strip('mount off'),
  off(2, 'mount bolts', { size: 'M8x30' }),
  off(2, 'mount bolts', { size: 'M8x45' }),
])
const a4 = { width: 210, height: 297 }

test.each<[TemplateTrouble, string, string]>([
  [
    { code: 'pattern-not-of', piece: 'p1' },
    'Mount bolts M8x30 have no place among others of its kind.',
    'Positions are for matched sets and for fasteners that look alike.',
  ],
  [
    { code: 'pattern-single', piece: 'p1' },
    'Mount bolts M8x30 is one piece alone: there is nothing to tell it from.',
    'Positions are for matched sets and for fasteners that look alike.',
  ],
  [
    { code: 'pattern-positions-unknown', pieces: ['p1', 'p2'] },
    'Nobody wrote down where these belong: mount bolts M8x30 and mount bolts M8x45.',
    'Positions are written as they come off, as in "off 5 M6x25 bolts @1..3,5,6".',
  ],
  [
    { code: 'pattern-position-shared', position: '4', pieces: ['p1', 'p2'] },
    'Position 4 is written down for two: mount bolts M8x30 and mount bolts M8x45.',
    'Give one of them another name, as in "rename p2 to NAME".',
  ],
  [
    { code: 'template-position-shared', position: '1', pieces: ['p1', 'p2'] },
    'Position 1 would stand twice on one sheet: mount bolts M8x30 and mount bolts M8x45.',
    'Print a template for each set.',
  ],
  [
    { code: 'template-too-many', positions: 201, most: 200 },
    '201 positions are more than 200.',
    'Print fewer on one sheet.',
  ],
  [
    { code: 'layout-too-many', positions: 201, most: 200 },
    '201 positions are more than 200.',
    'Print fewer on one sheet.',
  ],
  [
    { code: 'layout-form', typed: '2by4', nearest: '2x4' },
    "'2by4' is no layout.",
    'Perhaps "laid out 2x4"; rows are written as in "laid out 1 2 3 / 6 . 4".',
  ],
  [
    { code: 'layout-positions', missing: ['3'], twice: ['1'], unknown: ['x', 'y'] },
    'The layout does not name every position once. Missing: position 3. More than once: position 1. Not known: x, y.',
    'Write each position once, and "." where there is none.',
  ],
  [
    { code: 'template-places', missing: [], twice: [], unknown: ['x'] },
    'The layout does not name every position once. Not known: x.',
    'Write each position once, and "." where there is none.',
  ],
  [
    { code: 'layout-too-small', rows: 2, columns: 3, places: 6, positions: 8 },
    '2 rows of 3 are 6 places for 8 positions.',
    'The first number is that of the rows: write more of them, or longer ones.',
  ],
  [
    { code: 'layout-too-wide', rows: 1, columns: 41, most: 40 },
    '1 x 41 is too large.',
    'At most 40 rows of 40.',
  ],
  [
    { code: 'template-characters', text: 'cap 🔧', characters: ['🔧', '\u202e'] },
    "'cap 🔧' cannot be drawn: the fonts have no '🔧' (U+1F527), U+202E.",
    'Change the name that holds it, or write this sheet by hand.',
  ],
  [
    { code: 'template-page-small', page: { width: 105, height: 148 }, least: 148 },
    'A template needs paper at least 148 mm wide, and this is 105 x 148 mm.',
    'Print it on a4 or letter.',
  ],
  [
    { code: 'template-too-dense', positions: 40, fits: 26, columns: 13, rows: 2 },
    '40 positions laid out like this would overlap: at most 2 rows of 13 fit on this paper.',
    'Lay them out in more or shorter rows, or print larger paper.',
  ],
  [
    { code: 'template-too-dense', positions: 90, fits: 44, columns: null, rows: null },
    '90 names would overlap on a circle: 44 fit on this paper.',
    'Lay them out in rows.',
  ],
  [
    { code: 'template-pitch-small', pitch: 8, least: 19.5 },
    'At 8 mm between neighbours the names would overlap.',
    'From 19.5 mm on they do not; without a pitch they are spread over the sheet.',
  ],
  [
    { code: 'template-pitch-small', pitch: 8, least: null },
    'At 8 mm between neighbours the names would overlap.',
    'Leave out the pitch: then they are spread over the sheet.',
  ],
  [
    { code: 'template-pitch-large', pitch: 60, needs: { width: 341, height: 148 }, page: a4, largest: 51.5 },
    'At 60 mm between neighbours this needs 341 x 148 mm, and the paper is 210 x 297 mm.',
    'Up to 51.5 mm fit; or use larger paper, or leave out the pitch.',
  ],
  [
    { code: 'template-pitch-large', pitch: 60, needs: { width: 341, height: 148 }, page: a4, largest: null },
    'At 60 mm between neighbours this needs 341 x 148 mm, and the paper is 210 x 297 mm.',
    'Use larger paper, or leave out the pitch.',
  ],
  [
    { code: 'symbol-too-small', room: 23, needed: 41.43, module: 1, dots: 4, dpi: 72 },
    'The symbol of the container needs 41.4 mm at 72 dpi, and has 23 mm.',
    'Use a printer of higher resolution.',
  ],
])('%j', (trouble, what, cure) => {
  const told = templateTroubleText(state, trouble)
  expect([told.what, ...told.lines].join(' ')).toBe(what)
  expect(told.cure).toBe(cure)
})
