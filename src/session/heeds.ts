import type { State } from '../journal/state.ts'
import type { Move } from '../ledger/account.ts'
import type { PieceId } from '../ledger/piece.ts'
import type { LooseningFacts, TighteningFacts, TighteningId } from '../plan/facts.ts'
import { Gates } from '../plan/gates.ts'
import { type Leftover, leftovers } from '../plan/leftovers.ts'
import { type NextTurn, nextTurn } from '../plan/tightening.ts'
import type { Lacking } from '../trade/measuring/judged.ts'
import { type ConsumableHeed, consumableHeeds } from './consumable-heeds.ts'
import { type JointQuestion, jointQuestions } from './joint-questions.ts'
import { type JudgingHeed, judgingHeeds } from './judging-heeds.ts'
import { type KnownSpare, knownSpares } from './known-spares.ts'
import { type LookAlikeSizes, lookAlikesInJob } from './look-alikes-in-job.ts'
import { type MeasureView, measureViews } from './measure-views.ts'
import { type MissingView, missingViews } from './missing-views.ts'
import { type OpenLoosening, offBeforeEased } from './open-loosening.ts'
import { type OrderHeed, orderHeeds } from './order-heeds.ts'
import { type OutingHeed, outingHeeds } from './outing-heeds.ts'
import { type RepeatedWork, repeatedWork } from './repeated-work.ts'
import { type ReplacingHeed, replacingHeeds } from './replacing-heeds.ts'
import type { Entry } from './stored-entry.ts'
import { untightened } from './untightened.ts'
import { type WrenchView, wrenchSettings } from './wrench-settings.ts'

/** What is worth a look because of what was just recorded. Nothing waits for it. */
export type Heed =
  | ConsumableHeed
  | JudgingHeed
  | OutingHeed
  | ReplacingHeed
  | OrderHeed
  | { heed: 'joint'; tightening: TighteningId; question: JointQuestion }
  /** Fasteners come off before they were eased in all their steps. */
  | ({ heed: 'loosening-open' } & OpenLoosening)
  /** A metric and an inch size that a hand takes for each other. */
  | ({ heed: 'look-alikes' } & LookAlikeSizes)
  /** What a measurement came to, and what it lacks. */
  | { heed: 'measured'; measured: MeasureView }
  | { heed: 'measurement-lacks'; lacking: Lacking }
  /** What the wrench that was named is set to. */
  | { heed: 'wrench'; setting: WrenchView }
  /** The last fastener of a pass is through; what comes next, null after the last pass. */
  | { heed: 'pass-through'; joint: TighteningFacts | LooseningFacts; pass: number; next: NextTurn | null }
  /** Fasteners of a step that is closed, of which the record has no tightening. */
  | { heed: 'untightened'; pieces: PieceId[] }
  /** What lies there at the end and may. */
  | { heed: 'spares'; spares: KnownSpare[] }
  /** Something is missing or broken from now on. */
  | { heed: 'missing'; missing: MissingView }
  /** What was recorded as fitted was found elsewhere: it goes home once what is closed over its home is open. */
  | { heed: 'off-again'; off: Extract<Leftover, { code: 'piece-off' }> }
  /** One person did the same at several positions of a step that is closed. */
  | ({ heed: 'repeated' } & RepeatedWork)

/** What to say beside an entry, to whoever has just made it. */
export function heedsAfter(state: State, entry: Entry): Heed[] {
  return [
    ...ownHeeds(state, entry),
    ...consumableHeeds(state, entry),
    ...judgingHeeds(state, entry),
    ...outingHeeds(state, entry),
    ...replacingHeeds(state, entry),
    ...orderHeeds(state, entry),
  ]
}

function ownHeeds(state: State, entry: Entry): Heed[] {
  if (entry.type === 'tightening-set') {
    const tightening = state.tightenings.get(entry.tightening.id)
    const questions = tightening ? jointQuestions(state, tightening) : []
    return questions.map((question) => ({ heed: 'joint', tightening: entry.tightening.id, question }))
  }
  if (entry.type === 'wrench-chosen') {
    const tightening = state.tightenings.get(entry.tightening)
    return tightening ? wrenchSettings(tightening).map((setting) => ({ heed: 'wrench', setting })) : []
  }
  if (entry.type === 'tightened') return passThrough(state.tightenings.get(entry.tightening), entry.pass)
  if (entry.type === 'loosened') return passThrough(state.loosenings.get(entry.loosening), entry.pass)
  if (entry.type === 'came-off') {
    const open = offBeforeEased(
      state,
      entry.pieces.map(({ name }) => name),
    )
    const heeds: Heed[] = open.map((each) => ({ heed: 'loosening-open', ...each }))
    return [
      ...heeds,
      ...alike(
        state,
        entry.pieces.map(({ id }) => id),
      ),
      ...missing(
        state,
        entry.pieces.map(({ id }) => id),
      ),
    ]
  }
  if (entry.type === 'cleared') {
    const spares = knownSpares(state)
    return spares.length > 0 ? [{ heed: 'spares', spares }] : []
  }
  if (entry.type === 'moved' || entry.type === 'explained') {
    const lost = entry.moves.filter(({ to }) => to === 'lost').map(({ piece }) => piece)
    return [...missing(state, lost), ...(entry.type === 'explained' ? offAgain(state, entry.moves) : [])]
  }
  if (entry.type === 'supplied')
    return alike(
      state,
      entry.pieces.map(({ id }) => id),
    )
  if (entry.type === 'sized')
    return alike(
      state,
      entry.sizes.map(({ piece }) => piece),
    )
  if (entry.type === 'measured') {
    const measured = measureViews(state).find(({ measure }) => measure.id === entry.measure.id)
    if (!measured) return []
    const lacks = measured.judged.lacking.map((lacking) => ({ heed: 'measurement-lacks' as const, lacking }))
    return [{ heed: 'measured', measured }, ...lacks]
  }
  if (entry.type === 'build-done') {
    const pieces = untightened(state, entry.step).map(({ piece }) => piece.id)
    const heeds: Heed[] = pieces.length > 0 ? [{ heed: 'untightened', pieces }] : []
    return [
      ...heeds,
      ...repeatedWork(state, entry.step).map((work) => ({ heed: 'repeated' as const, ...work })),
    ]
  }
  return []
}

/** Pieces that a count showed to be off the machine. What is open already needs no opening, and nothing more is said. */
function offAgain(state: State, moves: readonly Move[]): Heed[] {
  const off = moves.filter(({ from }) => from === 'machine').map(({ piece, to }) => ({ piece, to }))
  if (off.length === 0) return []
  return leftovers(new Gates(state)).flatMap((leftover) =>
    leftover.code === 'piece-off' &&
    off.some(({ piece, to }) => piece === leftover.piece && to === leftover.place)
      ? [{ heed: 'off-again' as const, off: leftover }]
      : [],
  )
}

function passThrough(joint: TighteningFacts | LooseningFacts | undefined, pass: number): Heed[] {
  if (!joint || joint.done[pass]?.size !== joint.order.length) return []
  return [{ heed: 'pass-through', joint, pass, next: nextTurn(joint) }]
}

function alike(state: State, came: readonly PieceId[]): Heed[] {
  return lookAlikesInJob(state, came).map((sizes) => ({ heed: 'look-alikes', ...sizes }))
}

/** What pieces that just came off, or got lost, leave to be done. */
function missing(state: State, pieces: readonly PieceId[]): Heed[] {
  if (pieces.length === 0) return []
  return missingViews(state)
    .filter(({ piece }) => pieces.includes(piece))
    .map((view) => ({ heed: 'missing', missing: view }))
}
