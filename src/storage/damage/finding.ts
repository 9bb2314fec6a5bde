/**
 * What is not as it was written, in the order of the file.
 * - flipped: one bit of the line is wrong, and which one is known
 * - unended: the last line is whole but for its line feed
 * - torn: the last line has neither an end nor all of its entry
 * - zeros: bytes of nothing but zeros, as a loss of power leaves them
 * - returns, mark, blank: what an editor adds: CR LF, a byte order mark, empty lines
 * - doubled: the same line a second time
 * - moved: the line belongs elsewhere in the file
 * - foreign: the line belongs to no place in this journal
 * - other-way: the line follows on an entry that another one follows already: two copies went two ways
 * - altered: the line can be read, but is not what was written
 * - illegible: the line cannot be read as an entry at all
 * - missing: entries that stand nowhere in the file
 * - brought: entries taken from another copy
 * - unknown: whole and in its place, but no entry that this program knows
 * - unlawful: whole and in its place, but it tells what cannot be
 * - newer: of a later program's version
 */
export type FindingKind =
  | 'flipped'
  | 'unended'
  | 'torn'
  | 'zeros'
  | 'returns'
  | 'mark'
  | 'blank'
  | 'doubled'
  | 'moved'
  | 'foreign'
  | 'other-way'
  | 'altered'
  | 'illegible'
  | 'missing'
  | 'brought'
  | 'unknown'
  | 'unlawful'
  | 'newer'

/** One kind of damage on one line, or on lines that follow each other. */
export interface Finding {
  kind: FindingKind
  /** The first and the last line of the file that it is about, from 1; for what is missing the line it should be on. */
  line: number
  last: number
  /** The first and the last entry that it is about, where that is known. */
  entry?: number
  lastEntry?: number
  /** How many bytes, for what is torn and for zeros. */
  bytes?: number
  /** How many lines, where they do not follow each other. */
  count?: number
  /** Whether nothing is lost by putting it right. */
  isSure: boolean
}

/** An entry behind the damage: it may be said again, but cannot stay where it is. */
export interface Behind<E> {
  line: number
  n: number
  /** Null where it has no shape that is known. */
  entry: E | null
  /** Whether its own line is proved by the one before it. */
  isProved: boolean
}

/** What one look at a journal's bytes came to. */
export interface Examination<E> {
  findings: readonly Finding[]
  /** The entries that stand, one after the other from the first: all that is read, mended or not. */
  entries: readonly E[]
  behind: readonly Behind<E>[]
  /** The bytes of a journal that holds what stands, and all of it where the damage is certain to be mended. */
  mended: Uint8Array
  /** The lines that are not in `mended`, each with its end. */
  rest: Uint8Array
  /** Sound: there is nothing to mend. Certain: `mended` is the whole journal. Else something is lost. */
  verdict: 'sound' | 'certain' | 'lossy' | 'newer'
}
