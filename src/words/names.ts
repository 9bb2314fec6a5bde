import type { State } from '../journal/state.ts'
import type { DifferenceId, FaultId, FluidId, LooseningId, MarkId, TighteningId } from '../plan/facts.ts'
import type { Tightening } from '../plan/tightening.ts'
import { litresText } from './grammar.ts'
import { countedPiece, pieceName } from './pieces.ts'
import { placeName } from './places.ts'

/** A step with its title: `step 4, Valve cover off` while it comes off, `step 4, Valve cover` on the way back. */
export function stepName(state: State, no: number): string {
  const step = state.steps.get(no)
  if (!step) return `step ${no}`
  return `step ${no}, ${step.way === 'both' && !step.stripping ? onTheWayBack(step.title) : step.title}`
}

/** A step's title without the word that says it comes off. */
export function onTheWayBack(title: string): string {
  return title.replace(/\s+(off|out|away)$/i, '')
}

/** A mark with what it shows: `mark m1 on cam cap I3 (arrow to the chain)`. */
export function markName(state: State, id: MarkId): string {
  const mark = state.marks.get(id)
  if (!mark) return `mark ${id}`
  return `mark ${id}${mark.piece ? ` on ${pieceName(state, mark.piece)}` : ''} (${mark.text})`
}

/** A tightening by its id and its joint: `t1 (cylinder head: head bolts)`. */
export function tighteningName(state: State, id: TighteningId): string {
  const tightening = state.tightenings.get(id)
  return tightening ? `${id} (${tightening.name})` : `tightening ${id}`
}

/** A loosening by its id and what is eased: `l1 (head bolts)`. */
export function looseningName(state: State, id: LooseningId): string {
  const loosening = state.loosenings.get(id)
  return loosening ? `${id} (${loosening.name})` : `loosening ${id}`
}

/** A pass, counted from 0, with its value as typed: `pass 2 of 3: 40 Nm`. */
export function passName({ passes }: Pick<Tightening, 'passes'>, index: number): string {
  return `pass ${index + 1} of ${passes.length}: ${passes[index]?.typed ?? 'unknown'}`
}

/** A fastener of a tightening: `fastener 4`, `fastener I3`. */
export function fastenerName(name: string): string {
  return `fastener ${name}`
}

/** The same within a sentence, by its own name where that is no bare number: `fastener 4`, `I3`. */
export function fastenerCalled(name: string): string {
  return /^\d+$/.test(name) ? fastenerName(name) : name
}

/** A fault found at a home: `x1, exhaust stud snapped`. */
export function faultName(state: State, id: FaultId): string {
  const fault = state.faults.get(id)
  if (!fault) return `fault ${id}`
  if (fault.in)
    return `${id}, ${fastenerName(fault.in.fastener)} of ${tighteningName(state, fault.in.tightening)}: no torque, ${fault.in.says}`
  return `${id}, ${countedPiece(state, fault.piece, fault.count)} ${fault.kind}`
}

/** A count that does not agree: `d1, bag 5, valve cover bolts: 3 counted, 4 in the record, 1 short`. */
export function differenceName(state: State, id: DifferenceId): string {
  const difference = state.differences.get(id)
  if (!difference) return `difference ${id}`
  const { container, piece, expected, counted } = difference
  const where = `${id}, ${placeName(state, `c${container}`)}`
  if (piece === null) return `${where}: ${counted} that the record does not have there`
  return `${where}, ${pieceName(state, piece)}: ${counted} counted, ${expected} in the record, ${overOrShort(expected, counted)}`
}

/** `1 short`, `2 too many`. */
export function overOrShort(expected: number, counted: number): string {
  return counted < expected ? `${expected - counted} short` : `${counted - expected} too many`
}

/** A fluid with what came out: `coolant (2.1 L drained)`. */
export function fluidName(state: State, id: FluidId): string {
  const fluid = state.fluids.get(id)
  return fluid ? `${fluid.name} (${fluid.typed || litresText(fluid.litresOut)} drained)` : `fluid ${id}`
}
