import type { State } from '../journal/state.ts'
import { isOff } from '../plan/eased.ts'
import type { LooseningFacts } from '../plan/facts.ts'
import { type NextTurn, nextTurn } from '../plan/tightening.ts'

export interface OpenLoosening {
  loosening: LooseningFacts
  next: NextTurn
}

/** The loosening that the step coming off is at, and what is eased next; null where all is free, or off. */
export function openLoosening(state: State): OpenLoosening | null {
  return halfEased(state).find(({ loosening }) => !isOff(state, loosening)) ?? null
}

/** Fasteners that came off before they were eased in all their steps, by their name. */
export function offBeforeEased(state: State, names: readonly string[]): OpenLoosening[] {
  return halfEased(state).filter(({ loosening }) => names.some((name) => isSame(name, loosening.name)))
}

function halfEased(state: State): OpenLoosening[] {
  if (state.strip === null || state.build !== null) return []
  return [...state.loosenings.values()].flatMap((loosening) => {
    const next = loosening.step === state.strip ? nextTurn(loosening) : null
    return next ? [{ loosening, next }] : []
  })
}

function isSame(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase()
}
