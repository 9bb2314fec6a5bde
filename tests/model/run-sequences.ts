import fc from 'fast-check'
import type { Command } from '../../src/journal/command.ts'
import { decide } from '../../src/journal/decide/decide.ts'
import { type Entry, parseEntry } from '../../src/journal/entry.ts'
import { fold, foldOn } from '../../src/journal/fold.ts'
import { emptyState, type State } from '../../src/journal/state.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import { holdingsAt, holdingsIn, placesOf } from '../../src/ledger/ledger.ts'
import { containerOf } from '../../src/ledger/place.ts'
import { Gates } from '../../src/plan/gates.ts'
import { leftovers } from '../../src/plan/leftovers.ts'
import { nextTurn, type Tightening } from '../../src/plan/tightening.ts'
import { numbered, openJob, quickText } from '../support/record.ts'
import { leftoverLines } from './leftover-lines.ts'
import { NaiveLabels, openedBy, walk } from './naive-labels.ts'
import { NaiveModel } from './naive-model.ts'
import { nextStepHome } from './way-home.ts'
import { STRIP_WHIMS, WHIMS, type Whim, wildCommand } from './wild-commands.ts'

/** What a run did, so that a test can tell that it went everywhere. */
export interface RunTally {
  sequences: number
  commands: number
  /** Entries by type. */
  written: Map<string, number>
  /** Refusals by code. */
  refused: Map<string, number>
  /** Sequences that cleared the first start of a machine that something had come off. */
  cleared: number
  /** How often a clearance was asked for on a whole machine, and given; and on one that owes something, and refused. */
  askedWhole: number
  askedOwing: number
  /** How often the gate was found open, looked at once after each entry. */
  openGates: number
  /** The objects that were looked at there, each as often, and what nothing explained. */
  piecesAtOpenGates: number
  unexplained: number
  /** Containers that were opened with a label printed before. */
  labelsUsed: number
}

/** How large the random jobs are. */
export interface JobSize {
  /** How many commands take the machine apart, at most. */
  strip: number
  /** For how many commands at most the patient hand carries on, each time. */
  patience: number
}

/** Small jobs, much of which is wild. */
const SMALL: JobSize = { strip: 14, patience: 60 }

/**
 * Runs random jobs on the core, each command beside the naive model, and holds every law after each.
 * Throws at the first disagreement, shrunk to a short job, with the seed that shows it again.
 */
export function runSequences(count: number, seed: number, size = SMALL): RunTally {
  const tally: RunTally = {
    sequences: 0,
    commands: 0,
    written: new Map(),
    refused: new Map(),
    cleared: 0,
    askedWhole: 0,
    askedOwing: 0,
    openGates: 0,
    piecesAtOpenGates: 0,
    unexplained: 0,
    labelsUsed: 0,
  }
  fc.assert(
    fc.property(jobs(size), (job) => runJob(job, tally)),
    { numRuns: count, seed },
  )
  return tally
}

const whims = (kinds: readonly Whim['kind'][], minLength: number, maxLength: number) =>
  fc.array(fc.record({ kind: fc.constantFrom(...kinds), a: fc.nat(63), b: fc.nat(63), c: fc.nat(63) }), {
    minLength,
    maxLength,
    size: 'max',
  })

/** Wild work, then a patient hand that brings the job home for so many commands; it is called away once, and a bolt fails. */
interface Stretch {
  wild: Whim[]
  patience: number
  calledAway: number
  abrupt: boolean
  /** At which of every ten commands a bolt never comes to its torque, where one is being turned. */
  misses: number
  /** Whether the patient hand closes the job, where it gets that far. */
  closes: boolean
}

const stretch = (patience: number): fc.Arbitrary<Stretch> =>
  fc.record({
    wild: whims(WHIMS, 0, 25),
    patience: fc.nat(patience),
    calledAway: fc.nat(40),
    abrupt: fc.boolean(),
    misses: fc.nat(20),
    closes: fc.nat(3).map((chance) => chance === 0),
  })
