import { madeUpLots, writtenJob } from '../jobs.ts'
import { alternate, figure, type Printer, ratio } from '../measure.ts'
import { BARE_INK, PROGRAM } from '../program.ts'
import { inTerminal } from '../terminal.ts'

/** What the screens hold in memory with 10,000 lots of pieces, against a bare Ink program. */
export async function run({ print }: Printer): Promise<void> {
  const few = writtenJob(madeUpLots(10))
  const many = writtenJob(madeUpLots(10_000))
  const [ink = 0, small = 0, large = 0] = await alternate(3, [
    () => held([BARE_INK], /ready/, []),
    () => held([PROGRAM, '--home', few.home], /Bench/, SCREENS),
    () => held([PROGRAM, '--home', many.home], /Bench/, SCREENS),
  ])
  print(`bare Ink                    ${figure(ink, 'MB')}`)
  print(`screens, 10 pieces          ${figure(small, 'MB')}, ${ratio(small, ink)}`)
  print(`screens, 10,000 pieces      ${figure(large, 'MB')}, ${ratio(large, ink)}`)
  few.remove()
  many.remove()
}

/** Every list was looked at before the memory is. */
const SCREENS = ['.1\r', '.2\r', 'bolts', '\x15', '.3\r', '.4\r', '.5\r', '.6\r', '.\r']

async function held(args: string[], sign: RegExp, keys: readonly string[]): Promise<number> {
  const program = inTerminal(args)
  try {
    await program.shown(sign)
    for (const text of keys) {
      await program.key(text)
      await program.quiet()
    }
    return program.memory()
  } finally {
    await program.stop()
  }
}
