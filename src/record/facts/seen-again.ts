import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { StepContents } from '../../plan/contents.ts'
import { secondLines } from '../../plan/waiting/second-looks.ts'
import type { SecondLine } from '../../plan/waiting/waiting-facts.ts'

/** What of a critical step was seen a second time, and what was not. */
export interface SeenAgain {
  looks: { entry: EntryOf<'seen-again'>; stands: boolean }[]
  /** Empty where the step is not critical. */
  notSeen: SecondLine[]
}

/** The second looks at a step, those before it was reopened as well. */
export function seenAgainIn(
  state: State,
  entries: readonly Entry[],
  no: number,
  contents: StepContents,
): SeenAgain {
  const standing = state.secondLooks.get(no) ?? []
  const isCritical = state.steps.get(no)?.critical !== undefined
  return {
    looks: entries
      .filter((entry) => entry.type === 'seen-again')
      .filter(({ step }) => step === no)
      .map((entry) => ({
        entry,
        stands: standing.some(({ line, at }) => line === entry.line && at === entry.at),
      })),
    notSeen: isCritical
      ? secondLines(state, contents).filter((line) => !standing.some((look) => look.line === line))
      : [],
  }
}
