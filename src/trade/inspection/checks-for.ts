import type { Check, CheckKind, Checks } from './check.ts'
import { castingChecks } from './checks/casting-checks.ts'
import { coolingChecks } from './checks/cooling-checks.ts'
import { crankChecks } from './checks/crank-checks.ts'
import { electricalChecks } from './checks/electrical-checks.ts'
import { fastenerChecks } from './checks/fastener-checks.ts'
import { gearboxChecks } from './checks/gearbox-checks.ts'
import { oilChecks } from './checks/oil-checks.ts'
import { timingChecks } from './checks/timing-checks.ts'
import { valveChecks } from './checks/valve-checks.ts'
import type { PartKind } from './name-ends.ts'
import { partKinds } from './part-kind.ts'

const checks = {
  ...castingChecks,
  ...valveChecks,
  ...crankChecks,
  ...timingChecks,
  ...coolingChecks,
  ...oilChecks,
  ...electricalChecks,
  ...gearboxChecks,
  ...fastenerChecks,
  // Common practice: these are new each time.
  gasket: {},
  seal: {},
  'o-ring': {},
  washer: {},
  filter: {},
} as const satisfies Record<PartKind, Checks>

// Clean first: a smear of grease hides damage. General inspection rules of several service manuals.
const order: readonly CheckKind[] = ['clean', 'look', 'measure', 'compare']

/**
 * What a part is usually checked for before it goes back, by the words of its name; a proposal, and empty for a name that
 * is not known and for what is made to be used once. Limits are never among it: the machine's service manual has them.
 */
export function checksFor(name: string): Check[] {
  const kinds = partKinds(name)
  return order.flatMap((kind) => {
    const what = [...new Set(kinds.flatMap((part) => (checks[part] as Checks)[kind] ?? []))]
    return what.length === 0 ? [] : [{ kind, what }]
  })
}
