import { balance, placesOf } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import { carrierOf, containerOf, type Place } from '../ledger/place.ts'
import {
  contentsByStep,
  isIdle,
  outOfToolbox,
  owedAtHome,
  type StepContents,
  withinReach,
} from './contents.ts'
import type { DecisionTarget, PlanFacts, StepFacts } from './facts.ts'
import { checksByPiece, type JudgingReason, judgingReasons } from './judging/judging.ts'
import type { CheckFacts } from './judging/judging-facts.ts'
import { beneath, buildNeeds, isLast } from './order.ts'
import { isJudging, notHome, type Reason } from './reasons.ts'
import { leftOnOld } from './riders.ts'
import { isGone } from './succession.ts'
import { nextTurn } from './tightening.ts'
import { consumableReasons, curing } from './waiting/consumables.ts'
import { outingReasons } from './waiting/outings.ts'
import { secondReasons } from './waiting/second-looks.ts'

/** The gates of every step, worked out from one reading of the record. */
export class Gates {
  readonly facts: PlanFacts
  readonly needs: Map<number, Set<number>>
  readonly contents: Map<number, StepContents>
  readonly #checks: ReadonlyMap<PieceId, readonly CheckFacts[]>

  constructor(facts: PlanFacts) {
    this.facts = facts
    this.needs = buildNeeds(facts.steps)
    this.contents = contentsByStep(facts)
    this.#checks = checksByPiece(facts)
  }

  /** A strip step that has nothing to put back is done as soon as it is off. */
  isDone(no: number): boolean {
    const step = this.facts.steps.get(no)
    if (!step) return true
    if (step.built === 'done') return true
    return step.way === 'both' && !step.stripping && isIdle(this.contentsOf(no))
  }

  /** Whether a step stands on the machine: done, under way, or failed with its pieces still on. */
  isBuilt(no: number): boolean {
    const built = this.facts.steps.get(no)?.built
    if (built !== 'redo') return built === 'done' || built === 'underway'
    return this.contentsOf(no).pieces.some(({ piece }) => balance(this.facts.ledger, piece.id, 'machine') > 0)
  }

  contentsOf(no: number): StepContents {
    const contents = this.contents.get(no)
    if (!contents) throw new Error(`no step ${no}`)
    return contents
  }

