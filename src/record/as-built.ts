import type { Entry, EntryOf, EntryType } from '../journal/entry.ts'
import type { State } from '../journal/state.ts'
import { belongsInToolbox } from '../ledger/piece.ts'
import type { Leftover } from '../plan/leftovers.ts'
import { type Phase, phaseOf } from '../plan/phase.ts'
import { entriesInForce } from '../session/in-force.ts'
import type { Session } from '../session/session.ts'
import { isTakenBack, type PlanRow, trialBalance } from '../session/views.ts'
import { type AidRecord, aidsOf } from './facts/aids.ts'
import { type Arrival, arrivalOf } from './facts/arrival.ts'
import { type ContainerRecord, containersOf, type LabelEntry } from './facts/containers.ts'
import { type CountRecord, countsOf } from './facts/counts.ts'
import { type JudgingRecord, judgingOf } from './facts/judging.ts'
import { type OrderRecord, ordersOf } from './facts/orders.ts'
import { type OutingRecord, outingsOf } from './facts/outings.ts'
import { type PictureGroup, pictureGroups } from './facts/pictures.ts'
import { type Overridden, whatStands } from './facts/standing.ts'
import { type MeasureRecord, measuresIn, type StepRecord, stepRecords } from './facts/steps.ts'
import { type Supply, suppliesOf } from './facts/supplies.ts'

/** A job as it was built: what the journal holds in force, in the order in which a reader asks for it. */
export interface AsBuilt {
  job: State['job']
  phase: Phase
  /** The last entry of the journal, undone or not: it ties the record to the journal. */
  last: Pick<Entry, 'n' | 'at' | 'id'> | null
  /** How many entries were taken back, and are left out. */
  undone: number
  /** What keeps the journal from being read to its end. */
  cutBy: 'damage' | 'newer' | null
  /** Everybody whose name stands at an entry in force. */
  people: string[]
  /** Opened, described, put in the archive, cleared, started, closed. */
  course: Entry[]
  /** Notes that belong to no step. */
  notes: EntryOf<'noted'>[]
  /** All minutes noted. */
  minutes: number
  arrival: Arrival
  steps: StepRecord[]
  /** What was measured outside every step. */
  measures: MeasureRecord[]
  /** What was found, asked of pieces and decided about them. */
  judging: JudgingRecord[]
  orders: OrderRecord[]
  /** What is known about buying a piece. */
  partNotes: EntryOf<'part-noted'>[]
  supplies: Supply[]
  /** Left off, accepted as lost, to be used again, another home, name or size. */
  decisions: Entry[]
  overrides: Overridden[]
  /** What went out of the house, to a shop or to another job. */
  outings: OutingRecord[]
  /** Pieces scrapped and moved; not aids and tools. */
  moves: Entry[]
  counts: CountRecord[]
  aids: AidRecord[]
  stops: EntryOf<'stopped'>[]
  /** What was brought together with copies of the job, and how what did not fit was settled. */
  merges: EntryOf<'merged' | 'left-out-settled'>[]
  containers: ContainerRecord[]
  /** Containers put elsewhere, labels dealt and made void. */
  labels: LabelEntry[]
  pictures: PictureGroup[]
  /** The trial balance; empty after the first start. */
  leftovers: Leftover[]
  /** Steps for after the first start that are not done. */
  checksDue: PlanRow[]
}

/** Gathers the as-built record of a job from its state and from the entries in force. */
export function asBuilt(session: Session): AsBuilt {
  const { state } = session
  const read = session.entries().filter(({ n }) => n <= state.seq)
  const inForce = new Set(state.inForce)
  const entries = entriesInForce(session)
  const of = <Type extends EntryType>(...types: Type[]) =>
    entries.filter((entry): entry is EntryOf<Type> => (types as EntryType[]).includes(entry.type))
  const stands = whatStands(entries)
  const steps = stepRecords(session, entries, stands)
  const last = read.at(-1)
  return {
    job: state.job,
    phase: phaseOf(state),
    last: last ? { n: last.n, at: last.at, id: last.id } : null,
    undone: read.filter((entry) => isTakenBack(inForce, entry)).length,
    cutBy: cutBy(session),
    people: [...new Set(entries.flatMap(({ by }) => by ?? []))],
    course: of('opened', 'described', 'archived', 'cleared', 'started', 'closed'),
    notes: of('noted').filter(({ step }) => step === null),
    minutes: of('noted').reduce((sum, { minutes = 0 }) => sum + minutes, 0),
    arrival: arrivalOf(state, entries),
    steps,
    measures: measuresIn(state, entries, null),
    judging: judgingOf(state, entries),
    orders: ordersOf(state, entries),
    partNotes: of('part-noted'),
    supplies: suppliesOf(state, entries),
    decisions: of('decided', 'rehomed', 'renamed', 'sized'),
    overrides: stands.overrides,
    outings: outingsOf(state, entries),
    moves: of('moved').filter(({ moves }) => moves.some(({ piece }) => !isAid(state, piece))),
    counts: countsOf(state, entries),
    aids: aidsOf(state, entries),
    stops: of('stopped'),
    merges: of('merged', 'left-out-settled'),
    containers: containersOf(state, entries),
    labels: of('container-put', 'container-voided', 'labels-dealt', 'labels-voided'),
    pictures: pictureGroups(state),
    leftovers: state.started ? [] : trialBalance(session),
    checksDue: steps.flatMap(({ row }) =>
      row.step.way === 'after-start' && row.step.built !== 'done' ? [row] : [],
    ),
  }
}

/** What ends the record before the journal does. */
function cutBy({ problem }: Session): AsBuilt['cutBy'] {
  if (problem === null) return null
  return problem.kind === 'newer' ? 'newer' : 'damage'
}

function isAid({ ledger }: State, id: Parameters<State['ledger']['accounts']['get']>[0]): boolean {
  const account = ledger.accounts.get(id)
  return account !== undefined && belongsInToolbox(account.piece)
}
