import { describe, expect, test } from 'vitest'
import type { Question } from '../../src/trade/bag-line/bag-item.ts'
import { readBagLine } from '../../src/trade/bag-line/read-bag-line.ts'
import { driveText } from '../../src/trade/drive.ts'
import { threadText } from '../../src/trade/thread.ts'
import { questionText } from '../../src/words/bag-questions.ts'

const names = { thread: threadText, drive: driveText }

/** A bag line for each question, and how it is asked. */
const byCode = {
  'pitch-assumed': ['8 M6x25 bolts', 'No pitch was written: M6 is taken with its coarse pitch, 1 mm.'],
  'pitch-not-standard': [
    '8 M8x1.1x25 bolts',
    'M8x1.1x25: a pitch of 1.1 mm is not in the standard for M8, which has 1.25, 1 or 0.75 mm: is it right?',
  ],
  'usually-single-use': [
    'head gasket',
    'A gasket is usually not fitted again: if so, write "single-use" behind it.',
  ],
  'count-large': ['400 rollers', '400 is a large count: is it right?'],
  'count-assumed': ['valve cover bolts', 'No count was written: 1 is taken.'],
  'broken-or-missing': ['6 of 8 bolts, 2 broken', '2 broken and 2 not found: are these the same ones?'],
  'which-missing': ['cam caps I1..I4, 1 missing', '1 of I1, I2, I3 and I4 is missing: which?'],
  'drive-or-position': ['valve bolt E4', 'E4 was read as the drive: if it is the position, write "@E4".'],
  'drive-unusual': [
    '8 M6x25 hex 19 bolts',
    'Hex 19 on M6x25: not usual; M6 has hex 10 (ISO 4014 hexagon) or hex 8 (ISO 4162 small flange); hex 19 is for M12 (DIN 931 hexagon, withdrawn) and M14 (JIS B 1180 small hexagon): is it right?',
  ],
  'unit-mix': [
    '4 3/8-16x1 hex 14 bolts',
    'Hex 14 on 3/8-16x1: inches and millimetres are mixed; 3/8 has hex 9/16 (ASME B18.2.1 hexagon); hex 14 is for M10 (JIS B 1180 small hexagon): is it right?',
  ],
} satisfies Record<Question['code'], [string, string]>

describe('what a bag line leaves open', () => {
  test.each(Object.entries(byCode))('%s: %j', (code, [line, says]) => {
    const read = readBagLine(line, { units: 'metric' })
    if (!read.understood) throw new Error(JSON.stringify(read))
    const questions = read.items.flatMap((item) => ('questions' in item ? item.questions : []))
    const asked = questions.filter((question) => question.code === code)
    expect(asked.map((question) => questionText(question, names))).toEqual([says])
  })
})
