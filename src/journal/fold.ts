import { LAST_CONTAINER } from '../label/code.ts'
import type { Move } from '../ledger/account.ts'
import { accountOf, holdingsIn } from '../ledger/ledger.ts'
import type { Piece } from '../ledger/piece.ts'
import type { DecisionTarget, StepFacts } from '../plan/facts.ts'
import { freshGrid, interrupt } from '../plan/tightening.ts'
import { shimsAtHome } from '../plan/valves.ts'
import { beginComparison } from './apply/comparing.ts'
import { judgingAppliers, succeedChecks } from './apply/judging.ts'
import { carry, enterPieces, stepOf } from './apply/moves.ts'
import { noteArrival, waitingAppliers } from './apply/waiting.ts'
import { noteWork } from './apply/work.ts'
import { noteDealt } from './dealt.ts'
import type { Container, Entry, EntryOf, EntryType, StripStep } from './entry.ts'
import { forgetLooks, forgetLooksAbove } from './looks.ts'
import { drawnOnce, orderedOnce } from './once.ts'
import { emptyState, type PictureFacts, type State } from './state.ts'

/** An entry that cannot follow from those before it: the record is damaged, or a program wrote it wrongly. */
export class UnlawfulEntry extends Error {
  readonly n: number
  constructor({ n, type }: Entry, cause: unknown) {
    super(`entry ${n} (${type}): ${cause instanceof Error ? cause.message : cause}`, { cause })
    this.name = 'UnlawfulEntry'
    this.n = n
  }
}

/** The state that follows from a journal. Throws UnlawfulEntry when an entry breaks a law. */
export function fold(entries: readonly Entry[]): State {
  const state = emptyState()
  const takenBack = new Set<number>()
  for (const entry of entries) {
    if (entry.type === 'undone') takenBack.add(entry.entry)
    if (entry.type === 'redone') takenBack.delete(entry.entry)
  }
  for (const entry of entries) evolve(state, entry, takenBack.has(entry.n))
  return state
}

/**
 * Carries a state on by the entries that came after it. Answers the state to go on with: the same one
 * changed in place, or a new one where something was undone, for then the fold starts over.
 */
export function foldOn(state: State, all: readonly Entry[], fresh: readonly Entry[]): State {
  if (fresh.some(({ type }) => type === 'undone' || type === 'redone')) return fold(all)
  for (const entry of fresh) evolve(state, entry, false)
  return state
}

function evolve(state: State, entry: Entry, takenBack: boolean): void {
  state.seq = entry.n
  state.clock = { at: entry.at, today: entry.at.slice(0, 10) }
  if (entry.type === 'labels-dealt') {
    // What was printed stays printed: no undo takes it back, and what was undone before it may still be redone.
    lawfully(entry, () => dealLabels(state, entry))
    return
  }
  noteDealt(state.dealt, entry)
  if (entry.type === 'undone') {
    state.undone.push(entry.entry)
    return
  }
  if (entry.type === 'redone') {
    state.undone = state.undone.filter((n) => n !== entry.entry)
    return
  }
  // New work ends the chance to redo what was undone before it, also when it is taken back itself.
  state.undone = []
  if (takenBack) return
  state.inForce.push(entry.n)
  if (!LEAVES_CLEARANCE.has(entry.type)) state.cleared = false
  if (!LEAVES_CARD.has(entry.type)) state.card = null
  const apply = appliers[entry.type] as (state: State, entry: Entry) => void
  lawfully(entry, () => {
    apply(state, entry)
    noteWork(state, entry)
  })
}

function lawfully(entry: Entry, apply: () => void): void {
  try {
    apply()
  } catch (error) {
    throw new UnlawfulEntry(entry, error)
  }
}

/** Entries that move no piece and change nothing that the clearance rests on. */
const LEAVES_CLEARANCE = new Set<EntryType>([
  'opened',
  'described',
  'archived',
  'noted',
  'renamed',
  'sized',
  'laid-out',
  'measured',
  'wrench-chosen',
  'condition-said',
  'order-lined',
  'order-changed',
  'part-noted',
  'trigger-set',
  'trigger-dropped',
  'bound',
  'seen-again',
  'container-opened',
  'container-put',
  'container-voided',
  'labels-voided',
  'pictures-added',
  'picture-sorted',
  // A count withdraws the clearance only where it does not agree.
  'counted',
  'stopped',
  'cleared',
  'started',
  'closed',
])

