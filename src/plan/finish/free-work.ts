import { builtOnTop } from '../order.ts'

/**
 * The open steps that what is held does not keep waiting: neither held themselves nor resting, near or far, on a held
 * one. In the order in which the open steps are given.
 */
export function freeWork(
  needs: ReadonlyMap<number, ReadonlySet<number>>,
  open: Iterable<number>,
  held: ReadonlySet<number>,
): number[] {
  const waiting = builtOnTop(needs, held)
  return [...open].filter((no) => !held.has(no) && !waiting.has(no))
}
