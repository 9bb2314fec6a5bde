import { type SaidFor, saidBefore } from '../../session/said-before.ts'
import { perVersion, type Scene } from './scene.ts'

/** Lines that ask for words, by how they begin; with the words that are usual where none were said yet. */
const ASKING: readonly { begins: RegExp; what: SaidFor | null; usual: readonly string[] }[] = [
  { begins: /^turned \S+ yes because $/i, what: 'turned', usual: ['the paint mark has moved'] },
  { begins: /^turned \S+ no because $/i, what: 'not-turned', usual: ['the paint mark has not moved'] },
  { begins: /^no torque .+ because $/i, what: 'no-torque', usual: ['it keeps turning'] },
  { begins: /^settle \S+: $/i, what: 'settled', usual: [] },
  // What was the reason for something else is none for this.
  { begins: /^move 1 \S+ from toolbox to .+ because $/i, what: null, usual: ['it is not in the toolbox'] },
  { begins: / because $/i, what: 'reason', usual: [] },
]

/** Words that may end a line which asks for some: those said before and the usual ones, each by its number. */
export function wordsAgain({ session }: Scene, before: string): readonly string[] {
  const asking = ASKING.find(({ begins }) => begins.test(before))
  if (!asking) return []
  const { what } = asking
  const said = what === null ? [] : perVersion(session, `said ${what}`, () => saidBefore(session, what))
  return [...new Set([...said, ...asking.usual])]
}

/** A line that ends in such a number, with its words in place of it. Null where there are none. */
export function withWordsAgain(scene: Scene, text: string): string | null {
  const [, before = '', no] = /^(.*\s)(\d)$/.exec(text) ?? []
  const words = no === undefined ? undefined : wordsAgain(scene, before)[Number(no) - 1]
  return words === undefined ? null : before + words
}