const LEAVES_CARD = new Set<EntryType>([
  'described',
  'renamed',
  'sized',
  'laid-out',
  'archived',
  'labels-voided',
  'pictures-added',
  'picture-sorted',
  'order-lined',
  'order-changed',
  'part-noted',
])

type Appliers = {
  [Type in Exclude<EntryType, 'labels-dealt' | 'undone' | 'redone'>]: (
    state: State,
    entry: EntryOf<Type>,
  ) => void
}

const appliers: Appliers = {
  opened: (state, { job }) => {
    state.job = { ...job, archived: false }
  },
  described: (state, { name, machine, units }) => {
    if (name !== undefined) state.job.name = name
    if (machine !== undefined) state.job.machine = machine
    if (units !== undefined) state.job.units = units
  },
  archived: (state, { archived }) => {
    state.job.archived = archived
  },

  'strip-began': (state, { step }) => beginStrip(state, step),
  'strip-ended': (state, { step }) => {
    stepOf(state, step).stripping = false
    if (state.strip === step) state.strip = null
    state.hand = null
  },
  'step-added': (state, { step, before }) => {
    state.steps.set(step.no, { ...freshStep(step.no, step.title), ...step, needs: [...step.needs] })
    for (const upper of before) stepOf(state, upper).needs.push(step.no)
    forgetLooksAbove(state, step.no)
  },
  'step-changed': (state, { step: no, title, after, needs, hides, minutes, critical }) => {
    const step = stepOf(state, no)
    if (title !== undefined) step.title = title
    if (after !== undefined) step.after = [...after]
    if (needs !== undefined) step.needs = [...needs]
    if (hides !== undefined) step.hides = hides
    if (minutes !== undefined) step.minutes = minutes
    if (critical !== undefined) step.critical = critical ?? undefined
    if (title === undefined && after === undefined && needs === undefined && hides === undefined) return
    step.looked = false
    if (after !== undefined || needs !== undefined) forgetLooks(state)
  },
  noted: (state, { n, step, kind, text, minutes }) => {
    state.notes.push({ n, step, kind, text, minutes })
  },

  'container-opened': (state, { container }) => {
    openContainer(state, container)
    takeInHand(state, container.no)
  },
  'container-put': (state, { container, inside }) => {
    containerState(state, container).inside = inside
  },
  'container-voided': (state, { container, insteadOf, reason }) => {
    const blank = state.blanks.get(container)
    if (blank) {
      blank.voided = { reason, insteadOf }
      return
    }
    const gone = containerState(state, container)
    gone.voided = { reason, insteadOf }
    // Bags that stood in it stand where it stood: a void label answers for nothing.
    for (const other of state.containers.values()) if (other.inside === container) other.inside = gone.inside
    if (state.hand === container) state.hand = null
  },

  'labels-voided': (state, { labels, reason }) => {
    for (const label of labels) blankOf(state, label).voided = { reason }
  },

  'came-off': (state, { step, began, opened, pieces, openings, moves, faults }) => {
    if (began) beginStrip(state, began)
    if (opened) openContainer(state, opened)
    enterPieces(state, pieces, openings)
    carry(state, moves)
    for (const { id } of pieces) if (isSingleUse(state, id)) state.used.add(id)
    for (const fault of faults ?? []) state.faults.set(fault.id, { ...fault, step, settled: null })
    takeInHand(state, containerFilled(moves))
    forgetLooksAbove(state, step)
  },
  drained: (state, { fluid: { id, name, litres, typed, step }, began }) => {
    if (began) beginStrip(state, began)
    state.fluids.set(id, { id, name, litresOut: litres, typed, step, filledLitres: null })
  },
  filled: (state, { fluid, litres }) => {
    const known = state.fluids.get(fluid)
    if (!known) throw new Error(`no fluid ${fluid}`)
    known.filledLitres = litres
  },
  marked: (state, { mark, began }) => {
    if (began) beginStrip(state, began)
    state.marks.set(mark.id, { ...mark, confirmed: false })
  },
  'put-in': (state, { began, pieces, openings, moves }) => {
    if (began) beginStrip(state, began)
    enterPieces(state, pieces, openings)
    carry(state, moves)
    if (moves.some(({ to }) => to === 'machine')) forgetLooks(state)
  },
  moved: (state, { moves, opened }) => {
    if (opened) openContainer(state, opened)
    carry(state, moves)
    if (moves.some(isAtMachine)) forgetLooks(state)
  },
  supplied: (state, entry) => {
    const { pieces, openings, moves, retired, opened, compare = [] } = entry
    if (opened) openContainer(state, opened)
    enterPieces(state, pieces, openings)
    for (const piece of retired) accountOf(state.ledger, piece).should = 0
    for (const piece of pieces) succeed(state, piece)
    carry(state, moves)
    for (const each of compare) beginComparison(state, each, entry.order?.id)
    noteArrival(state, entry)
    for (const piece of retired) forgetLooksAbove(state, accountOf(state.ledger, piece).piece.step)
  },

  decided: (state, { piece, what, count }) => {
    if (what === 'left-off') accountOf(state.ledger, piece).should -= count
    if (what === 'lost-accepted') state.lostAccepted.set(piece, (state.lostAccepted.get(piece) ?? 0) + count)
    if (what === 'use-again') state.used.delete(piece)
  },
  rehomed: (state, { homes }) => {
    for (const { piece, position } of homes) {
      const account = accountOf(state.ledger, piece)
      account.home = { ...account.home, position }
    }
  },
  renamed: (state, { mates, name }) => {
    for (const id of mates) {
      const account = accountOf(state.ledger, id)
      account.piece = { ...account.piece, name }
    }
  },
  settled: (state, { fault, how }) => {
    const known = state.faults.get(fault)
    if (!known) throw new Error(`no fault ${fault}`)
    known.settled = how
  },

  'build-began': (state, { step }) => takeUp(state, step),
  fitted: (state, { step, began, moves }) => {
    if (began) takeUp(state, step)
    carry(state, moves)
    forgetLooksAbove(state, step)
    if (stepOf(state, step).built === 'underway') state.build = step
  },
  confirmed: (state, { mark }) => {
    markOf(state, mark).confirmed = true
  },
  'tightening-set': (state, { tightening }) => {
    for (const piece of [tightening.piece, ...(tightening.with ?? [])]) accountOf(state.ledger, piece)
    stepOf(state, tightening.step)
    orderedOnce(tightening)
    state.tightenings.set(tightening.id, { ...tightening, done: freshGrid(tightening.passes), suspect: null })
  },
  tightened: (state, { tightening: id, pass, fastener }) => {
    const tightening = tighteningOf(state, id)
    const through = tightening.done[pass]
    if (!through || !tightening.order.includes(fastener))
      throw new Error(`no ${fastener} in pass ${pass + 1} of ${id}`)
    through.add(fastener)
    tightening.suspect = null
  },
  'condition-said': (state, { tightening, condition }) => {
    tighteningOf(state, tightening).condition = condition
  },
  'wrench-chosen': (state, { tightening, wrench }) => {
    tighteningOf(state, tightening).wrench = wrench
  },
  'torque-missed': (state, { tightening: id, fastener, fault, says }) => {
    const tightening = tighteningOf(state, id)
    accountOf(state.ledger, fault.piece)
    if (!tightening.order.includes(fastener)) throw new Error(`no ${fastener} in ${id}`)
    const { step, done, suspect } = tightening
    state.faults.set(fault.id, { ...fault, step, settled: null, in: { tightening: id, fastener, says } })
    // Whatever is done about it, this fastener goes through every pass once more.
    for (const through of done) through.delete(fastener)
    if (suspect?.fastener === fastener) tightening.suspect = null
    // What was waved through before, this fastener was not.
    withdraw(state, id)
  },
  'loosening-set': (state, { loosening, began }) => {
    if (began) beginStrip(state, began)
    const { id, passes, step, layout } = loosening
    stepOf(state, step)
    orderedOnce(loosening)
    if (layout) drawnOnce(layout.places)
    state.loosenings.set(id, { ...loosening, done: freshGrid(passes), suspect: null })
  },
  loosened: (state, { loosening: id, pass, fastener }) => {
    const loosening = state.loosenings.get(id)
    const through = loosening?.done[pass]
    if (!loosening?.order.includes(fastener) || !through)
      throw new Error(`no ${fastener} in pass ${pass + 1} of ${id}`)
    through.add(fastener)
  },
  'laid-out': (state, { of: pieces, shape, places }) => {
    for (const piece of pieces) accountOf(state.ledger, piece)
    drawnOnce(places)
    state.layouts = [
      ...state.layouts.filter((known) => !known.pieces.some((piece) => pieces.includes(piece))),
      { pieces: [...pieces], shape, places },
    ]
  },
  'turned-over': (state, { step: no, began }) => {
    if (began) takeUp(state, no)
    stepOf(state, no).turned += 1
  },
  measured: (state, { measure }) => {
    if (measure.piece !== undefined) accountOf(state.ledger, measure.piece)
    if (measure.step !== null) stepOf(state, measure.step)
    // A clearance holds for the shims that were there, whatever is decided about them later.
    const shims = measure.measurement.kind === 'valve-clearance' ? shimsAtHome(state.ledger) : []
    state.measures.set(measure.id, shims.length > 0 ? { ...measure, shims } : measure)
  },
  sized: (state, { sizes }) => {
    for (const { piece, size } of sizes) {
      const account = accountOf(state.ledger, piece)
      account.piece = { ...account.piece, size }
    }
  },
  'angle-settled': (state, { tightening: id, fastener, turned }) => {
    const tightening = tighteningOf(state, id)
    if (turned && tightening.suspect) tightening.done[tightening.suspect.pass]?.add(fastener)
    tightening.suspect = null
  },
  slackened: (state, { tightening: id }) => {
    const tightening = tighteningOf(state, id)
    tightening.done = freshGrid(tightening.passes)
    tightening.suspect = null
  },
  looked: (state, { step }) => {
    stepOf(state, step).looked = true
  },
  'build-done': (state, { step }) => {
    stepOf(state, step).built = 'done'
    if (state.build === step) state.build = null
  },
  failed: (state, { step, steps, moves }) => {
    stepOf(state, step).built = 'redo'
    stepOf(state, step).turned = 0
    stepOf(state, step).work = null
    state.secondLooks.delete(step)
    // What failed was not in order, whatever an override had said of it.
    withdrawGates(state, step)
    reopen(state, steps, moves)
    if (state.build === step) state.build = null
  },
  reopened: (state, { steps, moves }) => reopen(state, steps, moves),
  overridden: (state, { target, reason, gates }) => {
    const known = state.overrides.get(target)
    state.overrides.set(target, known === undefined ? reason : `${known}; ${reason}`)
    state.passedOver.set(target, new Set([...(state.passedOver.get(target) ?? []), ...gates]))
  },

  counted: (state, { container, lines }) => {
    for (const { piece, expected, counted, difference } of lines) {
      settleByCount(state, container, piece, expected === counted)
      if (!difference) continue
      state.cleared = false
      state.differences.set(difference, {
        id: difference,
        container,
        piece,
        expected,
        counted,
        settled: null,
      })
    }
  },
  explained: (state, { difference, how, pieces, openings, moves, opened, reason }) => {
    if (opened) openContainer(state, opened)
    enterPieces(state, pieces, openings)
    carry(state, moves)
    if (moves.some(isAtMachine)) forgetLooks(state)
    const known = state.differences.get(difference)
    if (!known) throw new Error(`no difference ${difference}`)
    known.settled = `${how}: ${reason}`
  },

  'pictures-added': (state, { pictures }) => {
    for (const picture of pictures) {
      if (state.pictures.has(picture.id)) throw new Error(`there is a picture ${picture.id} already`)
      state.pictures.set(picture.id, { ...picture, pieces: piecesShown(state, picture.belongs) })
    }
  },
  'picture-sorted': (state, { picture, belongs }) => {
    const known = state.pictures.get(picture)
    if (!known) throw new Error(`no picture ${picture}`)
    known.belongs = belongs
    known.pieces = piecesShown(state, belongs)
  },

  ...judgingAppliers,
  ...waitingAppliers,
  'came-back': (state, entry) => {
    if (entry.opened) openContainer(state, entry.opened)
    waitingAppliers['came-back'](state, entry)
  },
  applied: (state, entry) => {
    const step = state.consumables.get(entry.consumable)?.step
    if (entry.began && step !== undefined) takeUp(state, step)
    waitingAppliers.applied(state, entry)
  },

  stopped: (state, { n, at, step, note, abrupt }) => {
    for (const tightening of state.tightenings.values()) {
      // Nobody can have half turned a bolt of a step that is not under way.
      if (stepOf(state, tightening.step).built !== 'underway') continue
      interrupt(tightening, abrupt)
      // A bolt that may have been turned twice is not waved through, by an earlier override either.
      if (tightening.suspect) withdraw(state, tightening.id)
    }
    // A count that was broken off starts at nothing.
    for (const each of state.steps.values()) if (each.built === 'underway') each.turned = 0
    state.card = { n, at, step, note, abrupt }
  },
  cleared: (state) => {
    state.cleared = true
  },
  started: (state) => {
    state.started = true
  },
  closed: (state) => {
    state.closed = true
  },
}

