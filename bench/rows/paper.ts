import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { demoUntil } from '../../tests/support/paper/demo-until.ts'
import { rebuildFromLabels, rebuildFromPlan, type Share } from '../../tests/support/paper/rebuild.ts'
import type { Printer } from '../measure.ts'

/** What paper alone gives back of the demo job: labels of three sizes, and the printed plan, read without the record. */
export async function run({ print }: Printer): Promise<void> {
  for (const until of ['Waiting', 'Build-up']) {
    const home = mkdtempSync(join(tmpdir(), 'putback-bench-'))
    const session = demoUntil(home, until)
    print(`the blue twin, before '${until}'`)
    for (const label of LABELS) {
      const labels = await rebuildFromLabels(session, label)
      print(
        `  ${`labels of ${label.width} x ${label.height} mm`.padEnd(27)} ${told(labels)} of what lies in containers`,
      )
    }
    const { inContainers, everything } = await rebuildFromPlan(session)
    print(`  ${'printed plan'.padEnd(27)} ${told(inContainers)} of what lies in containers`)
    print(
      `  ${'printed plan'.padEnd(27)} ${told(everything)} of all that is off the machine or in it for the work`,
    )
    rmSync(home, { recursive: true, force: true })
  }
}

const LABELS = [
  { width: 99.1, height: 67.7 },
  { width: 64, height: 33.9 },
  { width: 50, height: 25 },
] as const

function told({ facts, rebuilt }: Share): string {
  return `${rebuilt} of ${facts} facts, ${((100 * rebuilt) / facts).toFixed(1)} %,`
}
