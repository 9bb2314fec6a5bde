import * as z from 'zod/mini'
import { no, reason, text } from './parts.ts'

/** In one entry, so that it fits on its line whatever they say. */
export const MOST_LEFT_OUT = 150

const leftOutId = z.templateLiteral(['w', z.int()])

/** A copy of the job that went its own way was brought together with this one, and what was left of it was settled. */
export const mergingBodies = {
  /** It stands behind what was taken over. */
  merged: {
    /** Where the copy lay. */
    copy: text,
    /** The name of the file beside the journal that keeps the copy's own. */
    kept: z.optional(text),
    /** How many entries of the copy stand before this one. */
    taken: z.int().check(z.minimum(0)),
    /** What did not fit: the id of the entry there, when it was written and by whom, and what it says. */
    leftOut: z
      .array(
        z.strictObject({
          id: leftOutId,
          entry: z.string().check(z.minLength(1), z.maxLength(40)),
          at: z.iso.datetime(),
          by: z.optional(text),
          says: text,
        }),
      )
      .check(z.maxLength(MOST_LEFT_OUT)),
    /** Containers of the copy that have another number here. */
    renumbered: z.array(z.strictObject({ there: no, here: no })).check(z.maxLength(9999)),
    /** What stays in hand here, whatever was in hand where the copy was written. */
    inHand: z.optional(
      z.strictObject({ strip: z.nullable(no), build: z.nullable(no), hand: z.nullable(no) }),
    ),
  },
  'left-out-settled': { leftOut: leftOutId, how: reason },
} as const
