import { lainIn, toTip } from '../../session/last-round.ts'
import type { Session } from '../../session/session.ts'
import { containerStands, lainInShort, lainTexts } from '../../words/lain-in.ts'
import { label } from './labels.ts'
import { whenText } from './when.ts'

type State = Session['state']

/** The containers to be tipped out one after the other, and how it is said what came of it. */
export function roundLines(state: State): string[] {
  const code = label(state)
  const stops = toTip(state)
  const open = stops.find(({ agreed, holds }) => !agreed && !holds) ?? stops[0]
  const lines = stops.map(({ container, lain, holds, agreed }) => {
    const now = agreed ? 'counted: ' : holds ? 'holds something still; ' : ''
    return `${containerStands(state, container)} (${code(container)}): ${now}held ${lainInShort(state, lain)}`
  })
  if (!open) return lines
  const { container } = open
  return [...lines, `Nothing in it: "count ${container} = 0". One in it: "count ${container} = 1".`]
}

/** What an empty container held, and how it is said that something is in it all the same. */
export function emptyLines(state: State, container: number): string[] {
  const lain = lainIn(state, container)
  if (lain.length === 0) return []
  return [
    ...lainTexts(state, lain, whenText).map((text) => `held ${text}`),
    `It should be empty. One in it: "count ${container} = 1".`,
  ]
}
