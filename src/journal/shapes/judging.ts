import * as z from 'zod/mini'
import {
  checkId,
  count,
  findingId,
  measureId,
  moves,
  no,
  opening,
  orderId,
  pictureId,
  piece,
  pieceId,
  reason,
  text,
  triggerId,
} from './parts.ts'

const kind = z.enum(['look', 'measure', 'clean', 'compare'])
const what = z.array(text).check(z.maxLength(50))
const check = z.strictObject({ id: checkId, piece: pieceId, kind, what })
const checks = z.array(check).check(z.maxLength(1000))
const pieceIds = z.array(pieceId).check(z.maxLength(1000))

const triggerItem = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('replace'), piece: pieceId }),
  z.strictObject({ do: z.literal('check'), piece: pieceId, kind, what }),
])

const feature = z.strictObject({
  feature: text,
  how: z.enum(['alike', 'differs', 'wrong']),
  says: z.optional(text),
})

/** What is asked of a piece before it goes back, and what was decided about it. */
export const judgingBodies = {
  'checks-set': { checks: checks.check(z.minLength(1)) },
  /** Checks that turned out well. */
  'checks-done': {
    checks: z.array(checkId).check(z.minLength(1)),
    says: z.optional(text),
    measure: z.optional(measureId),
  },
  /** A check that is not needed after all. */
  'check-dropped': { check: checkId, reason },
  /** `along`: what belongs together with these and is judged with them. `count`: so many of a common lot, which leave it. */
  judged: {
    of: pieceIds.check(z.minLength(1)),
    along: pieceIds,
    verdict: z.enum(['fit-again', 'machine', 'replace', 'clean']),
    reason: text,
    /** The open checks that the verdict answers. */
    checks: z.array(checkId),
    measure: z.optional(measureId),
    picture: z.optional(pictureId),
    count: z.optional(count),
    moves,
  },
  bound: { of: pieceIds.check(z.minLength(2)), reason: z.optional(text) },
  /** `moves`: the old one, which goes to scrap once the new one is right. */
  compared: {
    piece: pieceId,
    old: pieceId,
    features: z.array(feature).check(z.maxLength(50)),
    verdict: z.enum(['due', 'right', 'wrong']),
    moves,
    order: z.optional(orderId),
  },
  'trigger-set': {
    trigger: z.strictObject({
      id: triggerId,
      when: reason,
      items: z.array(triggerItem).check(z.minLength(1), z.maxLength(200)),
    }),
  },
  'trigger-dropped': { trigger: triggerId, reason },
  /** Something was found: the lists that it opens are carried out in the same act. */
  'found-out': {
    finding: z.strictObject({
      id: findingId,
      text: reason,
      piece: z.optional(pieceId),
      step: z.nullable(no),
      triggers: z.array(triggerId),
    }),
    checks,
    /** To be replaced. */
    condemned: pieceIds,
  },
  /** Pieces that are lines of their own and sit on another, as studs in a pump or the ring on a plug. */
  carrying: {
    on: pieceId,
    pieces: z.array(piece),
    openings: z.array(opening),
    moves,
  },
} as const
