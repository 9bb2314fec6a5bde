import * as z from 'zod/mini'
import { INSTRUMENT_KINDS, MEASUREMENT_KINDS, READING_ROLES } from '../trade/measuring/measurement.ts'
import { MOST_POSITIONS } from '../trade/position-layout/position-layout.ts'
import { ORDER_RULES } from '../trade/tightening-order/order.ts'
import { harmless } from './harmless.ts'
import { judgingBodies } from './shapes/judging.ts'
import { mergingBodies } from './shapes/merging.ts'
import {
  checkId,
  consumableId,
  container,
  count,
  differenceId,
  faultId,
  fluidId,
  looseningId,
  markId,
  measureId,
  moves,
  no,
  opening,
  outingId,
  pictureId,
  piece,
  pieceId,
  reason,
  text,
  tighteningId,
} from './shapes/parts.ts'
import { supplyNotes, waitingBodies } from './shapes/waiting.ts'
import { ENTRY_VERSION, upgraded } from './upgrades.ts'

export { ENTRY_VERSION }

/** In one entry. */
export const MOST_PICTURES = 1000

const fault = z.strictObject({
  id: faultId,
  kind: z.enum(['broken', 'snapped', 'cracked', 'stripped', 'no-torque']),
  piece: pieceId,
  count,
})

const stripStep = z.strictObject({ no, title: text, after: z.array(no), hides: z.boolean() })

const positive = z.number().check(z.positive(), z.maximum(1e9))
const finite = z.number().check(z.minimum(-1e9), z.maximum(1e9))
const positions = z.array(text).check(z.minLength(1), z.maxLength(MOST_POSITIONS))

/** In every pass: what was typed, and where it goes round in an order of its own. */
const inPass = { typed: text, round: z.optional(z.literal(true)), order: z.optional(positions) }
const pass = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('snug'), ...inPass }),
  z.strictObject({ kind: z.literal('torque'), newtonMetres: positive, ...inPass }),
  z.strictObject({ kind: z.literal('angle'), degrees: positive, ...inPass }),
  z.strictObject({ kind: z.literal('check'), newtonMetres: positive, ...inPass }),
  z.strictObject({ kind: z.literal('back-off'), degrees: z.optional(positive), ...inPass }),
  z.strictObject({ kind: z.literal('witness'), ...inPass }),
])
const passes = z.array(pass).check(z.minLength(1), z.maxLength(20))

const shape = z.enum(['row', 'grid', 'circle', 'free'])
const placed = { position: text, x: finite, y: finite }
const layout = z.strictObject({
  shape,
  places: z.array(z.strictObject(placed)).check(z.minLength(1), z.maxLength(MOST_POSITIONS)),
})

/** A torque wrench and what stands between it and the fastener. */
const wrench = z.strictObject({
  typed: text,
  leastNewtonMetres: z.optional(positive),
  mostNewtonMetres: z.optional(positive),
  leverMm: z.optional(positive),
  adapterMm: z.optional(z.number().check(z.minimum(0))),
  angleDegrees: z.optional(finite),
})

/** Readings as they were taken: what they come to is worked out, never stored. */
const measurement = z.strictObject({
  kind: z.enum(MEASUREMENT_KINDS),
  readings: z
    .array(
      z.strictObject({
        mm: finite,
        typed: text,
        at: z.optional(text),
        height: z.optional(text),
        axis: z.optional(text),
        role: z.optional(z.enum(READING_ROLES)),
        spanMm: z.optional(positive),
      }),
    )
    .check(z.minLength(1), z.maxLength(1000)),
  columns: z.optional(z.int().check(z.minimum(1), z.maximum(1000))),
  columnStepMm: z.optional(positive),
  rowStepMm: z.optional(positive),
  instrument: z.optional(
    z.strictObject({
      resolutionMm: positive,
      typed: text,
      kind: z.optional(z.enum(INSTRUMENT_KINDS)),
    }),
  ),
  limits: z.optional(
    z.strictObject({
      typed: text,
      leastMm: z.optional(finite),
      mostMm: z.optional(finite),
      mostInSpanMm: z.optional(finite),
      spanMm: z.optional(positive),
      outOfRoundMostMm: z.optional(finite),
      taperMostMm: z.optional(finite),
      source: z.optional(text),
    }),
  ),
})

/** A picture belongs to what it shows: a container, or a step. */
const belongs = z.union([z.strictObject({ container: no }), z.strictObject({ step: no })])

const picture = z.strictObject({
  id: pictureId,
  // A plain name in the job's folder of pictures: whatever comes out of a record, no other file is ever touched.
  file: z.string().check(z.regex(/^(?!\.)[^/\\:\p{C}]{1,120}$/u)),
  sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  // A camera knows the time on its clock, and often no zone.
  taken: z.nullable(z.iso.datetime({ local: true, offset: true })),
  belongs: z.nullable(belongs),
})

