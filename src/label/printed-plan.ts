/** The whole way back on paper, already in words; where each word goes is the layout's business. */
export interface PrintedPlan {
  /** Job number and name, machine, and the date of printing. */
  job: string
  machine: string
  date: string
  /** The code of the job itself, nine digits. */
  code: string
  /** `NOT READY TO START`, and why. */
  state: string
  reasons: string[]
  /** Notes that belong to no step. */
  notes: string[]
  /** In an order in which they can be done; those due after the first start last. */
  steps: PlanStep[]
  containers: PlanContainer[]
  /** What lies in no container. */
  loose: LooseOnes[]
}

export interface PlanStep {
  no: number
  /** The code of the step, nine digits; null above step 999, for which a label code has no room. */
  code: string | null
  title: string
  /** `READY`, `DONE`. */
  standing: string
  isDone: boolean
  afterStart: boolean
  /** Which steps come before it, when it is due. */
  before: string
  cautions: string[]
  items: PlanItem[]
  notes: string[]
}

export type PlanItem =
  /** To be ticked: one box, or one for each position. */
  | { kind: 'tick'; text: string; from: string[]; notes: string[]; boxes: PlanBox[] }
  /** A tightening: a box for each fastener in each pass, in the order of tightening. */
  | {
      kind: 'grid'
      text: string
      caution: string
      fasteners: string[]
      passes: { text: string; done: boolean[] }[]
    }
  /** A line to write on. */
  | { kind: 'write'; text: string }

export interface PlanBox {
  /** Empty for a box alone. */
  label: string
  done: boolean
}

export interface PlanContainer {
  heading: string
  code: string
  part: string | null
  /** `in bin 2 on shelf 1`; null where it stands nowhere. */
  stands: string | null
  what: string[]
  where: string[]
  status: string
  warnings: string[]
}

export interface LooseOnes {
  /** `On the bench`. */
  place: string
  what: string[]
}
