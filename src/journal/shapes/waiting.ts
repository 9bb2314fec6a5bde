import * as z from 'zod/mini'
import {
  consumableId,
  container,
  count,
  day,
  moves,
  no,
  opening,
  orderId,
  outingId,
  piece,
  pieceId,
  reason,
  text,
} from './parts.ts'

const price = z.strictObject({
  minor: z.int().check(z.minimum(0), z.maximum(1e12)),
  currency: z.string().check(z.maxLength(8)),
  typed: text,
  /** For all of it, not for each. */
  inAll: z.optional(z.literal(true)),
})
const notes = { partNo: z.optional(text), price: z.optional(price), source: z.optional(text) }
const amount = z.number().check(z.positive(), z.maximum(9999))
const minutes = z.number().check(z.positive(), z.maximum(1e6))

/** What `supplied` says beside the pieces: where they came from and what they are for. */
export const supplyNotes = {
  /** The order line that this arrival is of, and how much of it arrived. */
  order: z.optional(z.strictObject({ id: orderId, count: amount })),
  /** New pieces that are to be held beside the old ones before these leave. */
  compare: z.optional(z.array(z.strictObject({ piece: pieceId, old: pieceId }))),
  /** Borrowed from another job. */
  borrowed: z.optional(z.strictObject({ job: no, name: text })),
  /** A kit that was counted in: each line, and how many of it are surplus. */
  kit: z.optional(
    z.strictObject({
      name: text,
      lines: z
        .array(
          z.strictObject({
            name: text,
            /** Those whose homes it fills. */
            pieces: z.array(pieceId).check(z.maxLength(1000)),
            count,
            spare: z.int().check(z.minimum(0)),
            /** How many are owed beyond those in the kit. */
            short: z.int().check(z.minimum(0)),
          }),
        )
        .check(z.minLength(1), z.maxLength(200)),
    }),
  ),
}

/** Orders, what is out of the house, what is put on in a step, what is seen twice. */
export const waitingBodies = {
  'order-lined': {
    orders: z
      .array(
        z.strictObject({
          id: orderId,
          name: reason,
          piece: z.optional(pieceId),
          count: amount,
          unit: z.optional(text),
          /** Ordered in another size than the old one has: what arrives has it. */
          size: z.optional(text),
          due: z.optional(day),
          ordered: z.boolean(),
          ...notes,
        }),
      )
      .check(z.minLength(1), z.maxLength(1000)),
    /** The day on which it was ordered. */
    since: day,
  },
  'order-changed': {
    order: orderId,
    ordered: z.optional(z.literal(true)),
    since: z.optional(day),
    count: z.optional(amount),
    due: z.optional(day),
    cancelled: z.optional(reason),
    ...notes,
  },
  'order-returned': { order: orderId, count: amount, reason, moves },
  'part-noted': { piece: pieceId, ...notes },

  'sent-out': {
    outing: z.strictObject({
      id: outingId,
      to: reason,
      why: z.optional(text),
      due: z.optional(day),
      expects: z.optional(text),
      /** Lent to the job of that number. */
      job: z.optional(no),
      since: day,
      pieces: z.array(z.strictObject({ piece: pieceId, count })).check(z.minLength(1), z.maxLength(1000)),
      aside: z.array(pieceId),
    }),
    moves,
  },
  /** `tookOut`: what the shop took out, once somebody says so; its pieces enter the record. What is not back moves `out`. */
  'came-back': {
    outing: outingId,
    pieces: z.array(piece),
    openings: z.array(opening),
    moves,
    tookOut: z.optional(z.strictObject({ text: reason, pieces: z.array(pieceId) })),
    result: z.optional(text),
    opened: z.optional(container),
  },

  'consumable-set': {
    consumable: z.strictObject({
      id: consumableId,
      step: no,
      kind: z.enum(['sealant', 'locker', 'lubricant', 'gasket', 'other']),
      name: reason,
      side: z.optional(text),
      workMinutes: z.optional(minutes),
      cureMinutes: z.optional(minutes),
      before: z
        .array(z.union([no, z.templateLiteral(['f', z.int()]), z.literal('start')]))
        .check(z.maxLength(50)),
      expires: z.optional(day),
      amount: z.optional(text),
    }),
  },
  'consumable-dropped': { consumable: consumableId, reason },
  applied: { consumable: consumableId, began: z.boolean() },

  'seen-again': {
    step: no,
    line: z.union([
      pieceId,
      z.templateLiteral(['m', z.int()]),
      z.templateLiteral(['t', z.int()]),
      consumableId,
    ]),
    says: reason,
  },
} as const