const target = z.union([
  z.templateLiteral([z.enum(['start ', 'finish ', 'look ', 'check ']), z.int()]),
  markId,
  tighteningId,
  looseningId,
  fluidId,
  faultId,
  checkId,
  outingId,
  consumableId,
])

const header = {
  /** An entry that is read has been upgraded; its line in the file keeps the version it was written in. */
  v: z.literal(ENTRY_VERSION),
  n: z.int().check(z.minimum(1)),
  at: z.iso.datetime(),
  id: z.string().check(z.minLength(1), z.maxLength(40)),
  /** Who wrote it, where the user has said so. */
  by: z.optional(text),
}

/** Every kind of entry by its type: one fact each, in the past tense. */
export const bodies = {
  opened: {
    job: z.strictObject({
      no: z.int().check(z.minimum(1), z.maximum(999)),
      name: text,
      machine: text,
      units: z.enum(['metric', 'us']),
      /** A machine that nobody has: a job to learn with. */
      practice: z.optional(z.literal(true)),
    }),
  },
  described: {
    name: z.optional(text),
    machine: z.optional(text),
    units: z.optional(z.enum(['metric', 'us'])),
  },
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
      due: z.optional(text),
      turns: z.optional(z.int().check(z.minimum(1), z.maximum(20))),
    }),
    before: z.array(no),
  },
  'step-changed': {
    step: no,
    title: z.optional(text),
    after: z.optional(z.array(no)),
    needs: z.optional(z.array(no)),
    hides: z.optional(z.boolean()),
    minutes: z.optional(positive),
    /** To be seen again by somebody else, or so many minutes later; null: no more. */
    critical: z.optional(z.nullable(z.strictObject({ afterMinutes: positive }))),
  },
  noted: {
    step: z.nullable(no),
    kind: z.enum(['note', 'caution', 'used', 'minutes']),
    text,
    minutes: z.optional(z.number().check(z.positive())),
  },

  'container-opened': { container },
  'container-put': { container: no, inside: z.nullable(no) },
  'container-voided': { container: no, insteadOf: z.optional(no), reason },
  /** Numbers on paper, for containers that are yet to be. */
  'labels-dealt': { from: no, to: no },
  'labels-voided': {
    labels: z.array(no).check(z.minLength(1)),
    /** How many of those asked for were in use, and stay. */
    inUse: z.optional(z.int().check(z.minimum(0))),
    reason,
  },

  'came-off': {
    step: no,
    /** A strip step that this entry began, where none was open. */
    began: z.optional(stripStep),
    /** A container that this entry opened. */
    opened: z.optional(container),
    pieces: z.array(piece).check(z.minLength(1), z.maxLength(1000)),
    openings: z.array(opening),
    moves,
    faults: z.optional(z.array(fault)),
  },
  drained: {
    fluid: z.strictObject({
      id: fluidId,
      name: text,
      litres: z.number().check(z.positive()),
      typed: text,
      step: no,
    }),
    began: z.optional(stripStep),
  },
  filled: { fluid: fluidId, litres: z.number().check(z.positive()), typed: text },
  marked: {
    mark: z.strictObject({ id: markId, text, piece: z.optional(pieceId), step: no }),
    began: z.optional(stripStep),
  },
  'put-in': {
    step: no,
    began: z.optional(stripStep),
    pieces: z.array(piece),
    openings: z.array(opening),
    moves,
  },
  moved: { moves: moves.check(z.minLength(1)), reason: z.optional(text), opened: z.optional(container) },
  supplied: {
    pieces: z.array(piece),
    openings: z.array(opening),
    moves,
    retired: z.array(pieceId),
    opened: z.optional(container),
    ...supplyNotes,
  },

  decided: {
    piece: pieceId,
    what: z.enum(['left-off', 'lost-accepted', 'use-again']),
    count: count,
    reason,
  },
  rehomed: {
    homes: z.array(z.strictObject({ piece: pieceId, position: text })).check(z.minLength(1)),
    reason,
  },
  renamed: { mates: z.array(pieceId).check(z.minLength(1)), name: text },
  settled: { fault: faultId, how: reason },

  'build-began': { step: no },
  fitted: { step: no, began: z.boolean(), moves: moves.check(z.minLength(1)) },
  confirmed: { mark: markId },
  'tightening-set': {
    tightening: z.strictObject({
      id: tighteningId,
      name: text,
      piece: pieceId,
      step: no,
      passes,
      order: positions,
      with: z.optional(z.array(pieceId)),
      orderBy: z.optional(z.enum(['manual', ...ORDER_RULES])),
      condition: z.optional(text),
      because: z.optional(text),
    }),
  },
  'condition-said': { tightening: tighteningId, condition: reason },
  'wrench-chosen': { tightening: tighteningId, wrench },
  tightened: { tightening: tighteningId, pass: z.int().check(z.minimum(0)), fastener: text },
  /** A fastener that never came to its torque: a fault, and what was seen. */
  'torque-missed': { tightening: tighteningId, fastener: text, fault, says: reason },
  'angle-settled': { tightening: tighteningId, fastener: text, turned: z.boolean(), reason },
  slackened: { tightening: tighteningId, reason },
  /** `began`: the strip step that this entry began, where none was open. */
  'loosening-set': {
    loosening: z.strictObject({
      id: looseningId,
      name: text,
      step: no,
      passes,
      order: positions,
      layout: z.optional(layout),
    }),
    began: z.optional(stripStep),
  },
  loosened: { loosening: looseningId, pass: z.int().check(z.minimum(0)), fastener: text },
  'laid-out': {
    of: z.array(pieceId).check(z.minLength(1)),
    shape,
    places: z
      .array(z.strictObject({ ...placed, arrow: z.optional(z.enum(['up', 'right', 'down', 'left'])) }))
      .check(z.minLength(1), z.maxLength(MOST_POSITIONS)),
  },
  /** One full turn of the machine by hand. */
  'turned-over': { step: no, began: z.boolean() },
  measured: {
    measure: z.strictObject({
      id: measureId,
      name: text,
      piece: z.optional(pieceId),
      step: z.nullable(no),
      measurement,
    }),
  },
  sized: { sizes: z.array(z.strictObject({ piece: pieceId, size: reason })).check(z.minLength(1)) },
  looked: { step: no },
  'build-done': { step: no, result: z.optional(text) },
  failed: { step: no, result: reason, steps: z.array(no), moves },
  reopened: { steps: z.array(no).check(z.minLength(1)), moves, reason },
  overridden: { target, reason, gates: z.array(z.string().check(z.maxLength(40))) },

  counted: {
    container: no,
    lines: z.array(
      z.strictObject({
        piece: z.nullable(pieceId),
        expected: z.int().check(z.minimum(0)),
        counted: z.int().check(z.minimum(0)),
        difference: z.optional(differenceId),
      }),
    ),
  },
  explained: {
    difference: differenceId,
    how: z.enum(['missing', 'moved', 'unknown-piece']),
    pieces: z.array(piece),
    openings: z.array(opening),
    moves,
    opened: z.optional(container),
    reason,
  },

  'pictures-added': { pictures: z.array(picture).check(z.minLength(1), z.maxLength(MOST_PICTURES)) },
  'picture-sorted': { picture: pictureId, belongs: z.union([belongs, z.literal('none')]) },

  ...judgingBodies,
  ...waitingBodies,
  ...mergingBodies,

  stopped: { step: z.nullable(no), note: text, abrupt: z.boolean() },
  cleared: {},
  started: {},
  closed: { note: z.optional(text) },
  undone: { entry: z.int().check(z.minimum(1)) },
  redone: { entry: z.int().check(z.minimum(1)) },
} as const

