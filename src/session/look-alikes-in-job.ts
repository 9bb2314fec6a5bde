import type { State } from '../journal/state.ts'
import type { PieceId } from '../ledger/piece.ts'
import { threadInSize } from '../trade/size-text.ts'
import type { Thread } from '../trade/thread.ts'
import { lookAlikes } from '../trade/thread-look-alikes.ts'

/** A metric and an inch size of one job that a hand takes for each other. */
export interface LookAlikeSizes {
  /** What has just come: `M8`. */
  size: string
  /** What was there before: `5/16`. */
  other: string
  /** The pieces of the other size. */
  pieces: PieceId[]
}

/**
 * The sizes in a job that look like those of pieces just recorded, in the other system. Only the first pieces of a size
 * are told of, so that each pair is said once.
 */
export function lookAlikesInJob(state: State, came: readonly PieceId[]): LookAlikeSizes[] {
  const threads = threadsOf(state)
  const before = threads.filter(({ piece }) => !came.includes(piece))
  const found = new Map<string, LookAlikeSizes>()
  for (const { piece, thread } of threads.filter((each) => came.includes(each.piece))) {
    const isNews = !before.some((each) => isSameSize(each.thread, thread))
    before.push({ piece, thread })
    if (!isNews) continue
    for (const each of before.filter((other) => lookAlikes(thread, other.thread))) {
      const pair = `${thread.size} ${each.thread.size}`
      const sizes = found.get(pair) ?? { size: thread.size, other: each.thread.size, pieces: [] }
      sizes.pieces.push(each.piece)
      found.set(pair, sizes)
    }
  }
  return [...found.values()]
}

/** Sizes are few and pieces many: each size is read once. */
function threadsOf({ ledger }: State): { piece: PieceId; thread: Thread }[] {
  const read = new Map<string, Thread | null>()
  return [...ledger.accounts.values()].flatMap(({ piece: { id, size } }) => {
    if (size === undefined) return []
    if (!read.has(size)) read.set(size, threadInSize(size))
    const thread = read.get(size)
    return thread ? [{ piece: id, thread }] : []
  })
}

function isSameSize(one: Thread, other: Thread): boolean {
  return one.system === other.system && one.size === other.size
}
