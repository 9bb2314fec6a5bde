import type {
  Command,
  ContainerKind,
  Fitting,
  Into,
  NewPicture,
  TakenOff,
} from '../../src/journal/command.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import type { NamedPlace, Place } from '../../src/ledger/place.ts'
import type { DecisionTarget } from '../../src/plan/facts.ts'
import type { Pass } from '../../src/plan/tightening.ts'
import type { Measurement } from '../../src/trade/measuring/measurement.ts'

// Short forms of the commands, so that a story reads as what was done.

export const job: Command = {
  do: 'open-job',
  no: 17,
  name: 'Blue twin top end',
  machine: 'the blue twin',
  units: 'metric',
}

export const hand: Into = { kind: 'hand' }
export const bench = at('bench')

export function at(place: NamedPlace): Into {
  return { kind: 'place', place }
}

export function into(no: number, slot?: string): Into {
  return { kind: 'container', no, slot }
}

export function open(kind: ContainerKind, slots?: number, inside?: number, no?: number): Command {
  return { do: 'open-container', kind, slots, inside, no }
}

/** What a copy said and does not fit is left out. */
export function merged(...leftOut: string[]) {
  return {
    do: 'note-merge',
    copy: '/media/stick/twin',
    taken: 2,
    leftOut: leftOut.map((says, index) => ({
      entry: `there-${index + 1}`,
      at: '2026-05-02T09:30:00.000Z',
      by: 'Ola',
      says,
    })),
    renumbered: [],
  } satisfies Command
}

export function begin(title: string, after?: number[]): Command {
  return { do: 'begin-strip', title, after }
}

export function labels(count: number): Command {
  return { do: 'deal-labels', count }
}

export function voided(from: number, to: number): Command {
  return { do: 'void-labels', from, to, reason: 'the sheet is lost' }
}

/** A picture whose bytes go by a number. */
export function picture(file: string, bytes: number, belongs: NewPicture['belongs'] = null): NewPicture {
  return { file, sha256: `${bytes}`.padStart(64, '0'), taken: '2026-05-02T14:03:11', belongs }
}

export function pictures(...added: NewPicture[]): Command {
  return { do: 'add-pictures', pictures: added }
}

export const end: Command = { do: 'end-strip' }

export function added(title: string, needs: number[] = [], before: number[] = []): Command {
  return { do: 'add-step', title, kind: 'other', way: 'build', needs, before }
}

/** The round that comes after all else before the first start. */
export const lastRound: Command = { ...added('Tip out every bag'), do: 'add-step', due: 'last' } as Command

export function afterStart(title: string, due?: string): Command {
  return { do: 'add-step', title, kind: 'check', way: 'after-start', needs: [], before: [], due }
}

/** Common pieces come off, all of them unless told otherwise. */
export function off(count: number, name: string, more: Partial<TakenOff> = {}, to: Into = hand): Command {
  return {
    do: 'take-off',
    item: { kind: 'fastener', name, found: count, should: count, ...more },
    into: to,
  }
}

/** A matched set comes off. */
export function set(name: string, positions: string[], to: Into = hand): Command {
  return off(positions.length, name, { kind: 'part', positions }, to)
}

export const gasket = off(1, 'gasket', { kind: 'part', singleUse: true })

export function put(name: string, where: string): Command {
  return { do: 'put-in', kind: 'aid', name, count: 1, where }
}

export function tool(name: string): Command {
  return { do: 'put-in', kind: 'tool', name, count: 1 }
}

export function drained(name: string, litres: number): Command {
  return { do: 'drain', name, litres, typed: `${litres} L` }
}

export function filled(fluid: `f${number}`, litres: number): Command {
  return { do: 'fill', fluid, litres, typed: `${litres} L` }
}

export function marked(text: string, piece?: PieceId): Command {
  return { do: 'mark', text, piece }
}

export function move(
  piece: PieceId,
  to: Into,
  more: { count?: number; from?: Place; reason?: string } = {},
): Command {
  return { do: 'move', piece, into: to, ...more }
}

export function bought(count: number, piece: PieceId, instead = false, to: Into = bench): Command {
  return { do: 'supply', piece, count, into: to, instead }
}

export function take(step: number): Command {
  return { do: 'begin-build', step }
}

export function fitted(...pieces: (PieceId | Fitting)[]): Command {
  return { do: 'fit', fittings: pieces.map((one) => (typeof one === 'string' ? { piece: one } : one)) }
}

export function done(step?: number): Command {
  return { do: 'close-step', step }
}

export function look(step: number): Command {
  return { do: 'look', step }
}

export function tightening(piece: PieceId, ...passes: Pass[]): Command {
  return { do: 'set-tightening', piece, passes }
}

/** Invented values: no guide to any real joint. */
export const torque: Pass = { kind: 'torque', newtonMetres: 20, typed: '20 Nm' }
export const angle: Pass = { kind: 'angle', degrees: 90, typed: '90 deg' }

export function turn(fastener?: string): Command {
  return { do: 'tighten', fastener }
}

export function stopped(note: string, abrupt = false): Command {
  return { do: 'stop', note, abrupt }
}

export function recount(container: number, ...counts: [PieceId | null, number][]): Command {
  return { do: 'count', container, counts: counts.map(([piece, counted]) => ({ piece, counted })) }
}

export function reopen(...steps: number[]): Command {
  return { do: 'reopen', steps, reason: 'a washer was left out' }
}

export function override(target: DecisionTarget): Command {
  return { do: 'override', target, reason: 'the gauge is on its way' }
}

/** Positions row by row, so many columns wide. */
export function drawn(piece: PieceId, columns: number, ...positions: string[]): Command {
  const places = positions.map((position, index) => ({
    position,
    x: index % columns,
    y: Math.floor(index / columns),
  }))
  return { do: 'lay-out', piece, layout: { shape: columns < positions.length ? 'grid' : 'row', places } }
}

export const eased: Pass = { kind: 'back-off', degrees: 90, typed: '90 deg' }

export function loosening(name: string, order: string[], ...passes: Pass[]): Command {
  return { do: 'set-loosening', name, passes, order }
}

export function missed(says: string, fastener?: string): Command {
  return { do: 'miss-torque', fastener, says }
}

export function turnedByHand(title: string, turns?: number): Command {
  return { do: 'add-step', title, kind: 'turn', way: 'build', needs: [], before: [], turns }
}

export function turnedOver(step?: number): Command {
  return { do: 'turn-over', step }
}

/** A plain size, as `20.01` mm each. */
export function measured(name: string, sizes: number[], limits?: Measurement['limits']): Command {
  const readings = sizes.map((mm) => ({ mm, typed: `${mm}` }))
  return { do: 'measure', name, measurement: { kind: 'size', readings, ...(limits && { limits }) } }
}
