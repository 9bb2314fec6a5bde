import type { PlanFacts } from './facts.ts'

export type Phase = 'strip-down' | 'waiting' | 'build-up' | 'ready for first start' | 'running in' | 'closed'

/** The phase of a job, which follows from the record alone. */
export function phaseOf(facts: PlanFacts): Phase {
  if (facts.closed) return 'closed'
  if (facts.started) return 'running in'
  if (facts.cleared) return 'ready for first start'
  const steps = [...facts.steps.values()]
  if (steps.some((step) => step.way !== 'after-start' && step.built !== 'open')) return 'build-up'
  if (steps.some((step) => step.stripping) || !steps.some((step) => step.way === 'both')) return 'strip-down'
  return 'waiting'
}
