import type { State } from '../../journal/state.ts'
import { singular } from '../grammar.ts'
import { liesIn } from '../lookups.ts'
import { containerPlace } from '../places.ts'
import { homeOfLot } from './container-label.ts'
import { type Lot, lotsOf } from './lots.ts'
import { oneLines } from './one-line.ts'
import { partOf } from './part.ts'
import { rangesText } from './position-ranges.ts'
import { commonStatus } from './status.ts'

/**
 * The shortest form of a label, to be copied with a marker: two to four short lines.
 * @param code the nine digits of its label code
 */
export function markerText(state: State, no: number, code: string): string[] {
  const lots = lotsOf(state, liesIn(state, no))
  const inside = [...state.containers.values()].filter(
    (other) => other.inside === no && other.voided === null,
  )
  const homes = lots.flatMap((lot) => homeOfLot(lot) ?? [])
  const steps = [...new Set(homes.map(({ step }) => step))]
  const at = new Set(homes.map((home) => home.at))
  const isVoid = state.containers.get(no)?.voided != null
  const status = isVoid
    ? 'VOID'
    : commonStatus(
        lots.map((lot) => lot.status),
        inside.length > 0 ? 'HOLDS OTHERS' : 'EMPTY',
      )
  const [step] = steps
  const part = steps.length === 1 && step !== undefined ? partOf(state, no, step) : null
  return oneLines([
    `${code.slice(0, 3)} ${code.slice(3, 7)} ${code.slice(7)}`,
    whatText(lots, no) || inside.map((other) => `${other.kind} ${other.no}`.toUpperCase()).join(', '),
    whereText([...at], steps),
    [part?.replace(' of ', '/') ?? '', status === 'FIT AGAIN' ? '' : status].filter(Boolean).join(' '),
  ])
}

/** The most important lot, and how many more: `8 VALVE COVER BOLTS M6x25 +2 MORE`. */
function whatText(lots: readonly Lot[], container: number): string {
  const [first, ...more] = lots
  if (!first) return ''
  const rest = more.length > 0 ? ` +${more.length} MORE` : ''
  return `${lotText(first, container)}${rest}`
}

function lotText(lot: Lot, container: number): string {
  const [first] = lot.members
  if (!first) return ''
  const { piece, home } = first.account
  const noun = (lot.count === 1 ? singular(piece.name) : piece.name).toUpperCase()
  // The thread and the length tell bolts apart; what drives them, the hand finds out.
  const size = piece.size === undefined ? '' : ` ${piece.size.split(' ')[0]}`
  const here = lot.members.filter(({ lying }) => containerPlace(lying.place)?.container === container)
  const positions =
    home.position === undefined
      ? (home.alikeAt ?? [])
      : here.map(({ account }) => account.home.position ?? '')
  const at = positions.length === 0 ? '' : ` @${rangesText(positions, '–', ',')}`
  return `${lot.count} ${noun}${size}${at}`
}

function whereText(homes: readonly string[], steps: readonly number[]): string {
  if (steps.length === 0) return ''
  const numbers = `${steps.length === 1 ? 'STEP' : 'STEPS'} ${steps.join(', ')}`
  return homes.length === 1 ? `> ${homes[0]?.toUpperCase()}, ${numbers}` : `> ${numbers}`
}
