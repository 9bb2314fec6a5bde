import type { PieceId, PieceKind } from '../ledger/piece.ts'
import type { NamedPlace, Place } from '../ledger/place.ts'
import type {
  Arrow,
  DecisionTarget,
  DifferenceId,
  FaultId,
  FaultKind,
  FluidId,
  LeftOutId,
  LooseningId,
  MarkId,
  StepKind,
  TighteningId,
  WrenchFacts,
} from '../plan/facts.ts'
import type {
  CheckId,
  CheckKind,
  ComparedFeature,
  Likeness,
  TriggerId,
  TriggerItem,
  VerdictKind,
} from '../plan/judging/judging-facts.ts'
import type { Pass } from '../plan/tightening.ts'
import type {
  ConsumableId,
  ConsumableKind,
  CureTarget,
  OrderId,
  OutingId,
  PartNotes,
  SecondLine,
} from '../plan/waiting/waiting-facts.ts'
import type { Measurement } from '../trade/measuring/measurement.ts'
import type { PositionLayout } from '../trade/position-layout/position-layout.ts'
import type { OrderRule } from '../trade/tightening-order/order.ts'
import type { Belongs, Container, PictureId } from './entry.ts'

export type ContainerKind = Container['kind']

/** Where something goes: what is in hand, a known container, a new one, or a place by its name. */
export type Into =
  | { kind: 'hand' }
  /** `as`: what is opened with the label of that number where it is unused; a bag when not said. */
  | { kind: 'container'; no: number; slot?: string | undefined; as?: ContainerKind | undefined }
  /** `no`: the unused label that it takes; the next free number when not said. */
  | {
      kind: 'new'
      container: ContainerKind
      slots?: number | undefined
      name?: string | undefined
      no?: number | undefined
    }
  | { kind: 'place'; place: NamedPlace }

/** What came off in one go: common pieces, or a matched set by its positions. */
export interface TakenOff {
  kind: 'part' | 'fastener' | 'connection'
  name: string
  /** How many came off whole or broken. */
  found: number
  /** How many belong there. */
  should: number
  broken?: { kind: FaultKind; count: number } | undefined
  /** Of a matched set: the positions where one was missing, and where one was broken. */
  missingAt?: string[] | undefined
  brokenAt?: string[] | undefined
  size?: string | undefined
  positions?: string[] | undefined
  alikeAt?: string[] | undefined
  singleUse?: boolean | undefined
  /** Where on the machine, when it is not where the step works. */
  at?: string | undefined
}

export interface Fitting {
  piece: PieceId
  /** All that is owed at home when not said. */
  count?: number | undefined
  position?: string | undefined
}

/** A picture as it enters the record. */
export interface NewPicture {
  /** A plain name in the job's folder of pictures. */
  file: string
  /** Of the file's bytes, in 64 hexadecimal digits. */
  sha256: string
  /** When it was taken, where the picture says so: an ISO 8601 date and time, with or without an offset. */
  taken: string | null
  belongs: Belongs | null
}

/** What a shop took out of a piece; `back`: whether it came along, loose. */
export interface TakenOutThere {
  name: string
  count: number
  back: boolean
  kind?: 'part' | 'fastener' | 'connection' | undefined
  size?: string | undefined
  singleUse?: boolean | undefined
  /** The piece that it was taken out of; the first part of what went out when not said. */
  from?: PieceId | undefined
}

