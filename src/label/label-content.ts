/** What a label says, already in words; where each word goes is the layout's business. */
export type LabelContent = ContainerLabel | BlankLabel | FlagLabel | MachineTag

/** Explains a container without the computer. */
export interface ContainerLabel {
  kind: 'container'
  /** Names the label in errors: `bag 3`. */
  name: string
  /** Nine digits. */
  code: string
  /** `BAG 3`. */
  heading: string
  /** Which of how many: `1 of 2`; null where there is no other. */
  part: string | null
  /**
   * What and how many, one text for each lot or set, most important first: `8 × valve cover bolts M6x25 hex 8`. In a
   * container with pieces of several homes each ends with its own: `1 × left coil → ignition coils, step 6`.
   */
  what: string[]
  /** Where all of it goes back: `valve cover, step 1`; empty where the homes differ. */
  where: string[]
  /** From a closed list: `FIT AGAIN`, `MIXED`, `EMPTY`; see `words/label-text/status.ts`. */
  status: string
  /** Cautions that stand on its pieces, and what is short. */
  warnings: string[]
  /** Job number and name, and the date of printing. */
  job: string
  date: string
}

/** A number on paper, for a container that is yet to be: room to write by hand. */
export interface BlankLabel {
  kind: 'blank'
  name: string
  code: string
  job: string
}

/** One end of a hose, cable or wire. The two of a pair differ in `end`, and name each other. */
export interface FlagLabel {
  kind: 'flag'
  name: string
  code: string
  /** `A` or `B`, or another letter where there are more ends. */
  end: string
  /** What it is: `coolant hose`. */
  what: string
  /** Where this end goes: `radiator`. */
  own: string
  /** Where the others go. */
  others: string[]
  job: string
}

/** Hangs on the machine, so that nobody starts it. */
export interface MachineTag {
  kind: 'machine'
  name: string
  /** The code of the job itself. */
  code: string
  /** `NOT READY TO START`. */
  state: string
  /** Why: `14 pieces off`, `coolant drained`. */
  reasons: string[]
  machine: string
  job: string
  date: string
}
