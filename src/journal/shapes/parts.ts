import * as z from 'zod/mini'
import { MOST_POSITIONS } from '../../trade/position-layout/position-layout.ts'

/** In UTF-16 code units, as JavaScript counts them. */
export const LONGEST_TEXT = 500

// Compiling the schemas costs more than it saves in a job of some thousand entries: a command lives for tenths of a second.
z.config({ jitless: true })

export const text = z.string().check(z.maxLength(LONGEST_TEXT))
export const reason = z.string().check(z.minLength(1), z.maxLength(LONGEST_TEXT))
export const no = z.int().check(z.minimum(1), z.maximum(9999))
export const count = z.int().check(z.minimum(1), z.maximum(9999))
export const pieceId = z.templateLiteral(['p', z.int()])
export const fluidId = z.templateLiteral(['f', z.int()])
export const markId = z.templateLiteral(['m', z.int()])
export const tighteningId = z.templateLiteral(['t', z.int()])
export const looseningId = z.templateLiteral(['l', z.int()])
export const measureId = z.templateLiteral(['q', z.int()])
export const faultId = z.templateLiteral(['x', z.int()])
export const differenceId = z.templateLiteral(['d', z.int()])
export const pictureId = z.templateLiteral(['g', z.int()])

export const checkId = z.templateLiteral(['k', z.int()])
export const orderId = z.templateLiteral(['o', z.int()])
export const outingId = z.templateLiteral(['b', z.int()])
export const consumableId = z.templateLiteral(['s', z.int()])
export const triggerId = z.templateLiteral(['h', z.int()])
export const findingId = z.templateLiteral(['y', z.int()])

/** A day, without a time: `2026-12-04`. */
export const day = z.iso.date()

const place = z.union([
  z.enum(['machine', 'toolbox', 'bench', 'out', 'supplier', 'spare', 'scrap', 'lost']),
  z.templateLiteral(['c', z.int()]),
  z.templateLiteral(['c', z.int(), '/', z.string().check(z.maxLength(12))]),
  // On another piece: it goes where that goes.
  pieceId,
])

export const piece = z.strictObject({
  id: pieceId,
  kind: z.enum(['part', 'fastener', 'connection', 'aid', 'tool']),
  name: text,
  home: z.strictObject({
    at: text,
    position: z.optional(text),
    alikeAt: z.optional(z.array(text).check(z.maxLength(MOST_POSITIONS))),
  }),
  should: z.int().check(z.minimum(0), z.maximum(9999)),
  set: z.optional(text),
  size: z.optional(text),
  singleUse: z.optional(z.boolean()),
  replaces: z.optional(pieceId),
  step: no,
})

export const opening = z.strictObject({
  piece: pieceId,
  count: z.int().check(z.minimum(0), z.maximum(9999)),
  at: z.enum(['machine', 'supplier', 'toolbox']),
})

const move = z.strictObject({
  piece: pieceId,
  count,
  from: place,
  to: place,
  position: z.optional(text),
})
export const moves = z.array(move).check(z.maxLength(10_000))

export const container = z.strictObject({
  no,
  kind: z.enum(['bag', 'bin', 'tray', 'tag', 'shelf']),
  /** Numbered places of a tray. */
  slots: z.optional(z.int().check(z.minimum(1), z.maximum(200))),
  name: z.optional(text),
  inside: z.nullable(no),
})