function freshStep(no: number, title: string): StepFacts {
  return {
    no,
    title,
    way: 'both',
    kind: 'refit',
    after: [],
    needs: [],
    hides: false,
    turned: 0,
    stripping: false,
    built: 'open',
    looked: false,
    work: null,
  }
}

/** A new strip step ends the one before it: the hands have moved on. */
function beginStrip(state: State, { no, title, after, hides }: StripStep): void {
  if (state.strip !== null) stepOf(state, state.strip).stripping = false
  state.steps.set(no, { ...freshStep(no, title), after: [...after], hides, stripping: true })
  state.strip = no
  // A bag that was opened for it beforehand stays in hand.
  if (state.hand !== null && holdingsIn(state.ledger, state.hand).length > 0) state.hand = null
}

function dealLabels(state: State, entry: EntryOf<'labels-dealt'>): void {
  const { n, from, to } = entry
  if (from <= state.dealt.container) throw new Error(`number ${from} was dealt already`)
  if (to < from || to > LAST_CONTAINER) throw new Error(`there are no labels ${from} to ${to}`)
  noteDealt(state.dealt, entry)
  for (let no = from; no <= to; no += 1) state.blanks.set(no, { run: n, voided: null })
}

/** An unused label becomes a container; any other container has a number of its own. */
function openContainer(state: State, container: Container): void {
  const { no } = container
  const blank = state.blanks.get(no)
  if (blank?.voided) throw new Error(`label ${no} is void`)
  if (state.containers.has(no)) throw new Error(`there is a container ${no} already`)
  state.blanks.delete(no)
  state.containers.set(no, { ...container, voided: null, ...(blank && { run: blank.run }) })
}

