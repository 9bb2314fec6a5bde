import type { State } from '../../journal/state.ts'
import type { CheckFacts, CheckId, CheckKind, VerdictKind } from '../../plan/judging/judging-facts.ts'
import { joined } from '../grammar.ts'

/** A check by what is asked: `k3, look for score and cracks`. */
export function checkName(state: State, id: CheckId): string {
  const check = state.checks.get(id)
  return check ? `${id}, ${checkWords(check)}` : id
}

/** What a check asks for: `look for score and cracks`, `measure run-out`, `clean`. */
export function checkWords({ kind, what }: Pick<CheckFacts, 'kind' | 'what'>): string {
  return what.length === 0 ? KINDS[kind].alone : `${KINDS[kind].with} ${joined(what)}`
}

/** What a verdict says of a piece: `to be machined`. */
export const VERDICTS: Record<VerdictKind, string> = {
  'fit-again': 'good to go back',
  machine: 'to be machined',
  replace: 'to be replaced',
  clean: 'to be cleaned and looked at again',
}

const KINDS: Record<CheckKind, { alone: string; with: string }> = {
  look: { alone: 'look it over', with: 'look for' },
  measure: { alone: 'measure it', with: 'measure' },
  clean: { alone: 'clean it', with: 'clean' },
  compare: { alone: 'compare it', with: 'compare' },
}
