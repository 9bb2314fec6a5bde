import { readOff } from '../../lines/read-line.ts'
import { perVersion, type Scene } from './scene.ts'

const MOST = 4

/**
 * The words of what came off before, newest first, as far as they would be understood again. Fasteners come before the
 * parts that they held, of which there is mostly one.
 */
export function sameAgain({ session }: Scene): string[] {
  return perVersion(session, 'same again', () => {
    const { state } = session
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
  })
}

/** `8.2`: eight of the second of them; `8.` of the first. Null for what is no such count, or counts none of them. */
export function countedAgain(text: string, scene: Scene): string | null {
  const [, count, no] = /^(\d{1,3})[.,](\d?)$/.exec(text) ?? []
  if (count === undefined) return null
  const words = sameAgain(scene)[no ? Number(no) - 1 : 0]
  return words === undefined ? null : `${count} ${words}`
}