type Bodies = typeof bodies
export type EntryType = keyof Bodies
type Shape<Type extends EntryType> = keyof Bodies[Type] extends never
  ? unknown
  : z.infer<z.ZodMiniObject<Bodies[Type]>>

/** The facts of an entry, before it has a number, a time and an id. */
export type EntryBody = { [Type in EntryType]: { type: Type } & Shape<Type> }[EntryType]
export type EntryBodyOf<Type extends EntryType> = Extract<EntryBody, { type: Type }>
export type Entry = EntryBody & { v: number; n: number; at: string; id: string; by?: string | undefined }
export type EntryOf<Type extends EntryType> = Extract<Entry, { type: Type }>

/** The schema of each kind of entry by its type, in the newest version. */
export const entrySchemas: ReadonlyMap<string, z.ZodMiniType> = new Map(
  Object.entries(bodies).map(([type, body]) => [
    type,
    z.strictObject({ ...header, type: z.literal(type), ...body }),
  ]),
)

/**
 * Reads one entry back, of whichever version, through its upgrades and its schema. Throws NewerEntry for one of a
 * later program, and with what is wrong when it is no entry of ours.
 */
export function parseEntry(raw: unknown): Entry {
  if (typeof raw !== 'object' || raw === null) throw new Error('an entry must be an object')
  const now = upgraded(raw)
  const type = typeof now.type === 'string' ? now.type : ''
  const schema = entrySchemas.get(type)
  if (!schema) throw new Error(`an entry of unknown type '${type.slice(0, 40)}'`)
  return harmless(schema.parse(now)) as Entry
}

export type Container = z.infer<typeof container>
export type StripStep = z.infer<typeof stripStep>
export type Picture = z.infer<typeof picture>
export type PictureId = z.infer<typeof pictureId>
export type Belongs = z.infer<typeof belongs>

/** Whether an entry takes these readings: sizes and distances within reason, not too many. */
export function isMeasurement(facts: unknown): boolean {
  return measurement.safeParse(facts).success
}

/** Which fact of a picture no entry would take; null when all are right. */
export function pictureFault(facts: Picture): 'file' | 'sha256' | 'taken' | 'belongs' | null {
  const [key] = picture.safeParse(facts).error?.issues[0]?.path ?? []
  return (key as 'file' | undefined) ?? null
}
