import type { Entry, EntryOf } from '../../src/journal/entry.ts'

interface Work {
  no: number
  way: 'both' | 'build' | 'after-start'
  /** Strip steps that had to be off before, and needs that were added. */
  after: number[]
  needs: number[]
  /** It is the last of the way back, whatever else is planned. */
  isLast: boolean
  comingOff: boolean
  built: 'open' | 'underway' | 'done' | 'redo'
  /** Full turns by hand that are asked for, and those made since the step was taken up. */
  turns: number
  turned: number
}

/** One cell of the grid on the wall: a fastener in a pass, and how often it was really turned there. */
interface Cell {
  pass: number
  /** What a break does to its row: it falls, it stands, or nobody knows of the next one. */
  when: 'falls' | 'stands' | 'in doubt'
  fastener: string
  ticked: boolean
  turned: number
}

interface Grid {
  id: string
  step: number
  pieces: string[]
  cells: Cell[]
  doubt: Cell | null
  condition: string | undefined
}

/** What was to be done and was done, beside the pieces: the second half of the naive model. */
export class NaiveWork {
  readonly steps: Work[] = []
  readonly fluids: { id: string; step: number; filled: boolean }[] = []
  readonly marks: { id: string; step: number; seen: boolean }[] = []
  readonly grids: Grid[] = []
  /** What is eased while it comes off: it holds up nothing. */
  readonly easings: { id: string; step: number; name: string; cells: Cell[] }[] = []
  /** What is off or was, by the number of its piece. */
  readonly known = new Map<string, { step: number; name: string }>()
  readonly faults: { id: string; settled: boolean; grid?: string }[] = []
  /** What is put on in a step, and what a decision says of it is wiped off with it. */
  readonly tubes: { id: string; step: number }[] = []
  readonly differences: { id: string; container: number; piece: string | null; settled: boolean }[] = []
  /** What a copy said that did not fit: open until somebody answers for it. */
  readonly leftOut: { id: string; settled: boolean }[] = []
  readonly waived = new Set<string>()
  cleared = false
  /** Whether every start so far went through its gate, so that the order of the way back must hold. */
  inOrder = true

  /** Answers the steps that ended by it, to be done again. */
  read(entry: Entry): number[] {
    this.#read(entry)
    return this.#endRounds(entry)
  }

