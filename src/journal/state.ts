import type { Ledger } from '../ledger/account.ts'
import { emptyLedger } from '../ledger/ledger.ts'
import type { PieceId } from '../ledger/piece.ts'
import type {
  DecisionTarget,
  DifferenceFacts,
  DifferenceId,
  FaultFacts,
  FaultId,
  FluidFacts,
  FluidId,
  LayoutFacts,
  LeftOutFacts,
  LeftOutId,
  LooseningFacts,
  LooseningId,
  MarkFacts,
  MarkId,
  MeasureFacts,
  MeasureId,
  PlanFacts,
  StepFacts,
  TakenOut,
  TighteningFacts,
  TighteningId,
} from '../plan/facts.ts'
import type {
  BondFacts,
  CheckFacts,
  CheckId,
  ComparisonFacts,
  FindingFacts,
  FindingId,
  TriggerFacts,
  TriggerId,
  VerdictFacts,
} from '../plan/judging/judging-facts.ts'
import type {
  ConsumableFacts,
  ConsumableId,
  OrderFacts,
  OrderId,
  OutingFacts,
  OutingId,
  PartNotes,
  SecondLookFacts,
} from '../plan/waiting/waiting-facts.ts'
import { type Dealt, nothingDealt } from './dealt.ts'
import type { Belongs, Container, EntryBodyOf, Picture, PictureId } from './entry.ts'

export interface ContainerState extends Container {
  /** Why the label is void, and what took its place. */
  voided: { reason: string; insteadOf?: number | undefined } | null
  /** The entry that dealt its number to paper, where its label was printed before there was a container. */
  run?: number | undefined
}

/** An unused label: its number is on paper, and no container has it yet. */
export interface BlankFacts {
  /** The entry that dealt its number. */
  run: number
  /** Why it can never be used, and what took its place. */
  voided: { reason: string; insteadOf?: number | undefined } | null
}

export interface PictureFacts extends Omit<Picture, 'belongs'> {
  /** The container or the step that it shows; `none`: the job as a whole; null: not sorted yet. */
  belongs: Belongs | 'none' | null
  /** What lay in the container when the picture was put to it: moved on later, it keeps its picture. */
  pieces: PieceId[]
}

export interface Note {
  n: number
  step: number | null
  kind: EntryBodyOf<'noted'>['kind']
  text: string
  minutes?: number | undefined
}

/** The card left when work stopped: where it stopped and what was said. */
export interface StopCard {
  n: number
  at: string
  step: number | null
  note: string
  abrupt: boolean
}

/** Everything that follows from the journal. Changed in place by the fold alone. */
export interface State extends PlanFacts {
  job: {
    no: number
    name: string
    machine: string
    units: 'metric' | 'us'
    archived: boolean
    /** A job to learn with: what is said above the screens leads through it. */
    practice?: true | undefined
  }
  /** The number of the last entry read, undone ones too. */
  seq: number
  ledger: Ledger
  steps: Map<number, StepFacts>
  fluids: Map<FluidId, FluidFacts>
  marks: Map<MarkId, MarkFacts>
  tightenings: Map<TighteningId, TighteningFacts>
  loosenings: Map<LooseningId, LooseningFacts>
  layouts: LayoutFacts[]
  measures: Map<MeasureId, MeasureFacts>
  faults: Map<FaultId, FaultFacts>
  differences: Map<DifferenceId, DifferenceFacts>
  leftOut: Map<LeftOutId, LeftOutFacts>
  /** The entry of the last merge with a copy. */
  merge: number | null
  overrides: Map<DecisionTarget, string>
  passedOver: Map<DecisionTarget, Set<string>>
  lostAccepted: Map<PieceId, number>
  takenFrom: Map<number, Map<PieceId, TakenOut>>
  /** Containers of which a count of all that is in them agreed, with nothing put in or taken out since. */
  agreed: Set<number>
  used: Set<PieceId>
  checks: Map<CheckId, CheckFacts>
  verdicts: Map<PieceId, VerdictFacts>
  bonds: BondFacts[]
  comparisons: Map<PieceId, ComparisonFacts>
  triggers: Map<TriggerId, TriggerFacts>
  findings: Map<FindingId, FindingFacts>
  orders: Map<OrderId, OrderFacts>
  partNotes: Map<PieceId, PartNotes>
  outings: Map<OutingId, OutingFacts>
  consumables: Map<ConsumableId, ConsumableFacts>
  secondLooks: Map<number, SecondLookFacts[]>
  containers: Map<number, ContainerState>
  /** Unused labels by their numbers, void ones too. One that is used is a container, and no blank any more. */
  blanks: Map<number, BlankFacts>
  pictures: Map<PictureId, PictureFacts>
  notes: Note[]
  /** The strip step under way. */
  strip: number | null
  /** The build step last taken up and not done. */
  build: number | null
  /** The container that the strip-down fills now. */
  hand: number | null
  /** Set when work stopped, and gone with the next piece of work. */
  card: StopCard | null
  /** The numbers of the entries in force, oldest first: what undo takes back. */
  inForce: number[]
  /** The numbers of the entries undone since the last new one, last undone last. */
  undone: number[]
  /** The highest numbers ever dealt, by undone entries too: a number is never dealt twice. */
  dealt: Dealt
}

/** What follows from an empty journal. */
export function emptyState(): State {
  return {
    job: { no: 0, name: '', machine: '', units: 'metric', archived: false },
    seq: 0,
    ledger: emptyLedger(),
    steps: new Map(),
    fluids: new Map(),
    marks: new Map(),
    tightenings: new Map(),
    loosenings: new Map(),
    layouts: [],
    measures: new Map(),
    faults: new Map(),
    differences: new Map(),
    leftOut: new Map(),
    merge: null,
    overrides: new Map(),
    passedOver: new Map(),
    lostAccepted: new Map(),
    takenFrom: new Map(),
    agreed: new Set(),
    used: new Set(),
    checks: new Map(),
    verdicts: new Map(),
    bonds: [],
    comparisons: new Map(),
    triggers: new Map(),
    findings: new Map(),
    orders: new Map(),
    partNotes: new Map(),
    outings: new Map(),
    consumables: new Map(),
    secondLooks: new Map(),
    clock: { at: '', today: '' },
    containers: new Map(),
    blanks: new Map(),
    pictures: new Map(),
    notes: [],
    strip: null,
    build: null,
    hand: null,
    card: null,
    cleared: false,
    started: false,
    closed: false,
    inForce: [],
    undone: [],
    dealt: nothingDealt(),
  }
}
