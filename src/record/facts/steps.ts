import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { Account } from '../../ledger/account.ts'
import { belongsInToolbox } from '../../ledger/piece.ts'
import { owedAtHome } from '../../plan/contents.ts'
import type {
  DecisionTarget,
  FaultId,
  FluidFacts,
  FluidId,
  LayoutFacts,
  LooseningFacts,
  LooseningId,
  MarkFacts,
  MarkId,
  TighteningFacts,
  TighteningId,
} from '../../plan/facts.ts'
import type { CheckId } from '../../plan/judging/judging-facts.ts'
import type { ConsumableId } from '../../plan/waiting/waiting-facts.ts'
import { type MeasureView, measureViews } from '../../session/measure-views.ts'
import type { Session } from '../../session/session.ts'
import { type PlanRow, planRows } from '../../session/views.ts'
import { judge } from '../../trade/measuring/judge.ts'
import type { Judged } from '../../trade/measuring/judged.ts'
import type { AtHome } from './at-home.ts'
import { type PutOnRecord, putOnIn } from './put-on.ts'
import { type SeenAgain, seenAgainIn } from './seen-again.ts'
import type { Standing } from './standing.ts'
import type { Turns } from './turns.ts'

/** One step of the way back with all that was recorded of it. */
export interface StepRecord {
  row: PlanRow
  /** How it came into the plan and was changed there. */
  plan: Entry[]
  /** Its coming off, entry by entry. */
  off: Entry[]
  /** Its way back: taken up, looked at, passed over, done, failed, reopened. */
  back: Entry[]
  home: AtHome[]
  /** Pieces that are not all home, and how many are owed. */
  owed: { account: Account; count: number }[]
  marks: { mark: MarkFacts; confirmed: Entry | null }[]
  tightenings: { tightening: TighteningFacts; history: Turns | null }[]
  fluids: { fluid: FluidFacts; filled: Entry | null }[]
  /** What is put on for it: sealant, locker, grease, the side of a gasket. */
  putOn: PutOnRecord[]
  seenAgain: SeenAgain
  /** Every measurement of the step, those taken again since as well. */
  measures: MeasureRecord[]
  /** What was eased in steps before it came off. */
  loosenings: { loosening: LooseningFacts; history: Turns | null }[]
  /** Where positions were drawn, by the entries that drew them. */
  drawn: EntryOf<'laid-out'>[]
  /** The drawings that count. */
  layouts: LayoutFacts[]
  notes: EntryOf<'noted'>[]
}

/** A measurement as it was taken, whatever was measured again since. */
export interface MeasureRecord extends Pick<MeasureView, 'measure' | 'replacedBy' | 'again'> {
  judged: Judged
  entry: Entry | null
}

/** Every step in the order of the way back. */
export function stepRecords(
  session: Session,
  entries: readonly Entry[],
  { home, turns, confirmed, filled }: Standing,
): StepRecord[] {
  const { state } = session
  const gates = session.gates()
  return planRows(session).map((row) => {
    const { no } = row.step
    const contents = gates.contentsOf(no)
    const concerns = (steps: (entry: Entry) => readonly number[]) =>
      entries.filter((entry) => steps(entry).includes(no))
    return {
      row,
      plan: concerns(planned),
      off: concerns(takenOff),
      back: concerns((entry) => putBack(state, entry)),
      home: home.filter(({ piece }) => isOfStep(state.ledger.accounts.get(piece), no)),
      owed: contents.pieces
        .map((account) => ({ account, count: owedAtHome(state, account) }))
        .filter(({ count }) => count > 0),
      marks: contents.marks.map((mark) => ({ mark, confirmed: confirmed.get(mark.id) ?? null })),
      tightenings: contents.tightenings.map((tightening) => ({
        tightening,
        history: turns.of(tightening.id) ?? null,
      })),
      fluids: contents.fluids.map((fluid) => ({ fluid, filled: filled.get(fluid.id) ?? null })),
      putOn: putOnIn(state, entries, no),
      seenAgain: seenAgainIn(state, entries, no, contents),
      measures: measuresIn(state, entries, no),
      loosenings: [...state.loosenings.values()]
        .filter(({ step }) => step === no)
        .map((loosening) => ({ loosening, history: turns.of(loosening.id) ?? null })),
      drawn: entries
        .filter((entry) => entry.type === 'laid-out')
        .filter(({ of }) => isOfStep(state.ledger.accounts.get(of[0] ?? 'p0'), no)),
      layouts: state.layouts.filter(({ pieces }) =>
        isOfStep(state.ledger.accounts.get(pieces[0] ?? 'p0'), no),
      ),
      notes: entries.filter((entry) => entry.type === 'noted').filter(({ step }) => step === no),
    }
  })
}

/** Every measurement of a step, or of none, with the entry that recorded it. */
export function measuresIn(state: State, entries: readonly Entry[], no: number | null): MeasureRecord[] {
  return measureViews(state)
    .filter(({ measure }) => measure.step === no)
    .map(({ measure, replacedBy, again }) => ({
      measure,
      replacedBy,
      again,
      judged: judge(measure.measurement),
      entry: entries.find((entry) => entry.type === 'measured' && entry.measure.id === measure.id) ?? null,
    }))
}

function isOfStep(account: Account | undefined, no: number): boolean {
  return account?.piece.step === no && !belongsInToolbox(account.piece)
}

function planned(entry: Entry): number[] {
  if (entry.type === 'step-added') return [entry.step.no]
  return entry.type === 'step-changed' ? [entry.step] : []
}

function takenOff(entry: Entry): number[] {
  switch (entry.type) {
    case 'strip-began':
      return [entry.step.no]
    case 'strip-ended':
    case 'came-off':
    case 'put-in':
      return [entry.step]
    case 'drained':
      return [entry.fluid.step]
    case 'marked':
      return [entry.mark.step]
    // Sub-parts go home in the step of what they sit on.
    case 'carrying':
      return [entry.pieces[0]?.step ?? 0]
    default:
      return []
  }
}

function putBack(state: State, entry: Entry): readonly number[] {
  switch (entry.type) {
    case 'build-began':
    case 'looked':
    case 'turned-over':
    case 'build-done':
      return [entry.step]
    case 'fitted':
      return entry.began ? [entry.step] : []
    case 'failed':
      return [entry.step, ...entry.steps]
    case 'reopened':
      return entry.steps
    case 'overridden':
      return [stepOfTarget(state, entry.target) ?? 0]
    default:
      return []
  }
}

function stepOfTarget(state: State, target: DecisionTarget): number | undefined {
  const [, no] = /^(?:start|finish|look|check) (\d+)$/.exec(target) ?? []
  if (no !== undefined) return Number(no)
  if (target.startsWith('m')) return state.marks.get(target as MarkId)?.step
  if (target.startsWith('t')) return state.tightenings.get(target as TighteningId)?.step
  if (target.startsWith('l')) return state.loosenings.get(target as LooseningId)?.step
  if (target.startsWith('f')) return state.fluids.get(target as FluidId)?.step
  if (target.startsWith('s')) return state.consumables.get(target as ConsumableId)?.step
  const check = target.startsWith('k') ? state.checks.get(target as CheckId) : undefined
  if (check) return state.ledger.accounts.get(check.piece)?.piece.step
  return state.faults.get(target as FaultId)?.step
}