const jobs = ({ strip, patience }: JobSize) =>
  fc.record({
    strip: whims(STRIP_WHIMS, 2, strip),
    stretches: fc.array(stretch(patience), { minLength: 1, maxLength: 3, size: 'max' }),
  })

function runJob({ strip, stretches }: { strip: Whim[]; stretches: Stretch[] }, tally: RunTally): void {
  const twin = new Twin(tally)
  try {
    twin.give(openJob)
    for (const whim of strip) twin.give(wildCommand(twin.state, whim))
    for (const stretch of stretches) {
      for (const whim of stretch.wild) twin.give(wildCommand(twin.state, whim))
      bringHome(twin, stretch)
    }
    twin.readBack()
  } catch (error) {
    const told = twin.commands.map((command) => `  ${JSON.stringify(command)}`).join('\n')
    throw new Error(`${error instanceof Error ? error.message : error}\nafter\n${told}`, { cause: error })
  }
  tally.sequences += 1
  if (twin.everCleared) tally.cleared += 1
}

function bringHome(twin: Twin, { patience, calledAway, abrupt, misses, closes }: Stretch): void {
  for (let step = 0; step < patience; step += 1) {
    if (step === calledAway) twin.give({ do: 'stop', note: 'called away', abrupt })
    if (step % 10 === misses) twin.give({ do: 'miss-torque', says: 'it keeps turning' })
    const command = nextStepHome(twin.state)
    if (!command || (command.do === 'close-job' && !closes) || !twin.give(command)) return
  }
}

/** The core and the naive model, side by side on one journal. */
class Twin {
  state: State = emptyState()
  everCleared = false
  readonly commands: Command[] = []
  readonly entries: Entry[] = []
  readonly #tally: RunTally
  #model = new NaiveModel([])
  #text = quickText(this.state)

  constructor(tally: RunTally) {
    this.#tally = tally
  }

