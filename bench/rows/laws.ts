import { runSequences } from '../../tests/model/run-sequences.ts'
import { figure, type Printer } from '../measure.ts'

/** Random command sequences against the naive model of the bench: the laws, counted. */
export async function run({ print }: Printer): Promise<void> {
  const from = performance.now()
  const seed = Date.now() % 2 ** 31
  const { sequences, commands, written, refused, cleared } = runSequences(10_000, seed)
  print(`${sequences} sequences, ${commands} commands, every law held after each`)
  print(
    `${written.size} kinds of entry written, ${refused.size} kinds of refusal met, ${cleared} first starts cleared`,
  )
  print(`seed ${seed}, ${figure((performance.now() - from) / 1000, 's')}`)
}