/** Everything a person can ask for that would write an entry. */
export type Command =
  | JudgingCommand
  | WaitingCommand
  /** `practice`: of a machine that nobody has, to learn with. */
  | {
      do: 'open-job'
      no: number
      name: string
      machine: string
      units: 'metric' | 'us'
      practice?: true | undefined
    }
  | {
      do: 'describe'
      name?: string | undefined
      machine?: string | undefined
      units?: 'metric' | 'us' | undefined
    }
  | { do: 'archive'; archived: boolean }
  /** `after`: the steps that had to be off first; the strip step before when not said. */
  | { do: 'begin-strip'; title: string; after?: number[] | undefined; hides?: boolean | undefined }
  | { do: 'end-strip' }
  | {
      do: 'add-step'
      title: string
      kind: Exclude<StepKind, 'refit'>
      way: 'build' | 'after-start'
      needs: number[]
      before: number[]
      due?: string | undefined
      turns?: number | undefined
    }
  | {
      do: 'change-step'
      step: number
      title?: string | undefined
      after?: number[] | undefined
      needs?: number[] | undefined
      hides?: boolean | undefined
      /** How long it takes on the way back. */
      minutes?: number | undefined
      /** Seen again so much later, or by somebody else at once; null: no more. */
      critical?: { afterMinutes: number } | null | undefined
    }
  | {
      do: 'note'
      kind: 'note' | 'caution' | 'used' | 'minutes'
      text: string
      minutes?: number | undefined
      step?: number | undefined
    }
  | { do: 'take-off'; item: TakenOff; into: Into }
  | { do: 'drain'; name: string; litres: number; typed: string }
  | { do: 'fill'; fluid: FluidId; litres: number; typed: string }
  | { do: 'mark'; text: string; piece?: PieceId | undefined }
  | {
      do: 'put-in'
      kind: 'aid' | 'tool'
      name: string
      count: number
      where?: string | undefined
      positions?: string[] | undefined
    }
  | {
      do: 'open-container'
      kind: ContainerKind
      slots?: number | undefined
      name?: string | undefined
      inside?: number | undefined
      /** The unused label that it takes; the next free number when not said. */
      no?: number | undefined
    }
  /** Numbers are dealt to paper before there is a container. */
  | { do: 'deal-labels'; count: number }
  /** Of the labels from one number to another, those still unused are void. */
  | { do: 'void-labels'; from: number; to: number; reason: string }
  | { do: 'put-container'; container: number; inside: number | null }
  | { do: 'void-container'; container: number; insteadOf?: number | undefined; reason: string }
  | {
      do: 'move'
      piece: PieceId
      count?: number | undefined
      from?: Place | undefined
      into: Into
      reason?: string | undefined
    }
  /** `size`: of the new one, where it is not that of the old. `named`: what the new one was called, where it was. */
  | {
      do: 'supply'
      piece: PieceId
      count: number
      into: Into
      instead: boolean
      size?: string | undefined
      named?: string | undefined
      /** Borrowed from another job. */
      borrowed?: { job: number; name: string } | undefined
    }
  /** What was ordered arrives, all that is open of the line when no number is said. */
  | {
      do: 'receive'
      order: OrderId
      count?: number | undefined
      /** How many of these are more than were ordered, and stay as spares. */
      spare?: number | undefined
      into: Into
      size?: string | undefined
    }
  /** A kit is counted in: what is owed goes to its homes, the rest is declared spare. */
  | {
      do: 'count-in'
      name: string
      /** `pieces`: those of that name, of which each gets what its home lacks. */
      lines: { pieces: PieceId[]; name: string; count: number }[]
      into: Into
      order?: OrderId | undefined
    }
  | { do: 'leave-off'; piece: PieceId; count?: number | undefined; reason: string }
  | { do: 'accept-lost'; piece: PieceId; reason: string }
  | { do: 'use-again'; piece: PieceId; reason: string }
  | { do: 'rehome'; homes: { piece: PieceId; position: string }[]; reason: string }
  /** The whole set that the piece is of gets the name. */
  | { do: 'rename-piece'; piece: PieceId; name: string }
  | { do: 'settle-fault'; fault: FaultId; how: string }
  /** What came of bringing a copy of the job together with this record: `taken` entries stand already. */
  | {
      do: 'note-merge'
      copy: string
      kept?: string | undefined
      taken: number
      leftOut: { entry: string; at: string; by?: string | undefined; says: string }[]
      renumbered: { there: number; here: number }[]
      inHand?: { strip: number | null; build: number | null; hand: number | null } | undefined
    }
  | { do: 'settle-left-out'; leftOut: LeftOutId; how: string }
  | { do: 'begin-build'; step: number }
  | { do: 'fit'; step?: number | undefined; fittings: Fitting[] }
  | { do: 'confirm'; mark: MarkId }
  /** Where the positions of the pattern that a piece is of lie on the machine. */
  | { do: 'lay-out'; piece: PieceId; layout: PositionLayout; arrow?: Arrow | undefined }
  /** Which way the arrows of some positions of a drawing point. */
  | { do: 'point'; piece: PieceId; positions: string[]; arrow: Arrow }
  /** `with`: other lots of the same pattern. Without an order, that of `by` or of the drawing's usual rule. */
  | {
      do: 'set-tightening'
      piece: PieceId
      with?: PieceId[] | undefined
      passes: Pass[]
      order?: string[] | undefined
      by?: OrderRule | undefined
      condition?: string | undefined
      because?: string | undefined
    }
  | { do: 'say-condition'; tightening: TighteningId; condition: string }
  | { do: 'choose-wrench'; tightening: TighteningId; wrench: WrenchFacts }
  /** The fastener that is next never came to its torque, or the one named did not hold it. */
  | { do: 'miss-torque'; tightening?: TighteningId | undefined; fastener?: string | undefined; says: string }
  /** Fasteners on the machine, in the record or not yet, are eased in steps; `order` is the order of loosening. */
  | {
      do: 'set-loosening'
      name: string
      passes: Pass[]
      order: string[]
      layout?: PositionLayout | undefined
    }
  /** One fastener through its pass: of the tightening on the way back, else of the loosening while things come off. */
  | {
      do: 'tighten'
      tightening?: TighteningId | LooseningId | undefined
      fastener?: string | undefined
    }
  | { do: 'settle-angle'; tightening: TighteningId; turned: boolean; reason: string }
  | { do: 'slacken'; tightening: TighteningId; reason: string }
  /** One full turn of the machine by hand, in the step that asks for it. */
  | { do: 'turn-over'; step?: number | undefined }
  | {
      do: 'measure'
      name: string
      piece?: PieceId | undefined
      step?: number | undefined
      measurement: Measurement
    }
  | { do: 'size'; sizes: { piece: PieceId; size: string }[] }
  | { do: 'look'; step: number }
  | { do: 'close-step'; step?: number | undefined; result?: string | undefined }
  | { do: 'fail'; step: number; result: string; steps: number[] }
  | { do: 'reopen'; steps: number[]; reason: string }
  | { do: 'override'; target: DecisionTarget; reason: string }
  /** `counted` by piece; `others` is a number of pieces that the record does not know there. */
  | { do: 'count'; container: number; counts: { piece: PieceId | null; counted: number }[] }
  | { do: 'explain'; difference: DifferenceId; how: Explanation; reason: string }
  /** Pictures that lie in the job's folder; `belongs` is null where that is still to be asked. */
  | { do: 'add-pictures'; pictures: NewPicture[] }
  /** `none`: it belongs to the job as a whole. */
  | { do: 'sort-picture'; picture: PictureId; belongs: Belongs | 'none' }
  | { do: 'stop'; note: string; abrupt: boolean }
  | { do: 'clear' }
  | { do: 'first-start' }
  | { do: 'close-job'; note?: string | undefined }
  /** `entry` guards against taking back what another has just written. */
  | { do: 'undo'; entry?: number | undefined }
  | { do: 'redo' }

