import type { GateSwitch } from './gate-switch.ts'

/** What would hold up a job without a mistake: the places of gates that can be made to refuse what is in order. */
export const BLOCKS = [
  {
    gate: 'no step may start',
    file: 'plan/gates.ts',
    find: '[...held, ...look, ...before]',
    becomes: "[{ code: 'look-due', step: no }]",
  },
  {
    gate: 'no step may be closed',
    file: 'plan/gates.ts',
    within: "if (step.built === 'underway') reasons.push(...this.lookDue(no))",
    find: 'this.lookDue(no)',
    becomes: "[{ code: 'look-due', step: no }]",
  },
  {
    gate: 'no first start is cleared',
    file: 'plan/leftovers.ts',
    find: 'openSteps(gates)',
    becomes: "[{ code: 'step-open', step: 1 }]",
  },
  // One line that does no harm.
  {
    gate: 'no last look is taken',
    file: 'journal/decide/build.ts',
    find: 'step.looked',
    becomes: 'true',
  },
  {
    gate: 'no mark is confirmed',
    file: 'journal/decide/build.ts',
    within: 'if (mark.confirmed)',
    find: 'mark.confirmed',
    becomes: 'true',
  },
  {
    gate: 'nothing is put on',
    file: 'journal/decide/consumables.ts',
    within: 'if (applied !== null && !isDried',
    find: 'applied !== null',
    becomes: 'true',
  },
  // Nothing is refused, and the right bag is said to be a wrong one.
  {
    gate: 'no bag goes on now',
    file: 'session/scan.ts',
    find: 'notAccepted(session, pieces, step)',
    becomes: "{ kind: 'nothing-to-fit' }",
  },
] as const satisfies readonly GateSwitch[]
