import type { Command, Fitting, Into, TakenOff } from '../../src/journal/command.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import type { NamedPlace } from '../../src/ledger/place.ts'
import type { Pass } from '../../src/plan/tightening.ts'

// Short names for the commands that most tests give, so that a test shows what was done and nothing else.

export const hand: Into = { kind: 'hand' }
export const newBag: Into = { kind: 'new', container: 'bag' }
export const bag = (no: number): Into => ({ kind: 'container', no })
export const slot = (no: number, name: number | string): Into => ({ kind: 'container', no, slot: `${name}` })
export const at = (place: NamedPlace): Into => ({ kind: 'place', place })

type Item = Partial<TakenOff> & { into?: Into }

/** A strip step of that title. */
export const strip = (title: string, more: { after?: number[]; hides?: boolean } = {}): Command => ({
  do: 'begin-strip',
  title,
  ...more,
})
export const endStrip: Command = { do: 'end-strip' }

/** A number of alike fasteners comes off, into a new bag unless told otherwise. */
export const off = (count: number, name: string, { into = newBag, ...more }: Item = {}): Command => ({
  do: 'take-off',
  item: { kind: 'fastener', name, found: count, should: count, ...more },
  into,
})

/** A matched set comes off: one piece for each position. */
export const matchedOff = (
  positions: string[],
  name: string,
  { into = newBag, ...more }: Item = {},
): Command => ({
  do: 'take-off',
  item: { kind: 'part', name, found: positions.length, should: positions.length, positions, ...more },
  into,
})

export const aidIn = (name: string, count = 1): Command => ({ do: 'put-in', kind: 'aid', name, count })
export const toolOut = (name: string, count = 1): Command => ({ do: 'put-in', kind: 'tool', name, count })
export const drain = (name: string, litres = 2): Command => ({
  do: 'drain',
  name,
  litres,
  typed: `${litres} l`,
})
export const fill = (fluid: `f${number}`, litres = 2): Command => ({
  do: 'fill',
  fluid,
  litres,
  typed: `${litres} l`,
})
export const mark = (text: string, piece?: PieceId): Command => ({ do: 'mark', text, piece })
export const confirm = (id: `m${number}`): Command => ({ do: 'confirm', mark: id })

export const move = (piece: PieceId, into: Into, more: Partial<Command & { do: 'move' }> = {}): Command => ({
  do: 'move',
  piece,
  into,
  ...more,
})
export const supply = (piece: PieceId, count: number, into: Into = at('bench')): Command => ({
  do: 'supply',
  piece,
  count,
  into,
  instead: false,
})
export const replace = (piece: PieceId, count: number, into: Into = at('bench')): Command => ({
  do: 'supply',
  piece,
  count,
  into,
  instead: true,
})
/** A new piece was held beside the old one, and is right. */
export const alike = (piece: PieceId, more: Partial<Command & { do: 'compare' }> = {}): Command => ({
  do: 'compare',
  piece,
  features: [],
  rest: 'alike',
  ...more,
})
export const lose = (piece: PieceId, count?: number): Command =>
  move(piece, at('lost'), { count, reason: 'not to be found' })

export const begin = (step: number): Command => ({ do: 'begin-build', step })
/** Fits a piece: `fit` is a word of the test runner. */
export const putOn = (piece: PieceId, position?: string, count?: number): Command => ({
  do: 'fit',
  fittings: [{ piece, position, count }],
})
export const putOnAll = (step: number, ...fittings: Fitting[]): Command => ({ do: 'fit', step, fittings })
export const done = (step?: number, result?: string): Command => ({ do: 'close-step', step, result })
export const look = (step: number): Command => ({ do: 'look', step })
export const reopen = (...steps: number[]): Command => ({ do: 'reopen', steps, reason: 'it leaks' })
export const fail = (step: number, ...steps: number[]): Command => ({
  do: 'fail',
  step,
  steps,
  result: 'marks stand one link off',
})
export const override = (
  target: Extract<Command, { do: 'override' }>['target'],
  reason = 'the manual says so',
): Command => ({ do: 'override', target, reason })

export const addStep = (
  title: string,
  more: Partial<Omit<Extract<Command, { do: 'add-step' }>, 'do' | 'title'>> = {},
): Command => ({ do: 'add-step', title, kind: 'check', way: 'build', needs: [], before: [], ...more })

// Torques and angles of the tests are invented; the program takes them from the user and knows none.
export const snug: Pass = { kind: 'snug', typed: 'by hand' }
export const torque = (newtonMetres: number): Pass => ({
  kind: 'torque',
  newtonMetres,
  typed: `${newtonMetres} Nm`,
})
export const angle = (degrees: number): Pass => ({ kind: 'angle', degrees, typed: `${degrees} deg` })
export const tightening = (piece: PieceId, passes: Pass[], order?: string[]): Command => ({
  do: 'set-tightening',
  piece,
  passes,
  order,
})
export const turn = (fastener?: string): Command => ({ do: 'tighten', fastener })
export const turns = (count: number): Command[] => Array.from({ length: count }, () => turn())
export const settleAngle = (turned: boolean): Command => ({
  do: 'settle-angle',
  tightening: 't1',
  turned,
  reason: 'the paint stripe',
})

export const count = (container: number, ...counts: [PieceId | null, number][]): Command => ({
  do: 'count',
  container,
  counts: counts.map(([piece, counted]) => ({ piece, counted })),
})
export const stop = (abrupt = false): Command => ({ do: 'stop', note: 'bolts half down', abrupt })
export const undo: Command = { do: 'undo' }
export const redo: Command = { do: 'redo' }
export const clear: Command = { do: 'clear' }
export const firstStart: Command = { do: 'first-start' }

/** Positions row by row, so many columns wide. */
export const drawn = (piece: PieceId, columns: number, ...positions: string[]): Command => ({
  do: 'lay-out',
  piece,
  layout: {
    shape: columns < positions.length ? 'grid' : 'row',
    places: positions.map((position, index) => ({
      position,
      x: index % columns,
      y: Math.floor(index / columns),
    })),
  },
})
export const check = (newtonMetres: number): Pass => ({
  kind: 'check',
  newtonMetres,
  typed: `check ${newtonMetres} Nm`,
})
export const backOff: Pass = { kind: 'back-off', typed: 'back off' }
export const backBy = (degrees: number): Pass => ({
  kind: 'back-off',
  degrees,
  typed: `back off ${degrees} deg`,
})
export const witness: Pass = { kind: 'witness', typed: 'mark' }
export const missed = (fastener?: string): Command => ({
  do: 'miss-torque',
  fastener,
  says: 'it keeps turning',
})
export const loosening = (passes: Pass[], order: string[]): Command => ({
  do: 'set-loosening',
  name: 'head bolts',
  passes,
  order,
})
export const turnedOver = (step?: number): Command => ({ do: 'turn-over', step })