  #read(entry: Entry): void {
    if ('began' in entry && typeof entry.began === 'object') this.#comesOff(entry.began)
    if (touchesTheRecord(entry)) this.cleared = false
    if ('pieces' in entry) {
      for (const { id, kind, name, step } of entry.pieces)
        if (kind !== 'aid' && kind !== 'tool') this.known.set(id, { step, name })
    }
    if (entry.type === 'renamed') {
      for (const id of entry.mates) {
        const piece = this.known.get(id)
        if (piece) this.known.set(id, { ...piece, name: entry.name })
      }
    }
    switch (entry.type) {
      case 'strip-began':
        this.#comesOff(entry.step)
        return
      case 'strip-ended':
        this.#step(entry.step).comingOff = false
        return
      case 'step-added': {
        const { no, way, needs } = entry.step
        const { turns = 0, due } = entry.step
        this.steps.push({
          no,
          way,
          after: [],
          needs: [...needs],
          isLast: way === 'build' && due === 'last',
          comingOff: false,
          built: 'open',
          turns,
          turned: 0,
        })
        for (const upper of entry.before) this.#step(upper).needs.push(no)
        // A need that comes in under a step that has begun was not asked for at its start.
        this.#comesLate(no)
        return
      }
      case 'step-changed': {
        const step = this.#step(entry.step)
        if (entry.after || entry.needs) this.inOrder = false
        if (entry.after) step.after = [...entry.after]
        if (entry.needs) step.needs = [...entry.needs]
        return
      }
      case 'drained':
        this.fluids.push({ id: entry.fluid.id, step: entry.fluid.step, filled: false })
        return
      case 'filled':
        for (const fluid of this.fluids) if (fluid.id === entry.fluid) fluid.filled = true
        return
      case 'marked':
        this.marks.push({ id: entry.mark.id, step: entry.mark.step, seen: false })
        this.#comesLate(entry.mark.step)
        return
      case 'put-in':
        this.#comesLate(entry.step)
        return
      case 'carrying':
      case 'came-back':
        for (const { step } of entry.pieces) this.#comesLate(step)
        return
      case 'consumable-set':
        this.tubes.push({ id: entry.consumable.id, step: entry.consumable.step })
        this.#comesLate(entry.consumable.step)
        return
      case 'applied':
        if (entry.began) this.#start(this.tubes.find(({ id }) => id === entry.consumable)?.step ?? 0)
        return
      case 'confirmed':
        for (const mark of this.marks) if (mark.id === entry.mark) mark.seen = true
        return
      case 'came-off':
        for (const { id } of entry.faults ?? []) this.faults.push({ id, settled: false })
        return
      case 'merged':
        for (const { id } of entry.leftOut) this.leftOut.push({ id, settled: false })
        return
      case 'left-out-settled':
        for (const each of this.leftOut) if (each.id === entry.leftOut) each.settled = true
        return
      case 'settled':
        for (const fault of this.faults) if (fault.id === entry.fault) fault.settled = true
        return
      case 'tightening-set':
        this.#hangGrid(entry)
        return
      case 'tightened':
        this.#turn(entry)
        return
      case 'condition-said':
        this.#grid(entry.tightening).condition = entry.condition
        return
      case 'torque-missed':
        this.#miss(entry)
        return
      case 'loosening-set': {
        const { id, step, name, passes, order } = entry.loosening
        this.easings.push({ id, step, name, cells: cellsOf(passes, order) })
        return
      }
      case 'loosened': {
        const easing = this.easings.find(({ id }) => id === entry.loosening)
        if (!easing) throw new Error(`nobody eases ${entry.loosening}`)
        tick(nextOf(easing.cells, entry))
        return
      }
      case 'turned-over': {
        const step = this.#step(entry.step)
        if (entry.began) this.#start(entry.step)
        if (step.built !== 'underway') throw new Error(`step ${step.no} was turned over and not taken up`)
        step.turned += 1
        return
      }
      case 'supplied':
        for (const { id, replaces } of entry.pieces)
          for (const grid of this.grids)
            grid.pieces = grid.pieces.map((piece) => (piece === replaces ? id : piece))
        return
      case 'angle-settled': {
        const grid = this.#grid(entry.tightening)
        if (grid.doubt?.fastener !== entry.fastener)
          throw new Error(`nobody was in doubt about ${entry.fastener}`)
        if (entry.turned) tick(grid.doubt)
        grid.doubt = null
        return
      }
      case 'slackened':
        wipe(this.#grid(entry.tightening))
        return
      case 'stopped':
        for (const grid of this.grids) this.#breakOff(grid, entry.abrupt)
        for (const step of this.steps) if (step.built === 'underway') step.turned = 0
        return
      case 'build-began':
        this.#start(entry.step)
        return
      case 'fitted':
        if (entry.began) this.#start(entry.step)
        return
      case 'build-done': {
        const step = this.#step(entry.step)
        if (step.built !== 'underway') this.#start(entry.step)
        if (step.turned < step.turns && !this.waived.has(`finish ${step.no}`))
          throw new Error(`step ${step.no} is done after ${step.turned} of ${step.turns} turns`)
        step.built = 'done'
        return
      }
      case 'failed':
        this.inOrder = false
        this.#step(entry.step).built = 'redo'
        this.#step(entry.step).turned = 0
        for (const gate of ['start', 'finish', 'look', 'check']) this.waived.delete(`${gate} ${entry.step}`)
        this.#reopen(entry.steps)
        return
      case 'reopened':
        this.#reopen(entry.steps)
        return
      case 'overridden':
        this.waived.add(entry.target)
        this.inOrder = false
        return
      case 'counted':
        for (const { piece, difference } of entry.lines) {
          for (const open of this.differences) {
            if (open.container === entry.container && open.piece === piece) open.settled = true
          }
          if (difference)
            this.differences.push({ id: difference, container: entry.container, piece, settled: false })
        }
        return
      case 'explained':
        for (const open of this.differences) if (open.id === entry.difference) open.settled = true
        return
      case 'cleared':
        this.cleared = true
        return
      default:
    }
  }

