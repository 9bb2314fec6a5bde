import { inPrograms } from '../../tests/helpers/in-programs.ts'
import type { KeyCount } from '../../tests/simulation/keys/count-keys.ts'
import type { MistakeKeys } from '../../tests/simulation/keys/count-mistakes.ts'
import { allKeys } from '../../tests/simulation/keys/kinds.ts'
import { countText } from '../../tests/simulation/measure/share-text.ts'
import { figure, median, type Printer } from '../measure.ts'
import type { Part } from './part.ts'

/** In the same job, said again with mistakes. */
const MISTAKES_EACH = 20

type Counted = KeyCount & { withMistakes: MistakeKeys }

/** Whole jobs at the screens: what is pressed and scanned, what of it the tool alone asks for, and what a refusal costs. */
export async function keysOfJobs(print: Printer['print'], jobs: number): Promise<Part> {
  const from = performance.now()
  const lists = Array.from({ length: jobs }, (_, index) => [index + 1, MISTAKES_EACH])
  const counts = await inPrograms<Counted>('tests/simulation/programs/keys.ts', lists)
  const middle = (count: (one: Counted) => number) => median(counts.map(count))
  const keys = middle((one) => allKeys(one.keys))
  const named = middle((one) => one.keys.names / allKeys(one.keys))
  const asked = middle((one) => one.tool.confirmations / allKeys(one.keys))
  const overrides = middle((one) => one.tool.overrides)
  const scans = middle(({ scans }) => scans)
  const perPiece = middle((one) => allKeys(one.keys) / one.pieces)
  const bags = counts.flatMap(({ perBag }) => perBag.map(({ bare }) => bare))
  const whole = counts.filter(({ isWhole }) => isWhole).length
  print(
    `${jobs} clean jobs at the screens, seeds 1 to ${jobs}: ${figure((performance.now() - from) / 1000, 's')}`,
  )
  print(`  the same record as by lines, and cleared: ${whole}`)
  const costs = [
    `At the screens a clean job takes ${countText(Math.round(keys))} keys and ${countText(Math.round(scans))} scans (medians of ${jobs}), ${figure(perPiece, 'keys')} a piece; ${percentOf(named)} of the keys write names and notes, ${percentOf(asked)} are asked for by the tool alone, ${overrides} override a gate.`,
    `Of them ${PHASES.map((phase) => `${countText(Math.round(middle((one) => allKeys(one.phases[phase]))))} in ${phase}`).join(', ')}.`,
    `A bag on strip-down takes ${median(bags)} keys besides its names, ${withoutMost(bags)} at most in 95 % (of ${countText(bags.length)} bags).`,
  ]
  const refusals = counts.flatMap(({ withMistakes }) => withMistakes.refusals)
  if (refusals.length > 0)
    costs.push(
      `A refusal at the screens costs ${median(refusals.map(({ refused }) => refused))} keys for what was refused and ${median(refusals.map(({ cure }) => cure))} to put it right (medians of ${countText(refusals.length)}).`,
    )
  for (const each of costs) print(`  ${each}`)
  for (const { seed, shape, otherwise } of counts.filter(({ isWhole }) => !isWhole).slice(0, 10))
    print(`  NOT THE SAME seed ${seed}, ${shape}: ${otherwise.slice(0, 3).join('; ')}`)
  for (const { seed, shape, otherwise } of counts.map(({ withMistakes }) => withMistakes))
    if (otherwise.length > 0) print(`  OTHERWISE seed ${seed}, ${shape}: ${otherwise.slice(0, 3).join('; ')}`)
  return {
    goals: [
      {
        what: 'jobs at the screens with the same record as by lines',
        tries: jobs,
        hits: whole,
        least: 1,
        wanted: 24,
      },
    ],
    seeds: `keys 1 to ${jobs}`,
    costs,
  }
}

const PHASES = ['strip-down', 'waiting', 'build-up', 'last gate'] as const

/** What 95 % of them do not go over. */
function withoutMost(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.ceil(values.length * 0.95) - 1] ?? 0
}

function percentOf(share: number): string {
  return `${Math.round(share * 100)} %`
}
