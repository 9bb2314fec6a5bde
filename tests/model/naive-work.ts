import type { Entry, EntryOf } from '../../src/journal/entry.ts'

interface Work {
  no: number
  way: 'both' | 'build' | 'after-start'
  /** Strip steps that had to be off before, and needs that were added. */
  after: number[]
  needs: number[]
  comingOff: boolean
  built: 'open' | 'underway' | 'done' | 'redo'
}

/** One cell of the grid on the wall: a fastener in a pass, and how often it was really turned there. */
interface Cell {
  pass: number
  kind: string
  fastener: string
  ticked: boolean
  turned: number
}

/** What was to be done and was done, beside the pieces: the second half of the naive model. */
export class NaiveWork {
  readonly steps: Work[] = []
  readonly fluids: { id: string; step: number; filled: boolean }[] = []
  readonly marks: { id: string; step: number; seen: boolean }[] = []
  readonly grids: { id: string; step: number; cells: Cell[]; doubt: Cell | null }[] = []
  readonly faults: { id: string; settled: boolean }[] = []
  readonly differences: { id: string; container: number; piece: string | null; settled: boolean }[] = []
  readonly waived = new Set<string>()
  cleared = false
  /** Whether every start so far went through its gate, so that the order of the way back must hold. */
  inOrder = true

  read(entry: Entry): void {
    if ('began' in entry && typeof entry.began === 'object') this.#comesOff(entry.began)
    if (touchesTheRecord(entry)) this.cleared = false
    switch (entry.type) {
      case 'strip-began':
        this.#comesOff(entry.step)
        return
      case 'strip-ended':
        this.#step(entry.step).comingOff = false
        return
      case 'step-added': {
        const { no, way, needs } = entry.step
        this.steps.push({ no, way, after: [], needs: [...needs], comingOff: false, built: 'open' })
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
      case 'confirmed':
        for (const mark of this.marks) if (mark.id === entry.mark) mark.seen = true
        return
      case 'came-off':
        for (const { id } of entry.faults ?? []) this.faults.push({ id, settled: false })
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
        return
      case 'build-began':
        this.#start(entry.step)
        return
      case 'fitted':
        if (entry.began) this.#start(entry.step)
        return
      case 'build-done':
        if (this.#step(entry.step).built !== 'underway') this.#start(entry.step)
        this.#step(entry.step).built = 'done'
        return
      case 'failed':
        this.inOrder = false
        this.#step(entry.step).built = 'redo'
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
    for (const { id, settled } of this.faults)
      if (!settled && !this.waived.has(id)) found.push(`${id} not put right`)
    for (const { id, settled } of this.differences) if (!settled) found.push(`${id} not explained`)
    for (const step of this.steps) {
      if (step.way === 'after-start' || step.built === 'done' || this.waived.has(`check ${step.no}`)) continue
      if (this.#isOffForGood(step, hasPiecesToPutBack)) continue
      found.push(`step ${step.no} not done`)
    }
    return found
  }

  isUnderWay(no: number): boolean {
    return this.#step(no).built === 'underway'
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
    this.steps.push({ no, way: 'both', after: [...after], needs: [], comingOff: true, built: 'open' })
    this.#comesLate(no)
  }

  /** What is asked of a step after one above it has begun could not be asked for at that one's start. */
  #comesLate(no: number): void {
    const onIt = this.steps.filter((step) => this.#beneath(step.no, new Set()).has(no))
    if (onIt.some(({ built }) => built !== 'open')) this.inOrder = false
  }

  #start(no: number): void {
    this.#step(no).built = 'underway'
  }

  #reopen(steps: readonly number[]): void {
    for (const step of this.steps) {
      const within = steps.includes(step.no)
      const standsOn = [...this.#beneath(step.no, new Set())].some((lower) => steps.includes(lower))
      const built = step.built === 'done' || step.built === 'underway'
      if (standsOn && built && !within)
        throw new Error(`step ${step.no} stands on a reopened one and was left on`)
      if (within) step.built = 'redo'
    }
    for (const no of steps)
      for (const gate of ['start', 'finish', 'look', 'check']) this.waived.delete(`${gate} ${no}`)
    for (const { id, step } of [...this.fluids, ...this.marks, ...this.grids])
      if (steps.includes(step)) this.waived.delete(id)
    for (const fluid of this.fluids) if (steps.includes(fluid.step)) fluid.filled = false
    for (const mark of this.marks) if (steps.includes(mark.step)) mark.seen = false
    for (const grid of this.grids) if (steps.includes(grid.step)) wipe(grid)
  }

  #hangGrid({ tightening }: EntryOf<'tightening-set'>): void {
    const cells = tightening.passes.flatMap(({ kind }, pass) =>
      tightening.order.map((fastener) => ({ pass, kind, fastener, ticked: false, turned: 0 })),
    )
    const known = this.grids.find(({ id }) => id === tightening.id)
    if (known?.cells.some(({ ticked }) => ticked) || known?.doubt)
      throw new Error(`${known.id} was under way and was set anew`)
    this.#comesLate(tightening.step)
    if (known) known.cells = cells
    else this.grids.push({ id: tightening.id, step: tightening.step, cells, doubt: null })
  }

  #turn({ tightening, pass, fastener }: EntryOf<'tightened'>): void {
    const grid = this.#grid(tightening)
    const next = grid.cells.find(({ ticked }) => !ticked)
    if (next?.pass !== pass || next.fastener !== fastener) {
      throw new Error(
        `${fastener} was turned in pass ${pass}, and ${next?.fastener} in ${next?.pass} was next`,
      )
    }
    if (grid.doubt) throw new Error(`${fastener} was turned while ${grid.doubt.fastener} was in doubt`)
    if (this.#step(grid.step).built !== 'underway') throw new Error(`step ${grid.step} is not under way`)
    tick(next)
    if (next.kind === 'angle' && next.turned > 1) throw new Error(`${fastener} was turned twice by angle`)
  }

  #breakOff(grid: NaiveWork['grids'][number], abrupt: boolean): void {
    const next = grid.cells.find(({ ticked }) => !ticked)
    if (!next || grid.doubt) return
    const row = grid.cells.filter(({ pass }) => pass === next.pass)
    const begun = row.some(({ ticked }) => ticked)
    if (next.kind === 'angle') {
      const atWork = this.#step(grid.step).built === 'underway'
      if (begun || (abrupt && atWork)) {
        grid.doubt = next
        this.waived.delete(grid.id)
      }
    } else for (const cell of row) cell.ticked = false
  }

  #beneath(no: number, seen: Set<number>): Set<number> {
    const below = [
      ...this.#step(no).needs,
      ...this.steps.filter(({ after, way }) => way === 'both' && after.includes(no)).map((step) => step.no),
    ]
    for (const lower of below) {
      if (seen.has(lower)) continue
      seen.add(lower)
      this.#beneath(lower, seen)
    }
    return seen
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
  const paperwork = [
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
  const bags = ['container-opened', 'container-put', 'container-voided', 'labels-dealt', 'labels-voided']
  const pictures = ['pictures-added', 'picture-sorted']
  return ![...paperwork, ...bags, ...pictures].includes(entry.type)
}

function tick(cell: Cell): void {
  cell.ticked = true
  cell.turned += 1
}

/** Backed off: nothing is turned any more, so that an angle may be turned again. */
function wipe(grid: NaiveWork['grids'][number]): void {
  for (const cell of grid.cells) {
    cell.ticked = false
    cell.turned = 0
  }
  grid.doubt = null
}
