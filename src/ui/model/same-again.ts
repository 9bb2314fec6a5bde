import { cameOffBefore } from '../../session/came-off-before.ts'
import { perVersion, type Scene } from './scene.ts'

/** The words of what came off before, each to be written again by its number. */
export function sameAgain({ session }: Scene): string[] {
  return perVersion(session, 'same again', () => cameOffBefore(session.state))
}

/** `8.2`: eight of the second of them; `8.` of the first. Null for what is no such count, or counts none of them. */
export function countedAgain(text: string, scene: Scene): string | null {
  const [, count, no] = /^(\d{1,3})[.,](\d?)$/.exec(text) ?? []
  if (count === undefined) return null
  const words = sameAgain(scene)[no ? Number(no) - 1 : 0]
  return words === undefined ? null : `${count} ${words}`
}
