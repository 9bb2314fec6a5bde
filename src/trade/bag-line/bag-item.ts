import type { Drive } from '../drive.ts'
import type { DriveQuestion } from '../drive-fit.ts'
import type { Thread } from '../thread.ts'
import type { FastenerClass } from '../torque/fastener-class.ts'

/** What one written line means: every item on it, or the first part that is not understood. */
export type BagLine =
  | {
      understood: true
      /** In the order written; never empty. */
      items: BagItem[]
    }
  | {
      understood: false
      code: BagFault
      /** The part of the line that is not understood, as typed; empty for an empty line. */
      part: string
      /** The whole line in the nearest form that is understood, built from the user's own words where possible. */
      nearest: string
    }

/**
 * Why a line is not understood: `empty`; a `count` that is no whole number from 1 to 9999 or contradicts itself; a
 * `thread`, `class`, `drive`, `volume` or `minutes` that starts like one and is none; `positions` that do not match each
 * other or the count; a `torque`, which belongs to a tightening and not on a bag; a connection without its `ends`;
 * an aid without a place `where` it is; a note or mark without `text`; or words of no `kind` known here.
 */
export type BagFault =
  | 'empty'
  | 'count'
  | 'thread'
  | 'class'
  | 'drive'
  | 'positions'
  | 'volume'
  | 'torque'
  | 'minutes'
  | 'ends'
  | 'where'
  | 'text'
  | 'kind'

export type BagItem =
  | PieceItem
  | ConnectionItem
  | AidItem
  | ToolItem
  | FluidItem
  | MarkItem
  | NoteItem
  | MinutesItem

export type BrokenHow = 'snapped' | 'broken' | 'cracked' | 'stripped'

/** Parts and fasteners. Always `count + missing = should` and `broken <= count`. */
export interface PieceItem {
  kind: 'fastener' | 'part'
  /** The words of the line without what is said elsewhere; never empty. */
  name: string
  /** How many are here, broken ones among them. */
  count: number
  /** How many belong on the machine, as far as the line says. */
  should: number
  /** How many were not there. */
  missing: number
  /** How many of those here are not whole. */
  broken: number
  brokenHow?: BrokenHow
  /** The positions from which one was missing, where the line says so. */
  missingAt?: string[]
  /** The positions from which the broken ones came, where the line says so. */
  brokenAt?: string[]
  thread?: Thread
  /** The property class or grade, where the line says it. */
  fastenerClass?: FastenerClass
  drive?: Drive
  /** Matched pieces: the one position of each, `should` in number. */
  positions?: string[]
  /** Common pieces: the positions they came from, any of them in any. */
  alikeAt?: string[]
  /** Each piece has a home of its own; exactly where `positions` is present. */
  matched: boolean
  /** The line says that it is not fitted again. */
  singleUse: boolean
  /** Washers that go with it, in the words of the line: `copper washers`. */
  washers?: string
  questions: Question[]
}

/** A hose, cable or the like, which is closed at both ends. */
export interface ConnectionItem {
  kind: 'connection'
  /** What it is, in the singular: `hose`, `cable`, `connector`. */
  name: string
  /** Its own name where the line gives one: `fuel hose`. */
  label?: string
  /** Where its ends go; one end where only one comes off, as of a wiring connector. */
  ends: [string] | [string, string]
}

/** A thing put into or onto the machine for the work: it must come out again. */
export interface AidItem {
  kind: 'aid'
  name: string
  count: number
  where: string
  /** The place of each, where the line numbers them. */
  positions?: string[]
  questions: Question[]
}

/** A tool counted out for the work. */
export interface ToolItem {
  kind: 'tool'
  name: string
  count: number
  questions: Question[]
}

/** A fluid let out or put in. */
export interface FluidItem {
  kind: 'fluid'
  name: string
  direction: 'out' | 'in'
  litres: number
  /** The volume as typed: `3 US qt`. */
  typed: string
}

/** A witness mark or an orientation, to be confirmed when the piece goes back. */
export interface MarkItem {
  kind: 'mark'
  text: string
  /** The piece or position it is about, where the line names it: `I3`. */
  on?: string
}

/** Words kept as they are: a note, a caution, or what tools were used. */
export interface NoteItem {
  kind: 'note' | 'caution' | 'used'
  text: string
}

/** How long the step took. */
export interface MinutesItem {
  kind: 'minutes'
  minutes: number
}

/** What to ask the user about an item that was understood. Nothing waits for the answer. */
export type Question =
  | DriveQuestion
  /** No pitch was written; the coarse one of the standard was filled in. */
  | { code: 'pitch-assumed'; thread: Thread }
  /** The standard does not list this pitch for the size; `standardMm` has those it lists, the coarse one first. */
  | { code: 'pitch-not-standard'; thread: Thread; standardMm: number[] }
  /** By common practice such a piece is not fitted again, but the line does not say so. */
  | { code: 'usually-single-use'; noun: string }
  /** More than 200. */
  | { code: 'count-large'; count: number }
  /** The name is a plural, no count was written, and one was taken. */
  | { code: 'count-assumed'; count: number }
  /** As many are broken as were not found: the same ones? */
  | { code: 'broken-or-missing'; broken: number; missing: number }
  /** Some of a matched set are missing: which ones? */
  | { code: 'which-missing'; missing: number; positions: string[] }
  /** `E4` or `T8` behind the name of a single fastener was read as its drive, but may be its position. */
  | { code: 'drive-or-position'; typed: string }
