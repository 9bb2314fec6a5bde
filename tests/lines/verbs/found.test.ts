import { expect, test } from 'vitest'
import { readLine } from '../../../src/lines/read-line.ts'
import { driveText } from '../../../src/trade/drive.ts'
import { threadText } from '../../../src/trade/thread.ts'
import { classText } from '../../../src/trade/torque/fastener-class.ts'
import { told, topEnd } from '../told.ts'

const state = told(...topEnd)

/** What is found, each part as the trade writes it. */
function found(line: string): unknown {
  const reading = readLine(line, state)
  if (reading.kind !== 'ask' || reading.ask.ask !== 'found') return reading
  const { count, words, piece } = reading.ask.found
  const { thread, lengthMm, drive, fastenerClass, name } = piece
  return [
    count,
    words,
    thread && threadText(thread),
    lengthMm,
    fastenerClass && classText(fastenerClass),
    drive && driveText(drive),
    name,
  ]
}
const not = undefined

test.each<[string, unknown[]]>([
  ['found M6x25 hex 10', [1, 'M6x25 hex 10', 'M6x25', not, not, 'hex 10', not]],
  ['found M6x25 hex 10 bolt', [1, 'M6x25 hex 10 bolt', 'M6x25', not, not, 'hex 10', 'bolt']],
  ['found 2 M8x45 8.8 cover bolts', [2, '2 M8x45 8.8 cover bolts', 'M8x45', not, '8.8', not, 'cover bolts']],
  ['found a bolt', [1, 'a bolt', not, not, not, not, 'bolt']],
  [
    'found the cover bolt under the bench',
    [1, 'the cover bolt under the bench', not, not, not, not, 'cover bolt'],
  ],
  ['found M6 on the floor', [1, 'M6 on the floor', 'M6', not, not, not, not]],
  ['found bolt 25 mm long', [1, 'bolt 25 mm long', not, 25, not, not, 'bolt']],
  ['found T30 screw, 12.5 mm long', [1, 'T30 screw, 12.5 mm long', not, 12.5, not, 'T30', 'screw']],
  ['found gasket', [1, 'gasket', not, not, not, not, 'gasket']],
  ['found cam cap I3', [1, 'cam cap I3', not, not, not, not, 'cam cap I3']],
  // On a bag these lack their ends or their place; found, they have a name.
  ['found 2 hoses', [2, '2 hoses', not, not, not, not, 'hoses']],
  ['found rag', [1, 'rag', not, not, not, not, 'rag']],
])('%j', (line, expected) => expect(found(line)).toEqual(expected))

test.each([
  ['found', { code: 'missing', what: 'PIECE' }],
  [
    'found M7.3x25 bolt',
    { code: 'not-understood', part: 'M7.3x25', nearest: expect.stringMatching(/^found M7x25 bolt/) },
  ],
  ['found M6x25 bolt; M8 nut', { code: 'not-understood', nearest: 'found M6x25 bolt' }],
])('%j is not understood', (line, misreading) =>
  expect(readLine(line, state)).toMatchObject({ kind: 'misread', misreading }),
)
