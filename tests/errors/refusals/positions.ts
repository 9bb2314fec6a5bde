import type { Cases } from '../case.ts'
import { begin, drawn, job, off, put, set, torque } from '../commands.ts'

const bolts = [job, begin('Cover off'), off(4, 'cover bolts', { size: 'M6x25' })]
const twoLots = [...bolts, off(2, 'cover bolts', { size: 'M6x40' })]
const caps = [job, begin('Caps off'), set('cam caps', ['I1', 'I2', 'I3', 'I4'])]

export const positionCases = {
  'no-pattern': [
    {
      given: [job, put('rag', 'inlet port')],
      when: drawn('p1', 2, '1', '2'),
      says: [
        'Rag at inlet port has no place among others of its kind.',
        '> Positions are for matched sets and for fasteners that look alike.',
      ],
    },
    {
      given: [job, begin('Seat off'), off(1, 'seat bolt')],
      when: drawn('p1', 1, '1'),
      says: [
        'Seat bolt is one piece alone: there is nothing to tell it from.',
        '> Positions are for matched sets and for fasteners that look alike.',
      ],
    },
    {
      given: twoLots,
      when: drawn('p1', 3, '1', '2', '3', '4', '5', '6'),
      says: [
        'Nobody wrote down where these belong: cover bolts M6x25 and cover bolts M6x40.',
        '> Positions are written as they come off, as in "off 5 M6x25 bolts @1..3,5,6".',
      ],
    },
    {
      given: twoLots,
      when: { do: 'set-tightening', piece: 'p1', with: ['p2'], passes: [torque] },
      says: [
        'Nobody wrote down where these belong: cover bolts M6x25 and cover bolts M6x40.',
        '> Positions are written as they come off, as in "off 5 M6x25 bolts @1..3,5,6".',
      ],
    },
  ],
  'layout-wrong': [
    {
      given: bolts,
      when: drawn('p1', 2, '1', '2', '2', '9'),
      says: [
        'A drawing shows each position once, each in a place of its own.',
        '  Missing: position 3, position 4.',
        '  Not there: position 9.',
        '  Twice: position 2.',
        '> Draw it again.',
      ],
    },
    {
      given: caps,
      when: {
        do: 'lay-out',
        piece: 'p1',
        layout: {
          shape: 'free',
          places: [
            { position: 'I1', x: 0, y: 0 },
            { position: 'I2', x: 1, y: 0 },
            { position: 'I3', x: 1, y: 0 },
            { position: 'I4', x: 2, y: 0 },
          ],
        },
      },
      says: [
        'A drawing shows each position once, each in a place of its own.',
        '  On top of another: I3.',
        '> Draw it again.',
      ],
    },
  ],
  'not-laid-out': [
    {
      given: caps,
      when: { do: 'point', piece: 'p1', positions: ['I1'], arrow: 'left' },
      says: [
        'How the positions of cam cap I1 lie on the machine is not drawn yet.',
        '> Draw them: "layout p1: 2x4", "layout p1: circle" or row by row, "layout p1: 1 2 / . 3".',
      ],
    },
    {
      given: bolts,
      when: { do: 'set-tightening', piece: 'p1', passes: [torque], by: 'crosswise' },
      says: [
        'How the positions of cover bolts M6x25 lie on the machine is not drawn yet.',
        '> Draw them: "layout p1: 2x4", "layout p1: circle" or row by row, "layout p1: 1 2 / . 3".',
      ],
    },
  ],
  'rule-not-for-shape': [
    {
      given: [...bolts, drawn('p1', 4, '1', '2', '3', '4')],
      when: { do: 'set-tightening', piece: 'p1', passes: [torque], by: 'star' },
      says: [
        'The rule star is not for a row.',
        '> Take "tighten PIECE: ... by row"; or type the manual\'s order: "tighten PIECE: ... order 3,1,2".',
      ],
    },
  ],
} satisfies Record<string, Cases>
