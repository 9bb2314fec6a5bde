import type { Account } from '../ledger/account.ts'
import { balance, placesOf } from '../ledger/ledger.ts'
import { belongsInToolbox } from '../ledger/piece.ts'
import { carrierOf, containerOf, type Place } from '../ledger/place.ts'
import type { FaultFacts, FluidFacts, MarkFacts, PlanFacts, TighteningFacts } from './facts.ts'
import type { ConsumableFacts } from './waiting/waiting-facts.ts'

/** What belongs to a step: what it takes off and puts back, and what is owed before it is done. */
export interface StepContents {
  /** Pieces whose home is in this step; retired ones are left out. */
  pieces: Account[]
  aids: Account[]
  tools: Account[]
  fluids: FluidFacts[]
  marks: MarkFacts[]
  tightenings: TighteningFacts[]
  faults: FaultFacts[]
  consumables: ConsumableFacts[]
}

/** The contents of every step, gathered in one walk over the record. */
export function contentsByStep(facts: PlanFacts): Map<number, StepContents> {
  const by = new Map<number, StepContents>()
  for (const no of facts.steps.keys()) by.set(no, emptyContents())
  const of = (step: number) => by.get(step) ?? emptyContents()
  for (const account of facts.ledger.accounts.values()) {
    const { kind, step } = account.piece
    if (kind === 'aid') of(step).aids.push(account)
    else if (kind === 'tool') of(step).tools.push(account)
    else if (account.should > 0) of(step).pieces.push(account)
  }
  for (const fluid of facts.fluids.values()) of(fluid.step).fluids.push(fluid)
  for (const mark of facts.marks.values()) of(mark.step).marks.push(mark)
  for (const tightening of facts.tightenings.values()) of(tightening.step).tightenings.push(tightening)
  for (const fault of facts.faults.values()) of(fault.step).faults.push(fault)
  for (const consumable of facts.consumables.values()) of(consumable.step).consumables.push(consumable)
  return by
}

/** Whether a step has anything to do on the way back. */
export function isIdle(contents: StepContents): boolean {
  return (
    contents.pieces.length === 0 &&
    contents.aids.length === 0 &&
    contents.fluids.length === 0 &&
    contents.marks.length === 0 &&
    contents.tightenings.length === 0 &&
    contents.consumables.length === 0
  )
}

/** How many of a piece are still missing at home. */
export function owedAtHome(facts: PlanFacts, account: Account): number {
  return account.should - balance(facts.ledger, account.piece.id, 'machine')
}

export interface Lying {
  place: Place
  count: number
}

/** Where the pieces lie that could go home now: on the bench first, then in containers. */
export function withinReach(facts: PlanFacts, account: Account): Lying[] {
  return placesOf(facts.ledger, account.piece.id)
    .filter(({ place }) => isWithinReach(facts, place))
    .sort((a, b) => reachRank(a.place) - reachRank(b.place))
}

/** Whether a hand can take a piece from there now. What sits on another piece is where that is. */
function isWithinReach(facts: PlanFacts, place: Place): boolean {
  const carrier = carrierOf(place)
  if (carrier === null) return place === 'bench' || containerOf(place) !== null || place === 'spare'
  const places = placesOf(facts.ledger, carrier)
  return (
    places.length > 0 && places.every((each) => each.place === 'machine' || isWithinReach(facts, each.place))
  )
}

export interface Owing {
  /** Where what is owed at home lies. */
  lies: Lying[]
  /** What lies about beyond what is owed: old pieces that were replaced, or one too many. */
  extra: Lying[]
  /** How many are owed and nowhere to be had. */
  short: number
}

/** What of a piece is not where it belongs. Declared spares count only for what nothing else can fill. */
export function owing(facts: PlanFacts, account: Account): Owing {
  let short = Math.max(0, owedAtHome(facts, account))
  const lies: Lying[] = []
  const extra: Lying[] = []
  const lying = placesOf(facts.ledger, account.piece.id)
    .filter(({ place }) => place !== 'machine' && place !== 'scrap' && place !== 'lost')
    .sort((a, b) => reachRank(a.place) - reachRank(b.place))
  for (const { place, count } of lying) {
    const part = Math.min(short, count)
    if (part > 0) lies.push({ place, count: part })
    const over = count - part - (place === 'out' ? lentOf(facts, account) : 0)
    // What went back to its supplier, or was ordered once too often, is not in the way.
    if (over > 0 && place !== 'spare' && place !== 'supplier') extra.push({ place, count: over })
    short -= part
  }
  return { lies, extra, short }
}

/** How many of a piece another job has: what is surplus here may stay there. */
function lentOf({ outings }: PlanFacts, { piece: { id } }: Account): number {
  const lent = [...outings.values()].filter(({ job }) => job !== undefined)
  return lent
    .flatMap(({ pieces }) => pieces.filter(({ piece }) => piece === id))
    .reduce((sum, { away }) => sum + away, 0)
}

/** Where an aid or a tool is that is not back in the toolbox. */
export function outOfToolbox(facts: PlanFacts, account: Account): Lying[] {
  if (!belongsInToolbox(account.piece)) return []
  return placesOf(facts.ledger, account.piece.id).filter(
    ({ place }) => place !== 'toolbox' && place !== 'scrap' && place !== 'lost',
  )
}

/** What is here counts for what is owed before what is still at the supplier, and declared spares last. */
function reachRank(place: Place): number {
  if (place === 'bench') return 0
  if (place === 'out') return 2
  if (place === 'supplier') return 3
  return place === 'spare' ? 4 : 1
}

function emptyContents(): StepContents {
  return {
    pieces: [],
    aids: [],
    tools: [],
    fluids: [],
    marks: [],
    tightenings: [],
    faults: [],
    consumables: [],
  }
}
