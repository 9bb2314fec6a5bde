/** A machine that nobody built, as it stands before the first bolt is off. */
export interface Machine {
  /** The name of its shape, and the seed that it was made from. */
  shape: string
  seed: number
  /** In the order in which they come off. */
  steps: StripStep[]
  /** What exists on the way back only, in the order in which it is done. */
  extra: ExtraStep[]
}

export interface StripStep {
  title: string
  /** The places in `steps` of what had to be off before it; none: it could have come off at any time. */
  after: number[]
  /** Whether it hides what is beneath, so that a last look comes before it. */
  hides: boolean
  /** Whether each line of it is seen a second time, by somebody else. */
  critical: boolean
  /** In the order in which it comes off. */
  things: Thing[]
}

/** A check or a cleaning between two strip steps of the way back: `before` is built after it. */
export interface ExtraStep {
  kind: 'clean' | 'inspect' | 'measure' | 'prime'
  title: string
  /** The places in `steps`. */
  after: number | null
  before: number
}

export type Thing = Lot | Part | MatchedSet | Hose | Aid | Fluid | WitnessMark | PutOn

/** Fasteners alike, in a bag of their own; `at`: where they go, for those that look like others of the same name. */
export interface Lot {
  kind: 'lot'
  name: string
  one: string
  count: number
  size: string
  drive: string
  at: string[] | null
  isSingleUse: boolean
  /** As the manual of this machine gives it; null where it gives none. */
  passes: Passes | null
}

/** Stages in their order, and the drawing of the positions where there is one. */
export interface Passes {
  text: string
  /** Per stage, whether it is an angle or a mark. */
  kinds: ('torque' | 'angle' | 'mark')[]
  layout: string | null
}

export interface Part {
  kind: 'part'
  name: string
  /** Always new, as a gasket or a seal ring. */
  isSingleUse: boolean
  /** A ring or a washer: common ware, of which the new one is not held beside the old one. */
  isPlain: boolean
  /** A cap or a breather, a panel or a cover: what is left off at the end. */
  isCap: boolean
  /** What is asked of it before it goes back. */
  check: string | null
}

/** Pieces that each go home to their own position only, in the slots of a tray. */
export interface MatchedSet {
  kind: 'set'
  name: string
  one: string
  positions: string[]
  check: string | null
  /** The positions that have a mark for which way round they sit. */
  marked: string[]
}

export interface Hose {
  kind: 'hose'
  name: string
  ends: [string, string]
}

/** A rag, a pin or a plug put in while it is apart, or a tool out of the box. */
export interface Aid {
  kind: 'aid'
  name: string
  where: string | null
}

export interface Fluid {
  kind: 'fluid'
  name: string
  litres: string
}

export interface WitnessMark {
  kind: 'mark'
  text: string
}

/** Oil, locker or sealant that goes on when the step is put together. */
export interface PutOn {
  kind: 'put-on'
  verb: 'lube' | 'locker' | 'sealant'
  text: string
}

/** What a thing is called; of a mark or of what is put on, its words. */
export function nameOf(thing: Thing): string {
  return 'name' in thing ? thing.name : thing.text
}