  /** Gives both a command and compares them. Answers whether it was carried out. */
  give(command: Command): boolean {
    this.#tally.commands += 1
    this.commands.push(command)
    const decision = decide(this.state, command)
    expectSame(quickText(this.state), this.#text, `deciding '${command.do}' changed the state`)
    if (!decision.ok) {
      add(this.#tally.refused, decision.refusal.code)
      if (command.do === 'clear' && decision.refusal.code === 'not-clear') {
        if (this.#model.unexplained().length === 0) throw new Error('clear was refused on a whole machine')
        this.#tally.askedOwing += 1
      }
      return false
    }
    if (decision.body.type === 'cleared') {
      if (this.#model.things.length > 2) this.everCleared = true
      expectSame(this.#model.unexplained(), [], 'clear passed over something unexplained')
      this.#tally.askedWhole += 1
    }
    const entry = numbered(decision.body, this.state.seq + 1)
    const opened = openedBy(entry)
    if (opened && this.state.blanks.has(opened.no)) this.#tally.labelsUsed += 1
    const readBack = parseEntry(JSON.parse(JSON.stringify(entry)))
    expectSame(
      JSON.stringify(readBack),
      JSON.stringify(sorted(entry, readBack)),
      'an entry reads back otherwise',
    )
    this.entries.push(readBack)
    this.state = foldOn(this.state, this.entries, [readBack])
    this.#text = quickText(this.state)
    if (entry.type === 'undone' || entry.type === 'redone') this.#model = new NaiveModel(this.entries)
    else this.#model.read(readBack)
    add(this.#tally.written, entry.type)
    this.#compare()
    return true
  }

  /** The whole journal once more from its text: the same state must follow. */
  readBack(): void {
    const again = this.entries.map((entry) => parseEntry(JSON.parse(JSON.stringify(entry))))
    expectSame(quickText(fold(again)), this.#text, 'reading the journal again gives another state')
  }

  #compare(): void {
    const { ledger, containers, blanks, cleared } = this.state
    expectSame(auditLedger(ledger), [], 'a law of the ledger is broken')
    expectSame(countsOf(this.state), this.#model.counts(), 'the counts differ from the objects')
    expectSame(
      countsByIndex(this.state),
      this.#model.counts(),
      'the index of places differs from the objects',
    )
    for (const account of ledger.accounts.values()) {
      for (const place of account.at.keys()) {
        const container = containerOf(place)
        if (container !== null && containers.get(container)?.voided !== null)
          throw new Error(`${account.piece.id} is in ${place}, which is no container in use`)
      }
    }
    new NaiveLabels(this.entries)
    const { bags, paper } = walk(this.entries)
    expectSame([...containers.keys()].sort(rising), bags, 'the containers differ from the bags')
    const unused = [...blanks].map(([no, { voided }]) => ({ no, isVoid: voided !== null }))
    expectSame(
      unused.sort((a, b) => rising(a.no, b.no)),
      paper,
      'the unused labels differ from the paper',
    )
    expectSame(progressOf(this.state), this.#model.work.progress(), 'the progress of turning differs')
    expectSame(sheetsOf(this.state), this.#model.drawings.sheets(), 'the drawings differ')
    expectSame(slipsOf(this.state), this.#model.drawings.slips, 'the measurements differ')
    expectSame(sizesOf(this.state), this.#model.sizes(), 'the sizes differ')
    const { judging, shopping, waiting } = this.#model
    expectSame(judgedOf(this.state), judging.slips(), 'what was asked of pieces and said of them differs')
    expectSame(ordersOf(this.state), shopping.slip(), 'the orders differ from the slip')
    expectSame(awaitedOf(this.state), waiting.board(), 'what is out and what is put on differs')
    const lines = leftoverLines(leftovers(new Gates(this.state)))
    expectSame(lines, this.#model.unexplained(), 'the leftovers differ from what is unexplained')
    expectSame(cleared, this.#model.work.cleared, 'the clearance differs')
    if (cleared) this.#atOpenGate(lines)
  }

  /** What is said here comes from the naive model: the trial balance was found to agree with it. */
  #atOpenGate(lines: string[]): void {
    this.#tally.openGates += 1
    this.#tally.piecesAtOpenGates += this.#model.things.length
    this.#tally.unexplained += lines.length
    expectSame(lines, [], 'cleared with something left over')
  }
}

/** How far each tightening, each easing and each count of turns is. */
function progressOf({ tightenings, loosenings, steps }: State): string[] {
  const text = (grid: Tightening) => {
    const next = nextTurn(grid)
    const ticked = grid.done.reduce((sum, { size }) => sum + size, 0)
    const doubtful = next?.suspect ? ' in doubt' : ''
    return `: ${next ? `${next.fastener} in ${next.pass}` : 'through'}${doubtful}, ${ticked} ticked`
  }
  return [
    ...[...tightenings.values()].map((grid) => {
      const { id, piece, with: others = [], condition } = grid
      return `${id} ${[piece, ...others]} ${condition}${text(grid)}`
    }),
    ...[...loosenings.values()].map((grid) => `${grid.id}${text(grid)}`),
    ...[...steps.values()].map(({ no, turned }) => `step ${no}: ${turned} full turns`),
  ]
}

function sheetsOf({ layouts }: State): string[] {
  return layouts.map(({ pieces, places }) => {
    const spots = places.map(
      ({ position, x, y, arrow }) => `${position}@${x},${y}${arrow ? ` ${arrow}` : ''}`,
    )
    return `${pieces}: ${spots.join(' ')}`
  })
}

function slipsOf({ measures }: State): string[] {
  return [...measures.values()].map(
    ({ id, name, measurement }) => `${id} ${name} ${measurement.readings.map(({ mm }) => mm)}`,
  )
}

function sizesOf({ ledger }: State): string[] {
  return [...ledger.accounts.values()].map(({ piece }) => `${piece.id} ${piece.name} ${piece.size}`)
}

function judgedOf({ checks, verdicts, comparisons, bonds, triggers, findings }: State): string[] {
  return [
    ...[...checks.values()].map(({ id, piece, done }) => `${id} ${piece} ${done !== null}`).sort(),
    ...[...verdicts].map(([piece, { verdict }]) => `${piece} ${verdict}`).sort(),
    ...[...comparisons.values()]
      .map(
        ({ piece, old, features, verdict }) =>
          `${piece} beside ${old} ${verdict}: ${features.map(({ feature, how }) => `${feature} ${how}`).sort()}`,
      )
      .sort(),
    ...bonds.map(({ pieces }) => `together ${pieces}`),
    ...[...triggers.values()].map(({ id, when }) => `${id} ${when}`),
    ...[...findings.values()].map(({ id, text }) => `${id} ${text}`),
  ]
}

function ordersOf({ orders, partNotes }: State): string[] {
  return [
    ...[...orders.values()].map(
      ({ id, name, count, ordered, arrived, wrong, returned, cancelled, partNo }) =>
        `${id} ${count} ${name} ${partNo}: ${ordered ? 'ordered' : 'wanted'}, ${arrived} came, ${wrong} wrong, ${returned} back${cancelled === null ? '' : ', struck out'}`,
    ),
    ...[...partNotes].flatMap(([piece, { partNo }]) =>
      partNo === undefined ? [] : [`${piece} is ${partNo}`],
    ),
  ]
}

function awaitedOf({ outings, consumables }: State): string[] {
  return [
    ...[...outings.values()].map(({ id, pieces, tookOut }) => {
      const away = pieces.flatMap(({ piece, away }) => Array.from({ length: away }, () => piece))
      return `${id} ${away.sort()} ${tookOut !== null}`
    }),
    ...[...consumables.values()].map(
      ({ id, step, applied }) => `${id} step ${step} ${applied === null ? null : Date.parse(applied.at)}`,
    ),
  ]
}

function rising(a: number, b: number): number {
  return a - b
}

function countsOf({ ledger }: State): string[] {
  return [...ledger.accounts.keys()]
    .flatMap((id) => placesOf(ledger, id).map(({ piece, place, count }) => `${piece} ${place} ${count}`))
    .sort()
}

/** The same through the look-ups by place and by container. */
function countsByIndex({ ledger }: State): string[] {
  const held = [
    ...[...ledger.byPlace.keys()].flatMap((place) =>
      containerOf(place) === null ? holdingsAt(ledger, place) : [],
    ),
    ...[...ledger.byContainer.keys()].flatMap((container) => holdingsIn(ledger, container)),
  ]
  return held.map(({ piece, place, count }) => `${piece} ${place} ${count}`).sort()
}

/** An entry with its keys in the order of another, without those that JSON leaves out. */
function sorted(entry: Entry, like: Entry): unknown {
  return order(JSON.parse(JSON.stringify(entry)), like)
}

function order(value: unknown, like: unknown): unknown {
  if (Array.isArray(value)) return value.map((item, index) => order(item, (like as unknown[])?.[index]))
  if (typeof value !== 'object' || value === null) return value
  const keys = [...new Set([...Object.keys((like ?? {}) as object), ...Object.keys(value)])]
  const from = value as Record<string, unknown>
  return Object.fromEntries(
    keys
      .filter((key) => key in from)
      .map((key) => [key, order(from[key], (like as Record<string, unknown> | undefined)?.[key])]),
  )
}

function expectSame(found: unknown, wanted: unknown, what: string): void {
  const [one, two] = [JSON.stringify(found), JSON.stringify(wanted)]
  if (one !== two) throw new Error(`${what}:\n  ${one}\n  ${two}`)
}

function add(tally: Map<string, number>, key: string): void {
  tally.set(key, (tally.get(key) ?? 0) + 1)
}
