import * as z from 'zod'

/** The version of the entry shapes written by this program. */
export const ENTRY_VERSION = 1

/** In UTF-16 code units, as JavaScript counts them. */
export const LONGEST_TEXT = 500

// Compiling the schemas costs more than it saves in a job of some thousand entries: a command lives for tenths of a second.
z.config({ jitless: true })

const text = z.string().max(LONGEST_TEXT)
const reason = z.string().min(1).max(LONGEST_TEXT)
const no = z.int().min(1).max(9999)
const count = z.int().min(1).max(9999)
const pieceId = z.templateLiteral(['p', z.int()])
const fluidId = z.templateLiteral(['f', z.int()])
const markId = z.templateLiteral(['m', z.int()])
const tighteningId = z.templateLiteral(['t', z.int()])
const faultId = z.templateLiteral(['x', z.int()])
const differenceId = z.templateLiteral(['d', z.int()])

const place = z.union([
  z.enum(['machine', 'toolbox', 'bench', 'out', 'supplier', 'spare', 'scrap', 'lost']),
  z.templateLiteral(['c', z.int()]),
  z.templateLiteral(['c', z.int(), '/', z.string().max(12)]),
])

const piece = z.strictObject({
  id: pieceId,
  kind: z.enum(['part', 'fastener', 'connection', 'aid', 'tool']),
  name: text,
  home: z.strictObject({
    at: text,
    position: text.optional(),
    alikeAt: z.array(text).max(200).optional(),
  }),
  should: z.int().min(0).max(9999),
  set: text.optional(),
  size: text.optional(),
  singleUse: z.boolean().optional(),
  replaces: pieceId.optional(),
  step: no,
})

const opening = z.strictObject({
  piece: pieceId,
  count: z.int().min(0).max(9999),
  at: z.enum(['machine', 'supplier', 'toolbox']),
})

const move = z.strictObject({
  piece: pieceId,
  count,
  from: place,
  to: place,
  position: text.optional(),
})
const moves = z.array(move).max(10_000)

const container = z.strictObject({
  no,
  kind: z.enum(['bag', 'bin', 'tray', 'tag', 'shelf']),
  /** Numbered places of a tray. */
  slots: z.int().min(1).max(200).optional(),
  name: text.optional(),
  inside: no.nullable(),
})

const stripStep = z.strictObject({ no, title: text, after: z.array(no), hides: z.boolean() })

const pass = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('snug'), typed: text }),
  z.strictObject({ kind: z.literal('torque'), newtonMetres: z.number().positive(), typed: text }),
  z.strictObject({ kind: z.literal('angle'), degrees: z.number().positive(), typed: text }),
  z.strictObject({ kind: z.literal('check'), newtonMetres: z.number().positive(), typed: text }),
])

const target = z.union([
  z.templateLiteral([z.enum(['start ', 'finish ', 'look ', 'check ']), z.int()]),
  markId,
  tighteningId,
  fluidId,
  faultId,
])

const header = {
  v: z.int().min(1),
  n: z.int().min(1),
  at: z.iso.datetime(),
  id: z.string().min(1).max(40),
  /** Who wrote it, where the user has said so. */
  by: text.optional(),
}

