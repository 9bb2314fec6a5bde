import type { Act } from '../job/act.ts'
import { buildActs } from '../job/build-acts.ts'
import { act, stripActs } from '../job/strip-acts.ts'
import { waitActs } from '../job/wait-acts.ts'
import type { Machine } from '../machines/machine.ts'

/** A whole job without a mistake, as it is done at the screens. */
interface ScreenActs {
  strip: Act[]
  wait: Act[]
  /** What is done from taking up a step to closing it, each by itself; which comes first the screens say. */
  build: Act[][]
  end: Act[]
}

export function screenActs(machine: Machine): ScreenActs {
  const back = buildActs(machine).flatMap(backAtScreens)
  const last = back.findLastIndex(isEnd) + 1
  return {
    strip: stripActs(machine).filter(isNeeded).map(offAtScreens),
    wait: waitActs(machine),
    build: stepsOf(back.slice(0, last)),
    end: back.slice(last),
  }
}

function backAtScreens(each: Act): Act[] {
  const { doing, step, thing, at } = each
  // A line may close what was never taken up; the screens take it up first.
  if (doing === 'extra') return [act('take', step, () => `take ${step}`), each]
  // Look-alikes of one size go on in one go, as their row says at which positions.
  if (doing === 'fit' && thing?.kind === 'lot' && thing.at !== null && thing.at.length > 1)
    return at === thing.at[0]
      ? [act('fit', step, () => `fit ${thing.count} ${thing.name} ${thing.size}`, thing)]
      : []
  return [each]
}

/** What is in a tray stands on it; nobody types the name of a set twice. */
function offAtScreens(each: Act): Act {
  const { doing, step, thing } = each
  return doing === 'open' && thing?.kind === 'set'
    ? act('open', step, () => `tray ${thing.positions.length} slots`, thing)
    : each
}

/** The next step that is begun ends the one before. */
function isNeeded({ doing }: Act, at: number, acts: readonly Act[]): boolean {
  return doing !== 'end' || at === acts.length - 1
}

function stepsOf(acts: readonly Act[]): Act[][] {
  const steps: Act[][] = [[]]
  for (const [at, each] of acts.entries()) {
    steps.at(-1)?.push(each)
    if (isEnd(each) && acts[at + 1] && acts[at + 1]?.doing !== 'see again') steps.push([])
  }
  return steps
}

function isEnd({ doing }: Act): boolean {
  return doing === 'done' || doing === 'extra' || doing === 'see again'
}
