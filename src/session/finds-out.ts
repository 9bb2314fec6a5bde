import type { StepFacts } from '../plan/facts.ts'

/** Whether a step finds something out: closing it says what. */
export function findsOut({ kind }: Pick<StepFacts, 'kind'>): boolean {
  return kind === 'check' || kind === 'inspect' || kind === 'measure' || kind === 'turn' || kind === 'align'
}