/** The pieces in what a picture shows. Throws when that was never there. */
function piecesShown(state: State, belongs: PictureFacts['belongs']): Piece['id'][] {
  if (belongs === null || belongs === 'none') return []
  if ('step' in belongs) {
    stepOf(state, belongs.step)
    return []
  }
  if (!state.blanks.has(belongs.container)) containerState(state, belongs.container)
  return [...new Set(holdingsIn(state.ledger, belongs.container).map(({ piece }) => piece))]
}

/** What pieces go into from now on. Nothing more goes onto a tag that hangs on its piece, nor loose onto a shelf. */
function takeInHand(state: State, no: number | null): void {
  const kind = no === null ? undefined : containerState(state, no).kind
  if (kind !== undefined && kind !== 'tag' && kind !== 'shelf') state.hand = no
}

function containerFilled(moves: readonly Move[]): number | null {
  for (const { to } of [...moves].reverse()) {
    const match = /^c(\d+)/.exec(to)
    if (match) return Number(match[1])
  }
  return null
}

function isAtMachine({ from, to }: Move): boolean {
  return from === 'machine' || to === 'machine'
}

/** What was asked of a piece is asked of the one that takes its home: its marks, and how it is tightened. */
function succeed(state: State, piece: Piece): void {
  const { id, replaces } = piece
  if (replaces === undefined) return
  succeedChecks(state, piece)
  for (const mark of state.marks.values()) if (mark.piece === replaces) mark.piece = id
  for (const tightening of state.tightenings.values()) {
    if (tightening.piece === replaces) tightening.piece = id
    tightening.with = tightening.with?.map((each) => (each === replaces ? id : each))
  }
  // A drawing shows the old pieces as well: what took their homes lies where they lay.
  for (const layout of state.layouts) if (layout.pieces.includes(replaces)) layout.pieces.push(id)
}

