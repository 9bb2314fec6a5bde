import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { readLine } from '../../src/lines/read-line.ts'
import type { Misreading } from '../../src/lines/reading.ts'
import type { BagFault } from '../../src/trade/bag-line/bag-item.ts'
import { misreadingText, whichPieceText } from '../../src/words/misreadings.ts'
import { begin, drained, job, off, set } from '../errors/commands.ts'
import { play, shown } from '../errors/play.ts'
import { quoted } from '../errors/typed.ts'

const given: Command[] = [
  job,
  begin('Cam caps off'),
  set('cam caps', ['I1', 'I2']),
  off(4, 'cap bolts', { size: 'M6x35' }),
  drained('coolant', 2.1),
]
const { state } = play(given)

/** Lines that are not understood, and what is said then. */
const byCode = {
  empty: [[' ', ['Nothing was written.', '> "help" shows what can be written.']]],
  'too-long': [
    [
      'off 8 bolts'.padEnd(600, '!'),
      ['A line has at most 499 characters.', '> Say it in two lines, so that nothing is cut off.'],
    ],
  ],
  'unknown-word': [
    ['tkae 3', ["No line begins with 'tkae'.", '> Perhaps "take".']],
    ['8 M6x25 bolts', ["No line begins with '8'.", '> What came off begins with "off".']],
    ['xyzzy', ["No line begins with 'xyzzy'.", '> "help" shows what can be written.']],
    [
      'restore /media/stick/twin.zip',
      [
        'A back-up becomes a job of its own, beside this one.',
        '> Leave, and type "putback restore FILE" in a shell.',
      ],
    ],
  ],
  missing: [
    ['settle w3', ['Settle: HOW is missing.', '> Write "settle w3: HOW".']],
    [
      'begin',
      ['Begin: TITLE is missing.', '> Write "begin TITLE [after 1,2 | free] [hides | does not hide]".'],
    ],
  ],
  'not-a-number': [['take three', ["'three' is no number.", '> Write "take N".']]],
  'not-understood': [
    ['fill coolant 2.1 bar', ["Fill does not understand '2.1 bar'.", '> Perhaps "fill coolant 2.1 L".']],
  ],
  'no-such-piece': [
    [
      'fit cam cup I1',
      [
        "No piece is called 'cam cup I1'.",
        '  p1  cam cap I1: 1 in bag 1.',
        '  p2  cam cap I2: 1 in bag 1.',
        '  p3  cap bolts M6x35: 4 in bag 1.',
        '> Name one of these, or another.',
      ],
    ],
    ['fit dowel', ["No piece is called 'dowel'.", '> "where" shows every piece that is off.']],
  ],
  'no-such-place': [
    [
      'move p1 to nowhere',
      [
        "'nowhere' is no place and no container.",
        '> Say a container, "bag 3" or "tray 3/5", a new one, "new bag", or bench, out, spare, scrap, lost, toolbox.',
      ],
    ],
  ],
  'no-such-fluid': [
    ['fill oil 2 L', ["No one fluid is called 'oil'.", '  f1 coolant.', '> Name one of these by its id.']],
  ],
  'no-such-proposal': [['accept 9', ["There is no proposal '9', only 1 to 4.", '> "proposals" shows them.']]],
  'one-each': [
    [
      'seen t1,m2: all tight',
      [
        "Seen is said of each by itself, and 't1' and 'm2' are 2.",
        '> Look at each, and write a line for it: "seen t1: all tight".',
      ],
    ],
  ],
  'reason-missing': [['reopen 1', ['Reopen needs a reason.', '> Write "reopen 3,4 because REASON".']]],
  amount: [
    ['= 22', ["'22' has no unit that fits here.", '> Perhaps "= 22 Nm".']],
    ['= 0 Nm', ["'0 Nm' is zero or less.", '> Perhaps "= 22 Nm".']],
    ['= 9999 Nm', ["'9999 Nm' is more than it can be on a machine.", '> Perhaps "= 22 Nm".']],
    [
      '= 10,000 Nm',
      [
        "'10,000 Nm' has a comma that may part thousands or be a decimal one: write a point or nothing.",
        '> Perhaps "= 10.000 Nm".',
      ],
    ],
    ['= 1.2.3 Nm', ["'1.2.3 Nm' has no number that is understood.", '> Perhaps "= 22 Nm".']],
    [
      '= 3 qt',
      [
        "'3 qt' may be the US measure or the imperial one, which differ by a fifth.",
        '> Perhaps "= 3 US qt".',
      ],
    ],
    ['setting 40 mm', ["'40 mm' is of another kind.", '> Perhaps "setting 40 Nm".']],
    ['= (22 Nm)', ['The amount is missing.', '> Write "= AMOUNT [in UNIT]".']],
  ],
  layout: [
    [
      'layout cap bolts: 3x1',
      [
        '3 rows of 1 are 3 places for 4 positions.',
        '> The first number is that of the rows: write more of them, or longer ones.',
      ],
    ],
    [
      'layout cap bolts: ring',
      [
        "'ring' is no layout.",
        '> Perhaps "layout cap bolts: row"; rows are written as in "layout cap bolts: 1 2 3 / 6 . 4".',
      ],
    ],
  ],
  passes: [
    [
      'tighten cap bolts: 20 Nm, mark, 40 Nm, oiled',
      [
        "'mark' is drawn when everything is turned: it is the last pass.",
        '> Perhaps "tighten cap bolts: 20 Nm, 40 Nm, mark, oiled".',
      ],
    ],
    [
      'tighten cap bolts: 20',
      ["'20' is no pass that is understood.", '> Perhaps "tighten cap bolts: 20 Nm".'],
    ],
    // A figure that was not typed is not proposed.
    [
      'tighten cap bolts: 30%, 70%',
      [
        "'30%' has no torque that it is a percentage of.",
        '> Write "tighten PIECE: 20 Nm, 40 Nm, 90 deg [, oiled|dry] [order 3,1,2 | by star] [because REASON]".',
      ],
    ],
    [
      'loosen cap bolts: 1/4 turn, 20 Nm',
      ["'20 Nm' is no pass that is understood.", '> Perhaps "loosen cap bolts: 1/4 turn, fully".'],
    ],
  ],
  shims: [
    [
      'shims I1 0.14 2.45 wanted I 0.15',
      [
        "'I 0.15' is no range: both limits are needed, as the manual gives them.",
        '> Write "shims I1 0.14 2.45 wanted I LEAST..MOST".',
      ],
    ],
  ],
  measuring: [
    [
      'measure flatness of head: 0,02,0,03',
      [
        "'0,02,0,03' may be decimal commas or several numbers: part them by spaces.",
        '> Perhaps "measure flatness of head: 0,02 0,03".',
      ],
    ],
    [
      'measure colour of head: 3',
      ["'colour of head' is nothing that is measured here.", '> Perhaps "measure size of head: 3".'],
    ],
    [
      'measure free length of spring: 45 limit 44',
      [
        "'limit 44' may be the most or the least: say which.",
        '> Perhaps "measure free length of spring: 45 max 44".',
      ],
    ],
    [
      'measure flatness of head: 0.02 feeler, max 0.05',
      [
        "'feeler' does not say what the instrument reads to.",
        '> Write "measure WHAT of PIECE [POSITIONS]: READINGS [by N INSTRUMENT], LIMITS [manual p. N] [in step N]".',
      ],
    ],
    // As a published table misprints it for 0.10 mm.
    [
      'measure flatness of head: 0.02 max 0.01 mm (0.004 in)',
      [
        "'0.01 mm (0.004 in)' is not the same in both units: a misprint or a slip, so look at the manual and type one of them.",
        '> Write "measure WHAT of PIECE [POSITIONS]: READINGS [by N INSTRUMENT], LIMITS [manual p. N] [in step N]".',
      ],
    ],
  ],
  date: [
    ['buy p3 due soon', ["'soon' is no day that is understood.", '> Perhaps "buy p3 due 4 Dec".']],
    ['buy p3 due 4.13.', ["'4.13.' has no month.", '> Perhaps "buy p3 due 13 Apr".']],
    [
      'buy p3 due next Friday',
      [
        "'next friday' is the one this week to some and the one after it to others.",
        '> Perhaps "buy p3 due friday".',
      ],
    ],
    ['buy p3 due yesterday', ["'yesterday' is gone by.", '> Perhaps "buy p3 due today".']],
    ['buy p3 due in 2 months', ["'in 2 months' is no number of days.", '> Perhaps "buy p3 due in 60 days".']],
  ],
  'no-such-day': [
    ['buy p3 due 31 Nov', ["'31 Nov' is no day: November has 30.", '> Look at the date again.']],
    ['buy p3 due 29.2.2027', ["'29.2.2027' is no day: February 2027 has 28.", '> Look at the date again.']],
  ],
  'two-ways': [
    [
      'buy p3 at 3.20 EUR due 4/12',
      [
        "'4/12' can be read in two ways.",
        '> Write "buy p3 at 3.20 EUR due 4 Dec" or "buy p3 at 3.20 EUR due 12 Apr".',
      ],
    ],
    [
      'buy p3 at 1.250 EUR each due 4 Dec',
      [
        "'1.250 EUR each' can be read in two ways.",
        '> Write "buy p3 at 1250 EUR each due 4 Dec" or "buy p3 at 1.25 EUR each due 4 Dec".',
      ],
    ],
  ],
  duration: [
    [
      'sealant 1: grey sealant on the cap, cures overnight',
      [
        "'overnight' says no number of minutes, hours or days.",
        '> Write "sealant N: WORDS[, within 5 min][, cures 24 h [before step 3, coolant, start]][, use by DATE][, amount 1 tube]".',
      ],
    ],
    [
      'sealant 1: grey sealant on the cap, cures 24 hous',
      [
        "'24 hous' is in no unit that is understood: min, h or days.",
        '> Perhaps "sealant 1: grey sealant on the cap, cures 24 h".',
      ],
    ],
  ],
  price: [
    [
      'buy p3 at 0.125 EUR',
      ["'0.125' has more decimals than there are coins.", '> Perhaps "buy p3 at 0.13 EUR".'],
    ],
    ['buy p3 at 4.50 XYZ', ["'XYZ' is no currency.", '> Perhaps "buy p3 at 4.50".']],
  ],
  'no-such-want': [
    ['buy 9', ["There is no line '9' to buy, only 1 to 1.", '> "to buy" shows them.']],
    ['buy 0', ["There is no line '0' to buy, only 1 to 1.", '> "to buy" shows them.']],
  ],
  'no-such-order': [
    [
      'arrived cap bolts',
      [
        "Nothing that is still to come is called 'cap bolts'.",
        '> What is here without an order: "new PIECE".',
      ],
    ],
    [
      'arrived all',
      ['Nothing that was ordered is still to come.', '> What is here without an order: "new PIECE".'],
    ],
  ],
  'bag-line': [
    [
      'off coolant out 2.1',
      ["'2.1' is no amount of a fluid.", '> Nearest that is understood: "off coolant out 2.1 L".'],
    ],
    [
      'off 8 bolts 20 Nm',
      [
        "'20 Nm' is a torque: it belongs to a tightening, not on a bag.",
        '> Nearest that is understood: "off 8 bolts".',
      ],
    ],
  ],
} satisfies Record<Misreading['code'], [string, string[]][]>

