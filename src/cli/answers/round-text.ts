import { inToolbox, lainIn, toTip } from '../../session/last-round.ts'
import type { Session } from '../../session/session.ts'
import { lainInShort, lainTexts, notInToolbox, seeInToolbox } from '../../words/lain-in.ts'
import { containerStands } from '../../words/places.ts'
import { label } from './labels.ts'
import { whenText } from './when.ts'

type State = Session['state']

/** The containers to be tipped out one after the other, and the toolbox, and how it is said what came of it. */
export function roundLines(state: State): string[] {
  const code = label(state)
  const stops = toTip(state)
  const open = stops.find(({ agreed, holds }) => !agreed && !holds) ?? stops[0]
  const lines = stops.map(({ container, lain, holds, agreed }) => {
    const now = agreed ? 'counted: ' : holds ? 'holds something still; ' : ''
    return `${containerStands(state, container)} (${code(container)}): ${now}held ${lainInShort(state, lain)}`
  })
  const inIt = open
    ? [`Nothing in it: "count ${open.container} = 0". One in it: "count ${open.container} = 1".`]
    : []
  return [...lines, ...inIt, ...toolboxLines(state)]
}

function toolboxLines(state: State): string[] {
  const things = inToolbox(state)
  const [first] = things
  if (!first) return []
  return [`toolbox: ${seeInToolbox(state, things)}`, `One not in it: ${notInToolbox(state, first)}.`]
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