function isSingleUse(state: State, piece: Piece['id']): boolean {
  return accountOf(state.ledger, piece).piece.singleUse === true
}

/** A later count that agrees settles what an earlier one had left open. */
function settleByCount(state: State, container: number, piece: Piece['id'] | null, agrees: boolean): void {
  for (const known of state.differences.values()) {
    if (known.container !== container || known.piece !== piece || known.settled !== null) continue
    known.settled = agrees ? 'counted again, and it agrees' : 'counted again'
  }
}

function takeUp(state: State, no: number): void {
  forgetLooksAbove(state, no)
  const step = stepOf(state, no)
  step.built = 'underway'
  step.turned = 0
  state.build = no
}

/**
 * Takes the given steps back: what was confirmed, tightened, filled and looked at in them no longer holds,
 * and a single-use piece that comes off again is used.
 */
function reopen(state: State, steps: readonly number[], moves: readonly Move[]): void {
  carry(state, moves)
  for (const { piece, from } of moves) {
    if (from === 'machine' && isSingleUse(state, piece)) state.used.add(piece)
  }
  const reopened = new Set(steps)
  for (const no of reopened) {
    const step = stepOf(state, no)
    step.built = 'redo'
    step.turned = 0
    step.work = null
    state.secondLooks.delete(no)
    withdrawGates(state, no)
  }
  for (const consumable of state.consumables.values()) {
    if (!reopened.has(consumable.step)) continue
    consumable.applied = null
    withdraw(state, consumable.id)
  }
  for (const mark of state.marks.values()) {
    if (!reopened.has(mark.step)) continue
    mark.confirmed = false
    withdraw(state, mark.id)
  }
  for (const fluid of state.fluids.values()) {
    if (!reopened.has(fluid.step)) continue
    fluid.filledLitres = null
    withdraw(state, fluid.id)
  }
  for (const tightening of state.tightenings.values()) {
    if (!reopened.has(tightening.step)) continue
    withdraw(state, tightening.id)
    tightening.done = freshGrid(tightening.passes)
    tightening.suspect = null
  }
  if (state.build !== null && reopened.has(state.build)) state.build = null
  forgetLooks(state)
}

function withdrawGates(state: State, no: number): void {
  for (const gate of ['start', 'finish', 'look', 'check'] as const) withdraw(state, `${gate} ${no}`)
}

function withdraw(state: State, target: DecisionTarget): void {
  state.overrides.delete(target)
  state.passedOver.delete(target)
}

function containerState(state: State, no: number) {
  const container = state.containers.get(no)
  if (!container) throw new Error(`no container ${no}`)
  return container
}

function blankOf(state: State, no: number) {
  const blank = state.blanks.get(no)
  if (!blank) throw new Error(`no unused label ${no}`)
  return blank
}

function markOf(state: State, id: EntryOf<'confirmed'>['mark']) {
  const mark = state.marks.get(id)
  if (!mark) throw new Error(`no mark ${id}`)
  return mark
}

function tighteningOf(state: State, id: EntryOf<'tightened'>['tightening']) {
  const tightening = state.tightenings.get(id)
  if (!tightening) throw new Error(`no tightening ${id}`)
  return tightening
}
