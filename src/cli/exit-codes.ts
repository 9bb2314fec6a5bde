/** What the program ends with. */
export const EXIT = {
  done: 0,
  refused: 1,
  /** A line or an option that is not understood, or a wrong use. */
  notUnderstood: 2,
  /** The disk, the lock or the record keeps it from being written. */
  notRecorded: 3,
  noJob: 4,
  /** What was asked for is done, recorded where it is to be, and the answer could not be written. */
  notTold: 5,
} as const
export type ExitCode = (typeof EXIT)[keyof typeof EXIT]
