import { carrierOf, containerOf, type Place } from '../ledger/place.ts'
import type { Session } from './session.ts'

/** How many pieces are off the machine, by where they are. */
export interface OffBalance {
  inContainers: number
  onBench: number
  /** On other pieces. */
  onOthers: number
  out: number
  /** At a supplier, and to come from there. */
  toCome: number
  lost: number
}

/** The account of what is off. Aids and tools are no part of the machine. */
export function offBalance({ ledger }: Session['state']): OffBalance {
  const off: OffBalance = { inContainers: 0, onBench: 0, onOthers: 0, out: 0, toCome: 0, lost: 0 }
  for (const { piece, should, at } of ledger.accounts.values()) {
    if (piece.kind === 'aid' || piece.kind === 'tool') continue
    for (const [place, count] of at) {
      if (containerOf(place) !== null) off.inContainers += count
      else if (carrierOf(place) !== null) off.onOthers += count
      else if (place === 'bench') off.onBench += count
      else if (place === 'out' || place === 'lost') off[place] += count
      // What went back and is replaced by now does not come again.
      else if (place === 'supplier') off.toCome += Math.min(count, Math.max(0, should - hereOf(at)))
    }
  }
  return off
}

/** How many are neither away for good nor at a supplier. */
function hereOf(at: ReadonlyMap<Place, number>): number {
  return [...at].reduce((sum, [place, count]) => sum + (AWAY.has(place) ? 0 : count), 0)
}

const AWAY: ReadonlySet<Place> = new Set(['supplier', 'scrap', 'lost'])
