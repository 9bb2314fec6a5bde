import type { State } from '../../journal/state.ts'
import type { LooseOnes, PlanContainer, PrintedPlan } from '../../label/printed-plan.ts'
import type { Account } from '../../ledger/account.ts'
import type { NamedPlace } from '../../ledger/place.ts'
import type { PaperPlan } from '../../session/label-facts.ts'
import { containerPath, placeName } from '../places.ts'
import { containerLabel, homeOfLot, homeText } from './container-label.ts'
import { jobLine } from './job-line.ts'
import { type Lot, lotsOf, lotText } from './lots.ts'
import { standingText } from './machine-tag.ts'
import { oneLine, oneLines } from './one-line.ts'
import { planStep } from './plan-steps.ts'
import { shortageOf } from './warnings.ts'

/** The nine digits of a number in the label codes of this job: a container, 9000 the machine, 9000 + n step n. */
export type CodeOf = (no: number) => string

/**
 * The printed plan: each step of the way back, then every container with what it holds, then what lies in none.
 * @param at the date as it is shown
 */
export function planText(state: State, plan: PaperPlan, at: string, codeOf: CodeOf): PrintedPlan {
  const { tagState, reasons } = standingText(state, plan.standing)
  const grouped = (no: number) => groups(codeOf(no))
  return {
    job: jobLine(state),
    machine: oneLine(state.job.machine),
    date: oneLine(at),
    code: codeOf(9000),
    state: tagState,
    reasons: oneLines(reasons),
    notes: oneLines(
      state.notes.filter(({ step, kind }) => step === null && kind !== 'minutes').map(({ text }) => text),
    ),
    steps: plan.steps.map((step) => planStep(state, step, codeOfStep(step.row.step.no, codeOf), grouped)),
    containers: [...state.containers.values()]
      .filter(({ voided }) => voided === null)
      .map(({ no }) => planContainer(state, no, at, codeOf(no))),
    loose: looseOnes(state),
  }
}

/** A label code has room for 999 steps. */
function codeOfStep(no: number, codeOf: CodeOf): string | null {
  return no > 999 ? null : codeOf(9000 + no)
}

function planContainer(state: State, no: number, at: string, code: string): PlanContainer {
  const { heading, part, what, where, status, warnings } = containerLabel(state, no, at, code)
  const stands = containerPath(state, no).slice(placeName(state, `c${no}`).length)
  return {
    heading,
    code,
    part,
    stands: stands === '' ? null : oneLine(stands),
    what,
    where,
    status,
    warnings,
  }
}

/** What lies in no container, by where it is; of what is on the machine, only what must come out of it. */
function looseOnes(state: State): LooseOnes[] {
  const found = PLACES.map(([place, says]): LooseOnes => {
    const pieces = [...(state.ledger.byPlace.get(place) ?? [])].filter((id) => {
      const kind = state.ledger.accounts.get(id)?.piece.kind
      return place !== 'machine' || kind === 'aid' || kind === 'tool'
    })
    const lying = pieces.map((piece) => ({
      piece,
      place,
      count: state.ledger.accounts.get(piece)?.at.get(place) ?? 0,
    }))
    return { place: says, what: oneLines(lotsOf(state, lying).map((lot) => looseText(state, lot, place))) }
  })
  const missing = [...state.ledger.accounts.values()].flatMap((account) => shortageOf(state, account))
  return [...found, { place: 'Missing', what: oneLines(missing) }].filter(({ what }) => what.length > 0)
}

const PLACES: readonly (readonly [NamedPlace, string])[] = [
  ['machine', 'In the machine, to come out'],
  ['bench', 'On the bench'],
  ['out', 'Out'],
  ['supplier', 'At a supplier'],
  ['spare', 'Spare'],
  ['scrap', 'Scrap'],
  ['lost', 'Lost'],
]

function looseText(state: State, lot: Lot, place: NamedPlace): string {
  const [first] = lot.members
  const isAside = lot.status === 'TOOL'
  const aidAt = isAside && first && place === 'machine' ? aidText(first.account) : ''
  const isGone = place === 'scrap' || place === 'spare' || place === 'lost'
  const says = lot.status === 'FIT AGAIN' || isAside || isGone ? '' : `${lot.status}: `
  const home = homeOfLot(lot)
  const goes = home ? ` → ${homeText(state, home)}` : ''
  return `${says}${lotText(state, lot, null)}${aidAt}${goes}`
}

/** Where an aid was put, and in which step. */
function aidText({ piece, home }: Account): string {
  return `${home.at === 'toolbox' ? '' : ` at ${home.at}`}, put in during step ${piece.step}`
}

function groups(code: string): string {
  return `${code.slice(0, 3)} ${code.slice(3, 7)} ${code.slice(7)}`
}