  /** What was not done and must be, beside the pieces, one line each. */
  owed(hasPiecesToPutBack: (step: number) => boolean): string[] {
    const found: string[] = []
    for (const { id, filled } of this.fluids) if (!filled && !this.waived.has(id)) found.push(`${id} empty`)
    for (const { id, seen } of this.marks) if (!seen && !this.waived.has(id)) found.push(`${id} not seen`)
    for (const { id, cells, doubt } of this.grids) {
      const through = cells.every(({ ticked }) => ticked)
      if (!through && (doubt || !this.waived.has(id))) found.push(`${id} not through`)
    }
    for (const { id, step, name, cells } of this.easings) {
      const isOff = [...this.known.values()].some((piece) => piece.step === step && isNamed(piece.name, name))
      if (cells.some(({ ticked }) => ticked) && !isOff && !this.waived.has(id))
        found.push(`${id} eased and on`)
    }
    for (const { id, settled } of this.faults)
      if (!settled && !this.waived.has(id)) found.push(`${id} not put right`)
    for (const { id, settled } of this.differences) if (!settled) found.push(`${id} not explained`)
    for (const { id, settled } of this.leftOut) if (!settled) found.push(`${id} not settled`)
    for (const step of this.steps) {
      if (step.way === 'after-start' || step.built === 'done' || this.waived.has(`check ${step.no}`)) continue
      if (this.#isOffForGood(step, hasPiecesToPutBack)) continue
      found.push(`step ${step.no} not done`)
    }
    return found
  }

  /** How far every row of turns is, one line each: what comes next, and whether anybody doubts it. */
  progress(): string[] {
    return [
      ...this.grids.map(({ id, pieces, cells, doubt, condition }) => {
        const next = doubt ?? cells.find(({ ticked }) => !ticked)
        const doubtful = doubt ? ' in doubt' : ''
        return `${id} ${pieces} ${condition}: ${cellText(next)}${doubtful}, ${ticksOf(cells)} ticked`
      }),
      ...this.easings.map(
        ({ id, cells }) =>
          `${id}: ${cellText(cells.find(({ ticked }) => !ticked))}, ${ticksOf(cells)} ticked`,
      ),
      ...this.steps.map(({ no, turned }) => `step ${no}: ${turned} full turns`),
    ]
  }

  isUnderWay(no: number): boolean {
    return this.isIn(no, 'underway')
  }

  isIn(no: number, built: Work['built']): boolean {
    return this.#step(no).built === built
  }

  isAfterStart(no: number): boolean {
    return this.#step(no).way === 'after-start'
  }

  /** The marks and the rows of turns of a step. */
  linesOf(no: number): string[] {
    return [...this.marks, ...this.grids].filter(({ step }) => step === no).map(({ id }) => id)
  }

  /** A step beneath the given one, near or far, that has something to put back and is not done; or null. */
  undoneBeneath(no: number, hasPiecesToPutBack: (step: number) => boolean): number | null {
    for (const lower of this.#beneath(no, new Set())) {
      const step = this.#step(lower)
      if (step.built !== 'done' && !this.#isOffForGood(step, hasPiecesToPutBack)) return lower
    }
    return null
  }

  /** The steps that were ever built and stand on the given ones. */
  builtOn(steps: readonly number[]): number[] {
    return this.steps
      .filter(({ built }) => built !== 'open')
      .map(({ no }) => no)
      .filter((no) => [...this.#beneath(no, new Set())].some((lower) => steps.includes(lower)))
  }

  /** A strip step with nothing to put back is over as soon as it is off. */
  #isOffForGood({ no, way, comingOff }: Work, hasPiecesToPutBack: (step: number) => boolean): boolean {
    const bound = [...this.fluids, ...this.marks, ...this.grids].some(({ step }) => step === no)
    return way === 'both' && !comingOff && !bound && !hasPiecesToPutBack(no)
  }

  #comesOff({ no, after }: { no: number; after: readonly number[] }): void {
    for (const step of this.steps) step.comingOff = false
    const built = { built: 'open', turns: 0, turned: 0 } as const
    this.steps.push({
      no,
      way: 'both',
      after: [...after],
      needs: [],
      isLast: false,
      comingOff: true,
      ...built,
    })
    this.#comesLate(no)
  }

  /** What is asked of a step after one above it has begun could not be asked for at that one's start. */
  #comesLate(no: number): void {
    const onIt = this.steps.filter((step) => this.#beneath(step.no, new Set()).has(no))
    if (onIt.some(({ built }) => built !== 'open')) this.inOrder = false
  }

  #start(no: number): void {
    this.#step(no).built = 'underway'
    this.#step(no).turned = 0
  }

  #reopen(steps: readonly number[]): void {
    for (const step of this.steps) {
      const within = steps.includes(step.no)
      const standsOn = [...this.#beneath(step.no, new Set())].some((lower) => steps.includes(lower))
      const built = step.built === 'done' || step.built === 'underway'
      // What comes last ends by itself, also where a copy reopened what lies beneath it and knew nothing of it.
      if (standsOn && built && !within && !step.isLast)
        throw new Error(`step ${step.no} stands on a reopened one and was left on`)
    }
    this.#again(steps)
  }

  /** What was done in some steps is to be done again. */
  #again(steps: readonly number[]): void {
    for (const no of steps) {
      this.#step(no).built = 'redo'
      this.#step(no).turned = 0
    }
    for (const no of steps)
      for (const gate of ['start', 'finish', 'look', 'check']) this.waived.delete(`${gate} ${no}`)
    for (const { id, step } of [...this.fluids, ...this.marks, ...this.grids, ...this.tubes])
      if (steps.includes(step)) this.waived.delete(id)
    for (const fluid of this.fluids) if (steps.includes(fluid.step)) fluid.filled = false
    for (const mark of this.marks) if (steps.includes(mark.step)) mark.seen = false
    for (const grid of this.grids) if (steps.includes(grid.step)) wipe(grid)
  }