/** How a count that did not agree is explained. */
export type Explanation =
  | { kind: 'missing' }
  /** The pieces went to, or came from, another place. */
  | { kind: 'moved'; piece: PieceId; other: Into }
  /** Nobody knows what it is: it enters the record under a name of its own. */
  | { kind: 'unknown-piece'; name: string }

/** What is asked of pieces while the machine is apart, and what is decided about them. */
type JudgingCommand =
  /** One check for each piece. */
  | { do: 'ask-checks'; checks: { piece: PieceId; kind: CheckKind; what: string[] }[] }
  /** Checks turned out well. */
  | { do: 'pass-checks'; checks: CheckId[]; says?: string | undefined }
  | { do: 'drop-check'; check: CheckId; reason: string }
  /** `count`: so many of a common lot, all of it when not said. */
  | {
      do: 'judge'
      pieces: PieceId[]
      count?: number | undefined
      verdict: VerdictKind
      reason: string
      picture?: PictureId | undefined
    }
  /** What is judged together from now on. */
  | { do: 'bind'; pieces: PieceId[]; reason?: string | undefined }
  /** A new piece beside the old one. `rest`: what all features are that are not named. `keep`: the old one stays for now. */
  | {
      do: 'compare'
      piece: PieceId
      features: ComparedFeature[]
      rest?: Likeness | undefined
      says?: string | undefined
      keep?: boolean | undefined
    }
  | { do: 'set-trigger'; when: string; items: TriggerItem[] }
  | { do: 'drop-trigger'; trigger: TriggerId; reason: string }
  /** Something is found; the lists of these triggers open. */
  | { do: 'find'; text: string; piece?: PieceId | undefined; triggers: TriggerId[] }
  /** Sub-parts that sit on a piece become lines of their own. */
  | {
      do: 'carry'
      on: PieceId
      items: {
        kind: Exclude<PieceKind, 'aid' | 'tool'>
        name: string
        /** How many are there; `should`: how many belong there, where that is not the same. */
        count: number
        should?: number | undefined
        size?: string | undefined
        /** Of a matched set: each has its own. */
        positions?: string[] | undefined
        singleUse?: boolean | undefined
      }[]
    }
  /** What sits on one piece goes over to another: all of it that is owed when no pieces are said. */
  | {
      do: 'move-over'
      /** Wherever they are within reach when not said; then the pieces are. */
      from?: PieceId | undefined
      to: PieceId
      pieces?: PieceId[] | undefined
    }

