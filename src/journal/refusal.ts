import type { Violation } from '../ledger/laws.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { Place } from '../ledger/place.ts'
import type { Built, DecisionTarget, FaultId, FluidId, LooseningId, TighteningId } from '../plan/facts.ts'
import type { PieceReading } from '../plan/judging/check-readings.ts'
import type { JudgingReason } from '../plan/judging/judging.ts'
import type { CheckId, VerdictKind } from '../plan/judging/judging-facts.ts'
import type { Leftover } from '../plan/leftovers.ts'
import type { PatternFault } from '../plan/pattern.ts'
import type { Reason } from '../plan/reasons.ts'
import type { Riding } from '../plan/riders.ts'
import type { ConsumableId, OrderId, OutingId, SecondLine } from '../plan/waiting/waiting-facts.ts'
import type { LayoutShape } from '../trade/position-layout/position-layout.ts'
import type { OrderRule } from '../trade/tightening-order/order.ts'
import type { CommandName } from './command.ts'
import type { Entry, PictureId } from './entry.ts'

export type Gate = 'start' | 'finish' | 'look'

/** A "no" as data: a closed code with its facts. The sentence, with cause and cure, is made in words. */
export type Refusal =
  | { code: 'no-job'; command: CommandName }
  | { code: 'job-open-already' }
  | { code: 'job-closed' }
  | { code: 'unknown'; what: UnknownThing; id: string }
  | { code: 'law'; violation: Violation }
  | { code: 'count-wrong'; count: number }
  | { code: 'text-missing'; what: 'title' | 'name' | 'reason' | 'text' | 'result' }
  | { code: 'home-exists'; piece: PieceId; position: string }
  | { code: 'which-position'; name: string; positions: string[] }
  | { code: 'container-void'; container: number; insteadOf: number | null }
  | { code: 'slot-taken'; container: number; slot: string; piece: PieceId }
  | { code: 'no-such-slot'; container: number; slot: string; slots: number }
  | { code: 'slots-short'; container: number; free: number; wanted: number }
  | { code: 'inside-itself'; container: number; into: number }
  | { code: 'not-empty'; container: number; count: number }
  /** `left`: how many are, where that is fewer than were asked for. */
  | { code: 'numbers-used-up'; what: 'container' | 'step'; left: number }
  | { code: 'too-many-labels'; count: number; most: number }
  /** The label is on paper and nothing has it yet. */
  | { code: 'label-unused'; container: number }
  | { code: 'label-in-use'; container: number }
  /** The number was never dealt to paper, so only the next free one can be had. */
  | { code: 'no-such-label'; container: number }
  /** A tray needs to know its slots before anything lies in one of them. */
  | { code: 'slots-not-said'; container: number }
  | { code: 'no-unused-labels'; from: number; to: number }
  | { code: 'picture-known'; file: string; picture: PictureId }
  | { code: 'picture-wrong'; file: string; why: 'file' | 'sha256' | 'taken' | 'belongs' | 'twice' }
  | { code: 'no-strip-step' }
  | { code: 'not-a-strip-step'; step: number }
  | { code: 'cycle'; steps: number[] }
  | { code: 'step-blocked'; step: number; gate: Gate; reasons: Reason[] }
  | { code: 'step-not-begun'; step: number; built: Built }
  | { code: 'step-done'; step: number }
  | { code: 'step-under-way'; step: number }
  | { code: 'no-build-step' }
  | { code: 'not-in-step'; piece: PieceId; step: number; own: number }
  | { code: 'not-for-home'; piece: PieceId }
  | { code: 'one-by-one'; pieces: PieceId[] }
  | { code: 'piece-used'; piece: PieceId }
  | { code: 'home-already'; piece: PieceId }
  | {
      code: 'not-within-reach'
      piece: PieceId
      wanted: number
      there: number
      lies: { place: Place; count: number }[]
    }
  | { code: 'nothing-there'; piece: PieceId }
  | { code: 'which-place'; piece: PieceId; lies: { place: Place; count: number }[] }
  | { code: 'through-a-step'; piece: PieceId; step: number }
  | {
      code: 'already'
      what:
        | 'confirmed'
        | 'filled'
        | 'settled'
        | 'cleared'
        | 'started'
        | 'looked'
        | 'voided'
        | 'archived'
        | 'compared'
      id: string
    }
  | { code: 'no-tightening'; step: number | null }
  | { code: 'tightening-begun'; tightening: TighteningId }
  /** A single piece has no positions to draw or to tighten in an order; look-alikes need theirs written down. */
  | { code: 'no-pattern'; fault: PatternFault }
  /** A drawing shows each position once, and no two in one place. */
  | { code: 'layout-wrong'; missing: string[]; unknown: string[]; twice: string[]; together: string[] }
  | { code: 'not-laid-out'; piece: PieceId }
  /** The rule is for another shape than that of the drawing. */
  | { code: 'rule-not-for-shape'; rule: OrderRule; shape: LayoutShape }
  /** Marks are drawn last, and a bolt is backed off only after it was turned on. */
  | { code: 'passes-wrong'; why: 'witness-not-last' | 'nothing-to-back-off' | 'not-loosening' }
  | { code: 'fastener-faulty'; tightening: TighteningId; fastener: string; fault: FaultId }
  | { code: 'not-turned-over'; step: number }
  | { code: 'measurement-wrong'; why: 'no-reading' | 'value' | 'limits' }
  | { code: 'order-wrong'; missing: string[]; unknown: string[]; twice: string[] }
  | { code: 'no-such-fastener'; tightening: TighteningId | LooseningId; fastener: string }
  | { code: 'turned-already'; tightening: TighteningId | LooseningId; fastener: string; next: string }
  | { code: 'out-of-turn'; tightening: TighteningId | LooseningId; fastener: string; next: string }
  | { code: 'all-turned'; tightening: TighteningId | LooseningId }
  | { code: 'angle-suspect'; tightening: TighteningId; fastener: string }
  | { code: 'not-suspect'; tightening: TighteningId }
  | { code: 'nothing-to-reopen'; steps: number[] }
  | { code: 'nothing-to-override'; target: DecisionTarget }
  | { code: 'too-many-left-off'; piece: PieceId; wanted: number; owed: number }
  | { code: 'not-lost'; piece: PieceId }
  | { code: 'not-single-use'; piece: PieceId }
  | { code: 'not-matched'; piece: PieceId }
  /** Another piece of that name belongs at the same position. */
  | { code: 'name-taken'; name: string; piece: PieceId }
  | { code: 'home-taken'; position: string; piece: PieceId }
  | { code: 'no-such-position'; position: string; known: string[] }
  | { code: 'already-fitted'; piece: PieceId }
  | { code: 'count-by-piece'; container: number; pieces: PieceId[] }
  | {
      code: 'explains-nothing'
      difference: string
      kind: 'missing' | 'unknown-piece' | 'moved'
      over: number
    }
  | { code: 'not-clear'; leftovers: Leftover[] }
  | { code: 'nothing-recorded' }
  | { code: 'not-cleared' }
  | { code: 'not-started' }
  | { code: 'checks-open'; steps: number[] }
  /** `isLate`: its working time had run out before all of its step was fitted. */
  | { code: 'put-on-already'; consumable: ConsumableId; isLate: boolean }
  /** The last day of use has gone by, so many days ago. `consumable`: null while it is only asked for. */
  | { code: 'out-of-date'; consumable: ConsumableId | null; name: string; expires: string; days: number }
  /** What is put on is not on yet, not together or not set. */
  | { code: 'not-to-be-filled'; fluid: FluidId; reasons: Reason[] }
  | { code: 'nothing-to-undo' }
  | { code: 'nothing-to-redo' }
  /** `entry`: the merge, which stands last. */
  | { code: 'merge-stays'; entry: number }
  | { code: 'check-done'; check: CheckId }
  /** `missing`: what was to be measured and was not, since the check was asked. */
  | { code: 'check-unmeasured'; check: CheckId; missing: string[] }
  | {
      code: 'check-not-in'
      check: CheckId
      verdict: 'out' | 'too-close'
      readings: PieceReading[]
    }
  /** Some of what cannot be told apart, or of what is no lot. */
  | { code: 'judge-part'; piece: PieceId; count: number; verdict: VerdictKind }
  | { code: 'nothing-to-bind'; piece: PieceId }
  /** No old piece is there to hold it beside. */
  | { code: 'nothing-to-compare'; piece: PieceId }
  /** The old one stays until the new one, `fresh`, was held beside it. */
  | { code: 'not-compared'; piece: PieceId; fresh: PieceId }
  /** It is checked, judged or compared first. */
  | { code: 'not-accepted'; piece: PieceId; reasons: JudgingReason[] }
  /** What is still owed sits on a piece that is to leave. */
  | { code: 'carries-owed'; piece: PieceId; riders: Riding[] }
  /** A replacement is called by the name of another kind of thing. */
  | { code: 'other-kind'; piece: PieceId; named: string }
  /** Nobody asked for a second look at this step. */
  | { code: 'not-critical'; step: number }
  | { code: 'second-before-done'; step: number; built: Built }
  /** `known`: what of the step is seen one by one. */
  | { code: 'not-a-second-line'; step: number; line: SecondLine; known: SecondLine[] }
  /** The same person, or nobody by name, and too soon after the work; `by` is empty where nobody is named. */
  | {
      code: 'second-too-soon'
      step: number
      line: SecondLine
      by: string
      afterMinutes: number
      waitMinutes: number
    }
  /** A day that is to come has gone by; both as `2026-12-04`. */
  | { code: 'date-past'; day: string; today: string }
  /** `outing` is null where it was sent out without a word to whom. */
  | { code: 'out-already'; piece: PieceId; outing: OutingId | null }
  /** It is to go out and to stay here at once. */
  | { code: 'goes-and-stays'; piece: PieceId }
  /** `outing`: the one that was named, which does not have it. */
  | { code: 'not-out'; piece: PieceId; outing: OutingId | null }
  | { code: 'back-already'; outing: OutingId; piece: PieceId | null }
  | { code: 'too-many-back'; outing: OutingId; piece: PieceId; away: number; wanted: number }
  /** What the shop took out is in the record by that name already. */
  | { code: 'taken-out-already'; outing: OutingId; piece: PieceId }
  | { code: 'order-cancelled'; order: OrderId }
  /** Nothing of it is still to come. */
  | { code: 'order-arrived'; order: OrderId }
  /** `open`: how much is still to come; `arrived`: how much is said to be here now. */
  | { code: 'more-than-ordered'; order: OrderId; open: number; arrived: number }
  /** `here`: how much of it arrived and did not go back. */
  | { code: 'more-than-arrived'; order: OrderId; here: number; wanted: number }
  /**
   * `was`: the entry that was to be taken back, where there is one; `standing`: those in force after it that name what
   * it is about; `since`: how many are in force after it. Only who has the journal knows these.
   */
  | {
      code: 'written-since'
      entry: number
      last: number
      was?: Entry
      standing?: number[]
      since?: number
    }

export type UnknownThing =
  | 'step'
  | 'container'
  | 'piece'
  | 'mark'
  | 'fluid'
  | 'tightening'
  | 'loosening'
  | 'fault'
  | 'difference'
  | 'left-out'
  | 'picture'
  | 'check'
  | 'trigger'
  | 'order'
  | 'outing'
  | 'consumable'

export type RefusalCode = Refusal['code']