const rows = Object.entries(byCode).flatMap(([code, lines]) =>
  lines.map(([line, says]) => [code, line.slice(0, 30), line, says] as const),
)

describe('why a line is not understood', () => {
  test.each(rows)('%s: %s', (code, _start, line, says) => {
    const reading = readLine(line, state)
    if (reading.kind !== 'misread') throw new Error(`it is understood: ${JSON.stringify(reading)}`)
    expect(reading.misreading.code).toBe(code)
    expect(shown(misreadingText(state, reading.misreading))).toEqual(says)
  })
})

/** A line for each fault of a bag line. */
const byFault = {
  empty: 'off ;',
  count: 'off 0 bolts',
  thread: 'off 8 M6x999x2 bolts',
  class: 'off 8 M6 class 10.8 bolts',
  drive: 'off 8 M6 hex 0 bolts',
  positions: 'off 3 cam caps I1..I4',
  volume: 'off coolant out 2.1',
  torque: 'off 8 bolts 20 Nm',
  minutes: 'took 0 min',
  ends: 'off coolant hose: a > b > c',
  where: 'off rag >',
  text: 'off note:',
  kind: 'off valve cover: 8 M6x25 bolts',
} satisfies Record<BagFault, string>

describe('what a bag line cannot be', () => {
  test.each(Object.entries(byFault))('%s: %s', (fault, line) => {
    const reading = readLine(line, state)
    if (reading.kind !== 'misread') throw new Error(`it is understood: ${JSON.stringify(reading)}`)
    expect(reading.misreading).toMatchObject({ code: 'bag-line', bag: { code: fault } })
    const told = shown(misreadingText(state, reading.misreading))
    const [nearest = ''] = quoted(told)
    expect(readLine(nearest, state), nearest).toMatchObject({ kind: 'commands' })
  })
})

test('which of several pieces', () => {
  const reading = readLine('move cam caps to bench', state)
  if (reading.kind !== 'which-piece') throw new Error(JSON.stringify(reading))
  expect(shown(whichPieceText(state, reading.words, reading.pieces))).toEqual([
    "2 pieces answer to 'cam caps'.",
    '  p1  cam cap I1: 1 in bag 1.',
    '  p2  cam cap I2: 1 in bag 1.',
    '> Say which, by its position or its id.',
  ])
})