/** Orders, what is out of the house, what is put on in a step, what is seen twice. */
type WaitingCommand =
  | {
      do: 'line-orders'
      lines: ({
        piece?: PieceId | undefined
        name: string
        count: number
        unit?: string | undefined
        /** In another size than the old one has. */
        size?: string | undefined
        /** A day: `2026-12-04`. */
        due?: string | undefined
      } & PartNotes)[]
      /** Wanted and not ordered yet, or ordered. */
      ordered: boolean
    }
  | ({
      do: 'change-order'
      order: OrderId
      ordered?: true | undefined
      count?: number | undefined
      due?: string | undefined
      cancelled?: string | undefined
    } & PartNotes)
  | { do: 'return-order'; order: OrderId; count?: number | undefined; reason: string }
  | ({ do: 'note-part'; piece: PieceId } & PartNotes)
  | {
      do: 'send-out'
      to: string
      pieces: { piece: PieceId; count?: number | undefined }[]
      why?: string | undefined
      due?: string | undefined
      expects?: string | undefined
      /** Sub-parts that are taken off and stay here. */
      aside?: PieceId[] | undefined
      /** Lent to the job of that number. */
      job?: number | undefined
    }
  /**
   * All that is still away when no pieces are said; no pieces at all where only the question is answered. `outing`: the one
   * that has the first of the pieces when not said.
   */
  | {
      do: 'come-back'
      outing?: OutingId | undefined
      pieces?: { piece: PieceId; count?: number | undefined }[] | undefined
      into: Into
      tookOut?: { text: string; items: TakenOutThere[] } | undefined
      result?: string | undefined
    }
  | {
      do: 'set-consumable'
      step: number
      kind: ConsumableKind
      name: string
      side?: string | undefined
      workMinutes?: number | undefined
      cureMinutes?: number | undefined
      before?: CureTarget[] | undefined
      expires?: string | undefined
      amount?: string | undefined
    }
  | { do: 'drop-consumable'; consumable: ConsumableId; reason: string }
  | { do: 'apply'; consumable: ConsumableId }
  /** `step`: the one that the line is of, when not said. */
  | { do: 'see-again'; step?: number | undefined; line: SecondLine; says: string }

export type CommandName = Command['do']
