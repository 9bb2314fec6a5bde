import type { Into } from '../journal/command.ts'
import type { PieceId } from '../ledger/piece.ts'

/**
 * An errand goes beyond the record: it draws, prints, or reads pictures, and takes its time. What it must record, it
 * records by commands. It is written on the line like everything else.
 */
export type Errand =
  | { errand: 'print'; what: Printed; how: HowPrinted }
  /** Keeps what is said of stock, target and resolution for the next time; null forgets it. */
  | { errand: 'print-usual'; how: HowPrinted | null }
  | { errand: 'stocks' }
  /** The whole job as plain text. */
  | { errand: 'record' }
  /** The list of what to buy and what is ordered, as a file; null: of a name of its own in the folder of the job. */
  | { errand: 'buy-csv'; file: string | null }
  | { errand: 'photos-import'; folder: string }
  | { errand: 'photos-open'; of: PicturesOf }
  /** A copy of this job is brought together with it; `isTaken`: what does not fit was seen, and is left out. */
  | { errand: 'merge'; path: string; isTaken: boolean }
  /** One file with all that a job is, into a folder or as a file that is named; null: among the back-ups of the home. */
  | { errand: 'backup'; isAll: boolean; to: string | null }
  /** The record is examined, mended as far as that is certain, completed from a copy, or cut before the damage. */
  | ({ errand: 'doctor' } & DoctorAsk)
  | Borrowing

export type DoctorAsk = { how: 'look' | 'mend' | 'cut' } | { how: 'from'; path: string }

/** Pieces of another job are taken for this one, as many as `count`. */
export interface Borrowing {
  errand: 'borrow'
  /** The number of the job that lends them. */
  job: number
  /** What they are called there. */
  words: string
  count: number
  /** The piece of this job whose home waits for them. */
  piece: PieceId
  /** In place of the one that is there, as for `new`. */
  instead: boolean
  into: Into
}

export type Printed =
  /** So many unassigned labels, or as many as are left on the sheet. */
  | { print: 'blanks'; count: number | 'sheet' }
  /** Unassigned labels of an earlier run once more. */
  | { print: 'blanks-again'; from: number; to: number }
  | { print: 'containers'; containers: number[] }
  | { print: 'all-containers' }
  | { print: 'containers-of-step'; step: number }
  /** A pair of flags for a connection, named by one of its ends. */
  | { print: 'flags'; piece: string }
  | { print: 'machine' }
  | { print: 'plan' }
  /** A sheet to lay a matched set on, or to push look-alike bolts through. */
  | { print: 'template'; pieces: string[]; layout: string | null; arrow: Arrow | null; pitch: number | null }
  | { print: 'calibration' }

export type Arrow = 'up' | 'down' | 'left' | 'right'

/** How it is printed, as far as it was said. */
export interface HowPrinted {
  /** The name of a stock, or `a4`, `letter` for a whole sheet. */
  stock?: string | undefined
  /** The first label to use on a half-used sheet, counted from 1 by rows. */
  from?: number | undefined
  copies?: number | undefined
  form?: PrintForm | undefined
  dpi?: 203 | 300 | undefined
  /** Millimetres to the right and down, for a printer that shifts. */
  shift?: { x: number; y: number } | undefined
  to?: PrintTarget | undefined
}

export type PrintForm = 'pdf' | 'svg' | 'png' | 'label-roll' | 'receipt-roll'

export type PrintTarget =
  | { target: 'file'; path: string }
  | { target: 'stdout' }
  | { target: 'device'; path: string }
  | { target: 'tcp'; host: string; port: number }

/** Whose pictures. */
export type PicturesOf =
  | { of: 'container'; no: number }
  | { of: 'step'; no: number }
  | { of: 'piece'; piece: string }
  | { of: 'job' }