/** Every kind of entry by its type: one fact each, in the past tense. */
const bodies = {
  opened: {
    job: z.strictObject({
      no: z.int().min(1).max(999),
      name: text,
      machine: text,
      units: z.enum(['metric', 'us']),
    }),
  },
  described: { name: text.optional(), machine: text.optional(), units: z.enum(['metric', 'us']).optional() },
  archived: { archived: z.boolean() },

  'strip-began': { step: stripStep },
  'strip-ended': { step: no },
  'step-added': {
    step: z.strictObject({
      no,
      title: text,
      way: z.enum(['build', 'after-start']),
      kind: z.enum(['clean', 'inspect', 'measure', 'prime', 'align', 'fill', 'turn', 'check', 'other']),
      needs: z.array(no),
      due: text.optional(),
    }),
    before: z.array(no),
  },
  'step-changed': {
    step: no,
    title: text.optional(),
    after: z.array(no).optional(),
    needs: z.array(no).optional(),
    hides: z.boolean().optional(),
  },
  noted: {
    step: no.nullable(),
    kind: z.enum(['note', 'caution', 'used', 'minutes']),
    text,
    minutes: z.number().positive().optional(),
  },

  'container-opened': { container },
  'container-put': { container: no, inside: no.nullable() },
  'container-voided': { container: no, insteadOf: no.optional(), reason },

  'came-off': {
    step: no,
    /** A strip step that this entry began, where none was open. */
    began: stripStep.optional(),
    /** A container that this entry opened. */
    opened: container.optional(),
    pieces: z.array(piece).min(1).max(1000),
    openings: z.array(opening),
    moves,
    faults: z
      .array(
        z.strictObject({
          id: faultId,
          kind: z.enum(['broken', 'snapped', 'cracked', 'stripped']),
          piece: pieceId,
          count,
        }),
      )
      .optional(),
  },
  drained: {
    fluid: z.strictObject({ id: fluidId, name: text, litres: z.number().positive(), typed: text, step: no }),
    began: stripStep.optional(),
  },
  filled: { fluid: fluidId, litres: z.number().positive(), typed: text },
  marked: {
    mark: z.strictObject({ id: markId, text, piece: pieceId.optional(), step: no }),
    began: stripStep.optional(),
  },
  'put-in': {
    step: no,
    began: stripStep.optional(),
    pieces: z.array(piece),
    openings: z.array(opening),
    moves,
  },
  moved: { moves: moves.min(1), reason: text.optional(), opened: container.optional() },
  supplied: {
    pieces: z.array(piece),
    openings: z.array(opening),
    moves,
    retired: z.array(pieceId),
    opened: container.optional(),
  },

  decided: {
    piece: pieceId,
    what: z.enum(['left-off', 'lost-accepted', 'use-again']),
    count: count,
    reason,
  },
  rehomed: { homes: z.array(z.strictObject({ piece: pieceId, position: text })).min(1), reason },
  settled: { fault: faultId, how: reason },

  'build-began': { step: no },
  fitted: { step: no, began: z.boolean(), moves: moves.min(1) },
  confirmed: { mark: markId },
  'tightening-set': {
    tightening: z.strictObject({
      id: tighteningId,
      name: text,
      piece: pieceId,
      step: no,
      passes: z.array(pass).min(1).max(20),
      order: z.array(text).min(1).max(200),
    }),
  },
  tightened: { tightening: tighteningId, pass: z.int().min(0), fastener: text },
  'angle-settled': { tightening: tighteningId, fastener: text, turned: z.boolean(), reason },
  slackened: { tightening: tighteningId, reason },
  looked: { step: no },
  'build-done': { step: no, result: text.optional() },
  failed: { step: no, result: reason, steps: z.array(no), moves },
  reopened: { steps: z.array(no).min(1), moves, reason },
  overridden: { target, reason, gates: z.array(z.string().max(40)) },

  counted: {
    container: no,
    lines: z.array(
      z.strictObject({
        piece: pieceId.nullable(),
        expected: z.int().min(0),
        counted: z.int().min(0),
        difference: differenceId.optional(),
      }),
    ),
  },
  explained: {
    difference: differenceId,
    how: z.enum(['missing', 'moved', 'unknown-piece', 'miscounted']),
    pieces: z.array(piece),
    openings: z.array(opening),
    moves,
    opened: container.optional(),
    reason,
  },

  stopped: { step: no.nullable(), note: text, abrupt: z.boolean() },
  cleared: {},
  started: {},
  closed: { note: text.optional() },
  undone: { entry: z.int().min(1) },
  redone: { entry: z.int().min(1) },
} as const

type Bodies = typeof bodies
export type EntryType = keyof Bodies
type Shape<Type extends EntryType> = keyof Bodies[Type] extends never
  ? unknown
  : z.infer<z.ZodObject<Bodies[Type]>>

/** The facts of an entry, before it has a number, a time and an id. */
export type EntryBody = { [Type in EntryType]: { type: Type } & Shape<Type> }[EntryType]
export type EntryBodyOf<Type extends EntryType> = Extract<EntryBody, { type: Type }>
export type Entry = EntryBody & { v: number; n: number; at: string; id: string; by?: string | undefined }
export type EntryOf<Type extends EntryType> = Extract<Entry, { type: Type }>

const schemas = new Map<string, z.ZodType>(
  Object.entries(bodies).map(([type, body]) => [
    type,
    z.strictObject({ ...header, type: z.literal(type), ...body }),
  ]),
)

/** Reads one entry back through its schema. Throws with what is wrong when it is no entry of ours. */
export function parseEntry(raw: unknown): Entry {
  const type = typeof raw === 'object' && raw !== null && 'type' in raw ? String(raw.type) : ''
  const schema = schemas.get(type)
  if (!schema) throw new Error(`an entry of unknown type '${type.slice(0, 40)}'`)
  return schema.parse(raw) as Entry
}

export type Container = z.infer<typeof container>
export type StripStep = z.infer<typeof stripStep>
