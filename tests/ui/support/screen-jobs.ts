import type { Command } from '../../../src/journal/command.ts'

/** Pictures as they came from the phone: when they were taken, and what they show as far as that is certain. */
const PICTURES = [
  { file: 'cover.jpg', taken: '2030-01-14T16:20:00', belongs: { container: 1 } },
  { file: 'bolts.jpg', taken: '2030-01-14T16:20:09', belongs: { container: 1 } },
  { file: 'thumb.jpg', taken: null, belongs: null },
  { file: 'pump.jpg', taken: '2030-01-15T13:40:00', belongs: { step: 2 } },
  { file: 'hoses.jpg', taken: '2030-01-15T13:44:00', belongs: null },
].map((picture, index) => ({ ...picture, sha256: String(index).padStart(64, '0') }))

const GOING_ON = [
  'begin cylinder head off, does not hide',
  'off 8 M10x120 E14 head bolts @A1..A4,B1..B4 into new bag',
  'off cylinder head into bench',
  'mark cylinder head: dot towards the chain',
  'begin water pump off, does not hide',
  'off 3 M6x25 hex 8 pump bolts into new bag',
  'off water pump into bench',
  'caution: spring under load',
  'end',
  'layout head bolts: 2x4',
  'tighten head bolts: 20 Nm, 40 Nm, 90 deg order A2,B3,A3,B2,A1,B4,A4,B1',
  'sealant 2: grey sealant on the pump face, within 10 min, cures 24 h',
]

/** Jobs of an invented engine, in the language of the record, that together come to every screen. */
export const SCREEN_JOBS = {
  new: [],
  /** The second step comes off: one bag has just been opened. */
  comingOff: [
    'shelf behind the lift',
    'bin covers in 1',
    'begin valve cover off',
    'off 8 M6x25 hex 10 valve cover bolts into new bag',
    'off valve cover into covers',
    'off valve cover gasket, single-use into bench',
    'begin cam caps off',
    'off cam caps I1..I4,E1..E4 into new bag',
    'layout cam caps: I1 I2 I3 I4 / E1 E2 E3 E4',
    'mark cam cap I1: arrow towards the chain',
    'off 2.1 L coolant out',
    'off 16 M6x40 hex 8 cam cap bolts into new bag',
  ],
  /** Nothing but the bolts that are eased before they come off. */
  easing: [
    'begin cylinder head off',
    'loosen head bolts A1..A4,B1..B4 2x4: 1/2 turn, free order A4,B1,B4,A1,A3,B2,B3,A2',
    'turn',
    'turn',
    'turn',
  ],
  /** Four steps are off, and labels for more are printed. */
  allOff: [
    'begin cover off, does not hide',
    'off 4 M6x20 hex 8 cover bolts into new bag',
    'begin pump off, does not hide',
    'off 2 M8x30 hex 10 pump bolts into new bag',
    'off dowel into new bag',
    'begin guide off, does not hide',
    'off guide gasket, single-use into new bag',
    'off 2 clips into new bag',
    'begin sump plate off, does not hide',
    'off 6 M5x12 hex 8 plate screws into new bag',
    'bag',
    'end',
    'leave off 2 clips because not needed',
    'lost 1 cover bolts because it fell into the drain',
    'bag',
    'void 8 because torn, see 7',
    { do: 'deal-labels', count: 24 },
    { do: 'add-pictures', pictures: [...PICTURES] },
  ],
  /** A pump and a head are to go back on. */
  goingOn: GOING_ON,
  /** The same, later: the head is on, and its bolts are at the last pass, which turns them by an angle. */
  turning: [
    ...GOING_ON,
    'take 2',
    'applied s1',
    'fit water pump',
    'fit pump bolts',
    'done',
    'take 1',
    'fit cylinder head',
    'fit head bolts',
    'confirm m1',
    ...Array<string>(18).fill('turn'),
  ],
  /** A cover hides the pump: a look before it. */
  covered: [
    'begin cover off, hides',
    'off cover into bench',
    'off 4 M6x20 hex 8 cover bolts into new bag',
    'begin pump off, does not hide',
    'off 2 M8x30 hex 10 pump bolts into new bag',
    'off rag > port',
    'end',
    'add check leak test',
    'add later check oil level due after 10 km',
    'take out rag',
    'take 2',
    'fit pump bolts',
    'done',
  ],
  /** What is judged and what is awaited, six days before it is late. */
  waiting: [
    'begin head off, does not hide',
    'off cylinder head into bench',
    'off cam caps I1..I4 into new bag',
    'off 8 M10x120 E14 head bolts, single-use into new bag',
    'off water pump into bench',
    'off 2.1 L coolant out',
    'end',
    'on water pump: 3 studs M6x25',
    'check cylinder head: look for cracks; measure flatness',
    'check cam caps: look for score',
    'judge water pump replace because the bearing is loose',
    'when metal in the oil: check cam caps: look for score',
    'new water pump',
    'out cylinder head to the machine shop for skimming due in 5 days expect flat within 0.05',
    'lost 1 cam cap I2 because it rolled away',
    'buy 8 head bolts from the dealer at 3.20 EUR due in 2 days',
    'step 1 minutes 90',
  ],
  /** One step, and all of it is home again. */
  home: [
    'begin side cover off, does not hide',
    'off 2 M6x16 hex 8 cover bolts into new bag',
    'end',
    'add later check oil level due after 10 km',
    'take 1',
    'fit cover bolts',
    'done',
  ],
} satisfies Record<string, readonly (string | Command)[]>

export type ScreenJob = keyof typeof SCREEN_JOBS
