import type { GateSwitch } from './gate-switch.ts'

/** The gates that can be switched off, from the hand to the last gate. */
export const SWITCHES = [
  {
    gate: 'home, to turn a bolt',
    file: 'journal/decide/tightening.ts',
    find: 'notHome(state, account)',
    becomes: '[]',
  },
  {
    gate: 'home, to close a step',
    file: 'plan/gates.ts',
    within: 'const reasons: Reason[] = this.notHome(contents)',
    find: 'this.notHome(contents)',
    becomes: '[]',
  },
  {
    gate: 'home, at the last look',
    file: 'plan/gates.ts',
    within: '...this.aidsIn(contents), ...this.notHome(contents)',
    find: 'this.notHome(contents)',
    becomes: '[]',
  },
  {
    gate: 'home, at the last gate',
    file: 'plan/leftovers.ts',
    within: 'const { lies, extra, short } = owing(facts, account)',
    find: 'owing(facts, account)',
    becomes: '{ lies: [], extra: [], short: 0 }',
  },
] as const satisfies readonly GateSwitch[]

export type Gate = (typeof SWITCHES)[number]['gate']