  /** Whoever went round the machine last goes again once anybody works beneath, or carries something to the machine or off it. */
  #endRounds(entry: Entry): number[] {
    const rounds = this.steps.filter(
      ({ isLast, built }) => isLast && (built === 'done' || built === 'underway'),
    )
    const worked = this.#workedIn(entry)
    const ended = rounds
      .filter(
        ({ no }) => stirsTheMachine(entry) || worked.some((step) => this.#beneath(no, new Set()).has(step)),
      )
      .map(({ no }) => no)
    this.#again(ended)
    // What the user put behind a round stays on when the round ends: it holds up the first start, not the work.
    for (const no of ended) this.#comesLate(no)
    return ended
  }

  #workedIn(entry: Entry): number[] {
    switch (entry.type) {
      case 'step-added':
        return [entry.step.no]
      case 'build-began':
      case 'build-done':
      case 'fitted':
      case 'came-off':
        return [entry.step]
      case 'turned-over':
        return entry.began ? [entry.step] : []
      case 'applied':
        return entry.began
          ? this.tubes.filter(({ id }) => id === entry.consumable).map(({ step }) => step)
          : []
      case 'explained':
        return entry.moves.flatMap(({ piece, from }) =>
          from === 'machine' ? (this.known.get(piece)?.step ?? this.steps.map(({ no }) => no)) : [],
        )
      case 'supplied':
        return entry.retired.flatMap((id) => this.known.get(id)?.step ?? [])
      default:
        return []
    }
  }

  #hangGrid({ tightening }: EntryOf<'tightening-set'>): void {
    const { id, step, piece, with: others = [], passes, order, condition } = tightening
    const cells = cellsOf(passes, order)
    const known = this.grids.find((grid) => grid.id === id)
    if (known?.cells.some(({ ticked }) => ticked) || known?.doubt)
      throw new Error(`${known.id} was under way and was set anew`)
    this.#comesLate(step)
    const grid = { id, step, pieces: [piece, ...others], cells, doubt: null, condition }
    if (known) Object.assign(known, grid)
    else this.grids.push(grid)
  }

  /** One that never came to its torque comes out, or is turned again from the start. */
  #miss({ tightening, fastener, fault }: EntryOf<'torque-missed'>): void {
    const grid = this.#grid(tightening)
    this.#mayTurn(grid)
    for (const cell of grid.cells) if (cell.fastener === fastener) untick(cell)
    if (grid.doubt?.fastener === fastener) grid.doubt = null
    this.waived.delete(tightening)
    this.faults.push({ id: fault.id, settled: false, grid: tightening })
  }

  #mayTurn(grid: Grid): void {
    if (this.#step(grid.step).built !== 'underway') throw new Error(`step ${grid.step} is not under way`)
    const open = this.faults.find((fault) => fault.grid === grid.id && !fault.settled)
    if (open && !this.waived.has(open.id)) throw new Error(`${grid.id} went on over ${open.id}`)
  }

  #turn(entry: EntryOf<'tightened'>): void {
    const grid = this.#grid(entry.tightening)
    const next = nextOf(grid.cells, entry)
    if (grid.doubt) throw new Error(`${entry.fastener} was turned while ${grid.doubt.fastener} was in doubt`)
    this.#mayTurn(grid)
    tick(next)
    if (next.when === 'in doubt' && next.turned > 1)
      throw new Error(`${entry.fastener} was turned twice by angle`)
  }

  #breakOff(grid: Grid, abrupt: boolean): void {
    const next = grid.cells.find(({ ticked }) => !ticked)
    if (!next || grid.doubt || this.#step(grid.step).built !== 'underway') return
    const row = grid.cells.filter(({ pass }) => pass === next.pass)
    const begun = row.some(({ ticked }) => ticked)
    if (next.when === 'in doubt') {
      if (begun || abrupt) {
        grid.doubt = next
        this.waived.delete(grid.id)
      }
    } else if (next.when === 'falls') {
      // What is further on already waits for the one that is brought up to it.
      const isFurther = ({ fastener }: Cell) =>
        grid.cells.some((cell) => cell.fastener === fastener && cell.pass > next.pass && cell.ticked)
      for (const cell of row) if (!isFurther(cell)) cell.ticked = false
    }
  }

  #beneath(no: number, seen: Set<number>): Set<number> {
    const below = [...this.#rightBeneath(no), ...(this.#step(no).isLast ? this.#beforeTheLast() : [])]
    for (const lower of below) {
      if (seen.has(lower)) continue
      seen.add(lower)
      this.#beneath(lower, seen)
    }
    return seen
  }

  #rightBeneath(no: number): number[] {
    return [
      ...this.#step(no).needs,
      ...this.steps.filter(({ after, way }) => way === 'both' && after.includes(no)).map((step) => step.no),
    ]
  }

  /** All steps before the first start, but those that come last and those that were put behind one of them. */
  #beforeTheLast(): number[] {
    const isBehind = (no: number, seen: Set<number>): boolean =>
      !seen.has(no) &&
      (this.#step(no).isLast || this.#rightBeneath(no).some((lower) => isBehind(lower, seen.add(no))))
    return this.steps
      .filter(({ no, way }) => way !== 'after-start' && !isBehind(no, new Set()))
      .map(({ no }) => no)
  }

  #grid(id: string) {
    const grid = this.grids.find((candidate) => candidate.id === id)
    if (!grid) throw new Error(`no tightening ${id}`)
    return grid
  }

  #step(no: number): Work {
    const step = this.steps.find((candidate) => candidate.no === no)
    if (!step) throw new Error(`no step ${no}`)
    return step
  }
}

