import type { TighteningPass } from '../trade/tightening-passes/tightening-pass.ts'

/** One pass over all fasteners of a pattern. Values are the user's own, from the machine's manual. */
export type Pass = TighteningPass & {
  /** Where this pass goes another way round than the others. */
  order?: string[] | undefined
}

/** A tightening as a grid of pass by fastener: never one tick. */
export interface Tightening {
  passes: Pass[]
  /** The names of the fasteners in the order of tightening. */
  order: string[]
  /** For each pass, the fasteners that are through it. */
  done: Set<string>[]
  /** The fastener that an interruption may have left half turned in an angle pass. */
  suspect: { pass: number; fastener: string } | null
}

/** What comes next: the first pass that is not through, and its first fastener in order. */
export interface NextTurn {
  /** Counted from 0. */
  pass: number
  fastener: string
  /** Fasteners through this pass. */
  through: number
  suspect: boolean
}

/** The next fastener to turn, the one in doubt before any other, or null when every pass is through. */
export function nextTurn(tightening: Tightening): NextTurn | null {
  const { suspect } = tightening
  if (suspect) return { ...suspect, through: tightening.done[suspect.pass]?.size ?? 0, suspect: true }
  for (const [pass, done] of tightening.done.entries()) {
    if (done.size === tightening.order.length) continue
    const fastener = passOrder(tightening, pass).find((name) => !done.has(name))
    if (fastener === undefined) continue
    return { pass, fastener, through: done.size, suspect: false }
  }
  return null
}

/** Whether some of a joint is turned, or in doubt, and the rest is not: what is next in it comes before anything else. */
export function isHalfWay({ suspect, through, pass }: NextTurn): boolean {
  return suspect || through > 0 || pass > 0
}

/**
 * The order of the fasteners in a pass: backed off in the reverse of the tightening, after the published practice. Where
 * nothing was turned on before, the order is that of loosening.
 */
export function passOrder({ passes, order }: Pick<Tightening, 'passes' | 'order'>, pass: number): string[] {
  const { kind, order: own } = passes[pass] ?? {}
  if (own) return own
  const wasTurnedOn = passes.slice(0, pass).some((before) => before.kind !== 'back-off')
  return kind === 'back-off' && wasTurnedOn ? order.toReversed() : order
}

/** A grid with nothing tightened. */
export function freshGrid(passes: readonly Pass[]): Set<string>[] {
  return passes.map(() => new Set<string>())
}

/**
 * What an interruption does to a tightening under way, changed in place. A torque pass starts again at its
 * first fastener: its ticks fall, but for those of fasteners that are through a later pass already, while one that never
 * came to its torque is brought up to them. A pass by angle is never run twice on a fastener: its ticks stand, and the
 * next one is suspect, since it may have been turned without a tick. What does no harm when done twice, marking
 * and backing off fully, goes on where it stopped. `abrupt` means that nobody could say so, as after a power
 * cut: then even the first fastener of an angle pass is in doubt.
 */
export function interrupt(tightening: Tightening, abrupt: boolean): void {
  const next = nextTurn(tightening)
  if (!next || next.suspect) return
  const pass = tightening.passes[next.pass]
  if (pass && isByAngle(pass)) {
    if (next.through > 0 || abrupt) tightening.suspect = { pass: next.pass, fastener: next.fastener }
  } else if (next.through > 0 && pass?.kind !== 'witness' && pass?.kind !== 'back-off') {
    const later = tightening.done.slice(next.pass + 1)
    const stand = [...(tightening.done[next.pass] ?? [])].filter((name) =>
      later.some((each) => each.has(name)),
    )
    tightening.done[next.pass] = new Set(stand)
  }
}

/** Whether an interruption now would leave something in doubt. */
export function isUnderWay(tightening: Tightening): boolean {
  const next = nextTurn(tightening)
  if (!next || next.suspect) return false
  const pass = tightening.passes[next.pass]
  return next.through > 0 || (pass !== undefined && isByAngle(pass) && next.pass > 0)
}

/** A pass that turns each fastener by an angle from where it stands, on or back. */
function isByAngle(pass: Pass): boolean {
  return pass.kind === 'angle' || (pass.kind === 'back-off' && pass.degrees !== undefined)
}
