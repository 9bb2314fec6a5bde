import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { DifferenceFacts } from '../../plan/facts.ts'

/** One recount, and what did not agree in it with what explained that. */
export interface CountRecord {
  entry: EntryOf<'counted'>
  differences: { difference: DifferenceFacts; explained: EntryOf<'explained'> | null }[]
}

/** Every recount, in its order. */
export function countsOf(state: State, entries: readonly Entry[]): CountRecord[] {
  const explanations = entries.filter((entry) => entry.type === 'explained')
  return entries
    .filter((entry) => entry.type === 'counted')
    .map((entry) => ({
      entry,
      differences: entry.lines.flatMap(({ difference: id }) => {
        const difference = id && state.differences.get(id)
        if (!difference) return []
        return [{ difference, explained: explanations.find((each) => each.difference === id) ?? null }]
      }),
    }))
}