/** Whether an entry does anything to the machine, its pieces or what is owed. */
function touchesTheRecord(entry: Entry): boolean {
  if (entry.type === 'counted') return entry.lines.some(({ difference }) => difference !== undefined)
  if (entry.type === 'merged') return entry.leftOut.length > 0
  const paperwork = [
    'sized',
    'laid-out',
    'measured',
    'wrench-chosen',
    'condition-said',
    'opened',
    'described',
    'archived',
    'renamed',
    'noted',
    'stopped',
    'cleared',
    'started',
    'closed',
  ]
  const desk = [
    'order-lined',
    'order-changed',
    'part-noted',
    'trigger-set',
    'trigger-dropped',
    'bound',
    'seen-again',
  ]
  const bags = ['container-opened', 'container-put', 'container-voided', 'labels-dealt', 'labels-voided']
  const pictures = ['pictures-added', 'picture-sorted']
  return ![...paperwork, ...desk, ...bags, ...pictures].includes(entry.type)
}

/** Whether nobody can say any more that all is as it was when the machine was gone round. */
function stirsTheMachine(entry: Entry): boolean {
  if (entry.type === 'reopened' || entry.type === 'failed') return true
  if (entry.type === 'step-changed') return entry.after !== undefined || entry.needs !== undefined
  if (entry.type === 'put-in') return entry.moves.some(({ to }) => to === 'machine')
  if (entry.type !== 'moved') return false
  return entry.moves.some(({ from, to }) => from === 'machine' || to === 'machine')
}

