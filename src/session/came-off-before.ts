import { readOff } from '../lines/read-line.ts'
import type { Session } from './session.ts'

const MOST = 4

/**
 * The words of what came off before, newest first, as far as they would be understood again. Fasteners come before the
 * parts that they held, of which there is mostly one.
 */
export function cameOffBefore(state: Session['state']): string[] {
  const newest = [...state.ledger.accounts.values()].reverse().map(({ piece }) => piece)
  const found = new Set<string>()
  for (const kind of ['fastener', 'part'] as const) {
    for (const piece of newest) {
      if (found.size === MOST) break
      // What came new did not come off.
      if (piece.kind !== kind || piece.replaces !== undefined || piece.home.position !== undefined) continue
      const words = [piece.size, piece.name].filter(Boolean).join(' ')
      if (readOff(`1 ${words}`, state).kind === 'commands') found.add(words)
    }
  }
  return [...found]
}
