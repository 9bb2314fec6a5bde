import { spawnSync } from 'node:child_process'
import { labelCode } from '../../src/label/code.ts'
import { madeUpEntries, writtenJob } from '../jobs.ts'
import { alternate, figure, type Printer, ratio } from '../measure.ts'
import { BARE_INK, PROGRAM } from '../program.ts'
import { inTerminal } from '../terminal.ts'

/** Whole commands against an empty Node process, and the first frame against a bare Ink program. */
export async function run({ print }: Printer): Promise<void> {
  const job = writtenJob(madeUpEntries(500 / 4 + 8))
  const scan = ['--job', job.path, 'scan', labelCode(1, 1)]
  const [bare = 0, help = 0, scanned = 0] = await alternate(15, [
    () => runNode(['-e', '0']),
    () => runNode([PROGRAM, '--help']),
    () => runNode([PROGRAM, ...scan]),
  ])
  print(`node -e 0                   ${figure(bare)}`)
  print(`--help                      ${figure(help)}, ${ratio(help, bare)} (goal 1.2)`)
  print(`scan in a job of 500        ${figure(scanned)}, ${ratio(scanned, bare)} (goal 2)`)
  const [ink = 0, ours = 0] = await alternate(9, [
    () => firstFrame([BARE_INK], /ready/),
    () => firstFrame([PROGRAM, '--home', job.home], /Bench/),
  ])
  print(`bare Ink, first frame       ${figure(ink)}`)
  print(
    `screens, first frame        ${figure(ours)}, ${ratio(ours, ink)} (goal 1.5), ${ratio(ours, bare)} of node -e 0`,
  )
  job.remove()
}

function runNode(args: string[]): number {
  const from = performance.now()
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(`${args.join(' ')}: exit ${status}\n${stderr}`)
  return performance.now() - from
}

async function firstFrame(args: string[], sign: RegExp): Promise<number> {
  const program = inTerminal(args)
  try {
    return await program.shown(sign)
  } finally {
    await program.stop()
  }
}