  /** Every reason of judging why a piece may not go back. */
  judging(piece: PieceId): JudgingReason[] {
    return judgingReasons(this.facts, piece, this.#checks.get(piece) ?? [])
  }

  /** Every reason why a step may not start, nearest to hand first. Empty when it is ready. */
  start(no: number): Reason[] {
    const step = this.facts.steps.get(no)
    if (!step) return []
    const before = this.unlessPassed(`start ${no}`, this.before(no, step))
    // A last look makes sense once everything beneath is back; until then it would name the same things twice.
    const look = before.length === 0 ? this.lookDue(no) : []
    const held = this.unlessPassed(`start ${no}`, [...this.pieceReasons(no), ...this.timeReasons(no)])
    return [...held, ...look, ...before]
  }

  /** Every reason why a step under way may not be closed. Empty when it is complete. */
  finish(no: number): Reason[] {
    const step = this.facts.steps.get(no)
    if (!step) return []
    const contents = this.contentsOf(no)
    const reasons: Reason[] = this.notHome(contents)
    for (const { piece } of contents.pieces) reasons.push(...this.judging(piece.id))
    reasons.push(...consumableReasons(this.facts, contents))
    for (const mark of contents.marks) {
      if (!mark.confirmed && !this.facts.overrides.has(mark.id))
        reasons.push({ code: 'mark-open', mark: mark.id })
    }
    // No bolt is turned on before its neighbour's fault is put right.
    reasons.push(...this.faultReasons(contents))
    for (const tightening of contents.tightenings) {
      if (nextTurn(tightening) && !this.facts.overrides.has(tightening.id)) {
        reasons.push({ code: 'tighten-open', tightening: tightening.id })
      }
    }
    // What was found when the bags were tipped out is answered before anybody says that nothing is left.
    if (isLast(step)) reasons.push(...this.openCounts())
    const { turns = 0, turned } = step
    if (turned < turns) reasons.push({ code: 'turns-open', step: no, turns, turned })
    reasons.push(...this.aidsIn(contents))
    for (const fluid of contents.fluids) {
      if (fluid.filledLitres === null && !this.facts.overrides.has(fluid.id)) {
        const held = curing(this.facts, fluid.id).filter(
          (reason) => !reasons.some((said) => isSame(said, reason)),
        )
        reasons.push(...held, { code: 'fluid-open', fluid: fluid.id })
      }
    }
    // Something beneath was touched after the look, while this step was under way.
    if (step.built === 'underway') reasons.push(...this.lookDue(no))
    return this.unlessPassed(`finish ${no}`, reasons)
  }

  /** The last look before a step that hides others, while it is due, with what stands in its way. */
  lookDue(no: number): Reason[] {
    const step = this.facts.steps.get(no)
    if (!step?.hides || step.looked) return []
    const reasons: Reason[] = [...this.look(no), { code: 'look-due', step: no }]
    return this.unlessPassed(`start ${no}`, this.unlessPassed(`look ${no}`, reasons))
  }

  /** Why the last look before a step that hides others cannot be passed. Empty when all beneath is in order. */
  look(no: number): Reason[] {
    const reasons: Reason[] = []
    for (const lower of [...beneath(this.needs, no)].sort((a, b) => b - a)) {
      const contents = this.contentsOf(lower)
      reasons.push(...this.aidsIn(contents), ...this.notHome(contents))
    }
    // What was put in by the step itself would be hidden by it as well.
    reasons.push(...this.aidsIn(this.contentsOf(no)))
    return reasons
  }

  /** The steps that nothing keeps from starting now. */
  ready(): number[] {
    return [...this.facts.steps.values()]
      .filter((step) => step.built !== 'done' && step.built !== 'underway' && !this.isDone(step.no))
      .filter((step) => this.start(step.no).length === 0)
      .map((step) => step.no)
  }

  /**
   * The nearest steps beneath that are not done. A step with nothing to put back holds up nothing itself, but what
   * came off after it still goes back before it: so it is looked through.
   */
  stepsBefore(no: number): Reason[] {
    const reasons: Reason[] = []
    const seen = new Set<number>()
    const open = [no]
    for (let upper = open.pop(); upper !== undefined; upper = open.pop()) {
      for (const needed of this.needs.get(upper) ?? []) {
        const built = this.facts.steps.get(needed)?.built
        if (seen.has(needed) || built === undefined || built === 'done') continue
        seen.add(needed)
        if (this.isDone(needed)) open.push(needed)
        else reasons.push({ code: 'step-before', step: needed, built })
      }
    }
    return reasons
  }

  private before(no: number, step: StepFacts): Reason[] {
    const reasons: Reason[] = []
    if (step.stripping) reasons.push({ code: 'still-stripping', step: no })
    if (step.way === 'after-start' && !this.facts.started) reasons.push({ code: 'not-cleared' })
    return [...reasons, ...this.stepsBefore(no)]
  }

  private pieceReasons(no: number): Reason[] {
    const reasons: Reason[] = []
    const contents = this.contentsOf(no)
    for (const account of contents.pieces) {
      const { piece } = account
      const owed = owedAtHome(this.facts, account)
      if (owed <= 0) continue
      if (this.facts.used.has(piece.id)) {
        reasons.push({ code: 'piece-used', piece: piece.id })
        continue
      }
      reasons.push(...this.judging(piece.id))
      // Onto a wrong one that went back nothing can be moved over: it waits for the right one, as its home does.
      const riders = isGone(this.facts, piece.id) ? [] : leftOnOld(this.facts, piece.id)
      for (const { piece: rider, count, on } of riders)
        reasons.push({ code: 'left-on-old', piece: rider, count, on, to: piece.id })
      const near = withinReach(this.facts, account).reduce((sum, lying) => sum + lying.count, 0)
      if (near >= owed) continue
      const away = placesOf(this.facts.ledger, piece.id).filter(({ place }) => isAway(this.facts, place))
      for (const { place, count } of away) reasons.push({ code: 'piece-away', piece: piece.id, count, place })
      const have =
        near + balance(this.facts.ledger, piece.id, 'machine') + away.reduce((sum, a) => sum + a.count, 0)
      if (have < account.should)
        reasons.push({ code: 'piece-short', piece: piece.id, should: account.should, have })
    }
    reasons.push(...outingReasons(this.facts, contents))
    reasons.push(...this.faultReasons(contents), ...this.countReasons(contents))
    return reasons
  }

  /** What must set before this step, and what beneath it is to be seen a second time. */
  private timeReasons(no: number): Reason[] {
    const lower = [...beneath(this.needs, no)]
    return [
      ...curing(this.facts, no),
      ...lower.flatMap((step) => secondReasons(this.facts, step, this.contentsOf(step))),
    ]
  }

  private countReasons(contents: StepContents): Reason[] {
    const pieces = new Set<PieceId | null>()
    const containers = new Set<number | null>()
    for (const { piece } of contents.pieces) {
      pieces.add(piece.id)
      for (const { place } of placesOf(this.facts.ledger, piece.id)) containers.add(containerOf(place))
    }
    // Emptying the bag onto the bench does not answer how many there are.
    return [...this.facts.differences.values()]
      .filter(
        ({ settled, container, piece }) =>
          settled === null && (containers.has(container) || pieces.has(piece)),
      )
      .map((difference) => ({ code: 'count-open', difference: difference.id }))
  }

  private openCounts(): Reason[] {
    return [...this.facts.differences.values()]
      .filter(({ settled }) => settled === null)
      .map(({ id }) => ({ code: 'count-open', difference: id }))
  }

  private faultReasons(contents: StepContents): Reason[] {
    return contents.faults
      .filter((fault) => fault.settled === null && !this.facts.overrides.has(fault.id))
      .map((fault) => ({ code: 'fault-open', fault: fault.id }))
  }

  /** An override passes over what stood when it was given, and nothing that came later. */
  private unlessPassed(target: DecisionTarget, reasons: Reason[]): Reason[] {
    const passed = this.facts.passedOver.get(target)
    return passed ? reasons.filter((reason) => isJudging(reason) || !passed.has(reason.code)) : reasons
  }

  private aidsIn(contents: StepContents): Reason[] {
    return contents.aids.flatMap((aid) =>
      outOfToolbox(this.facts, aid)
        .filter(({ place }) => place === 'machine')
        .map(({ place, count }) => ({ code: 'aid-in' as const, piece: aid.piece.id, count, place })),
    )
  }

  private notHome(contents: StepContents): Reason[] {
    return contents.pieces.flatMap((account) => notHome(this.facts, account))
  }
}

/** Out of the house or not here yet, by itself or with what it sits on. */
function isAway(facts: PlanFacts, place: Place): boolean {
  const carrier = carrierOf(place)
  if (carrier === null) return place === 'out' || place === 'supplier' || place === 'toolbox'
  return placesOf(facts.ledger, carrier).some((each) => isAway(facts, each.place))
}

/** Whether two reasons are one about the same thing that is put on. */
function isSame(one: Reason, other: Reason): boolean {
  return (
    one.code === other.code &&
    'consumable' in one &&
    'consumable' in other &&
    one.consumable === other.consumable
  )
}
