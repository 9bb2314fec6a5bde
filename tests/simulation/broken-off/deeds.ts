import type { Act } from '../job/act.ts'
import { buildActs } from '../job/build-acts.ts'
import { act, stripActs } from '../job/strip-acts.ts'
import { waitActs } from '../job/wait-acts.ts'
import type { Machine } from '../machines/machine.ts'

/** An act of a whole job, and when in the job it is done. `eases`: the bolt that it eases, counted from 0. */
export interface Deed {
  act: Act
  phase: 'strip' | 'wait' | 'build'
  eases?: number | undefined
}

/**
 * A whole job without a mistake. Bolts that have a drawing are eased in turn before they come off, and what the manual
 * asks is said while it is apart, so that the record knows it before anybody else goes on.
 */
export function deedsOf(machine: Machine): Deed[] {
  const build = buildActs(machine).filter((each) => !isOfRound(each))
  const isSaid = ({ doing }: Act) => doing === 'set passes'
  return [
    ...stripActs(machine).flatMap((each) => [...easing(each), { act: each, phase: 'strip' as const }]),
    ...waitActs(machine)
      .filter((each) => !isOfRound(each))
      .map((each) => ({ act: each, phase: 'wait' as const })),
    ...build.filter(isSaid).map((each) => ({ act: each, phase: 'wait' as const })),
    ...build.filter((each) => !isSaid(each)).map((each) => ({ act: each, phase: 'build' as const })),
  ]
}

/** The round over the bags is proposed by the program; here nobody accepts it, so that all is as the acts say. */
function isOfRound({ doing, isNeedless, step, thing }: Act): boolean {
  return isNeedless !== undefined || (doing === 'ask' && step === 0 && thing === undefined)
}

function easing({ doing, thing, step }: Act): Deed[] {
  if (doing !== 'off' || thing?.kind !== 'lot' || !thing.passes?.layout) return []
  const { layout } = thing.passes
  const set = act('draw', step, () => `loosen ${thing.name} ${layout}: 1/2 turn, free`, thing)
  return [
    { act: set, phase: 'strip' },
    ...Array.from(
      { length: 2 * thing.count },
      (_, eases): Deed => ({
        act: act('turn', step, () => 'turn', thing),
        phase: 'strip',
        eases,
      }),
    ),
  ]
}

/** The bolt that such a deed eases, where they are eased one after the other. */
export function easedBolt(order: readonly string[], eases: number): string {
  return order[eases % order.length] ?? ''
}