function tick(cell: Cell): void {
  cell.ticked = true
  cell.turned += 1
}

function untick(cell: Cell): void {
  cell.ticked = false
  cell.turned = 0
}

/** Backed off: nothing is turned any more, so that an angle may be turned again. */
function wipe(grid: Grid): void {
  for (const cell of grid.cells) untick(cell)
  grid.doubt = null
}

type Passes = EntryOf<'tightening-set'>['tightening']['passes']

/** The grid as it would be written down, row under row, each row in the order in which it is worked through. */
function cellsOf(passes: Passes, order: readonly string[]): Cell[] {
  let on = false
  return passes.flatMap((pass, index) => {
    const row = pass.order ?? (pass.kind === 'back-off' && on ? [...order].reverse() : order)
    if (pass.kind !== 'back-off') on = true
    return row.map((fastener) => ({
      pass: index,
      when: whenBroken(pass),
      fastener,
      ticked: false,
      turned: 0,
    }))
  })
}

function whenBroken(pass: Passes[number]): Cell['when'] {
  if (pass.kind === 'angle') return 'in doubt'
  if (pass.kind === 'witness') return 'stands'
  if (pass.kind === 'back-off') return pass.degrees === undefined ? 'stands' : 'in doubt'
  return 'falls'
}

/** The first cell without a tick, which must be the one that an entry names. */
function nextOf(cells: readonly Cell[], { pass, fastener }: { pass: number; fastener: string }): Cell {
  const next = cells.find(({ ticked }) => !ticked)
  if (next?.pass === pass && next.fastener === fastener) return next
  throw new Error(`${fastener} was turned in pass ${pass}, and ${cellText(next)} was next`)
}

function cellText(cell: Cell | undefined): string {
  return cell ? `${cell.fastener} in ${cell.pass}` : 'through'
}

function ticksOf(cells: readonly Cell[]): number {
  return cells.filter(({ ticked }) => ticked).length
}

/** Words with an s more or less, of which one name may have more than the other. */
function isNamed(one: string, other: string): boolean {
  const [a, b] = [one, other].map((name) =>
    name
      .toLowerCase()
      .split(' ')
      .map((word) => word.replace(/s$/, '')),
  )
  return (
    a !== undefined && b !== undefined && (a.every((w) => b.includes(w)) || b.every((w) => a.includes(w)))
  )
}
