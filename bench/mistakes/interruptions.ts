import { inPrograms } from '../../tests/helpers/in-programs.ts'
import { addTo, type BreakOffReport, emptyReport } from '../../tests/simulation/broken-off/report.ts'
import { countText } from '../../tests/simulation/measure/share-text.ts'
import { figure, type Printer } from '../measure.ts'
import type { Part } from './part.ts'

/** In one program: enough that it takes longer than to start it. */
const EACH = 250

/** Whole jobs broken off again and again and taken up by somebody: what was lost, and whether the next thing was named rightly. */
export async function interruptions(print: Printer['print'], wanted: number): Promise<Part> {
  const from = performance.now()
  const programs = Math.ceil(wanted / EACH)
  const lists = Array.from({ length: programs }, (_, index) => [index + 1, Math.min(wanted, EACH)])
  const reports = await inPrograms<BreakOffReport>('tests/simulation/programs/break-off.ts', lists)
  const all = emptyReport()
  for (const report of reports) addTo(all, report)
  tell(print, all, (performance.now() - from) / 1000)
  const { acknowledged, lost, broken, wrongNext, vague } = all
  const misled = Math.min(all.interruptions, wrongNext.length + vague.length)
  return {
    goals: [
      {
        what: `entries said to be recorded that were there after ${countText(all.interruptions)} interruptions`,
        tries: acknowledged,
        hits: Math.max(0, acknowledged - lost.length - broken.length),
        least: 1,
        wanted: 10_000,
      },
      {
        what: 'interruptions after which the right next thing was named',
        tries: all.interruptions,
        hits: all.interruptions - misled,
        least: 1,
        wanted: 10_000,
      },
      {
        what: 'jobs that went on after every interruption',
        tries: all.jobs,
        hits: all.jobs - Math.min(all.jobs, all.stuck.length),
        least: 1,
        wanted: 100,
      },
    ],
    seeds: `interruptions 1 to ${programs}`,
    costs: [],
  }
}

function tell(print: Printer['print'], all: BreakOffReport, seconds: number): void {
  const { acknowledged, lost, broken, wrongNext, vague, stuck, untold } = all
  print(
    `${all.interruptions} interruptions in ${all.jobs} jobs, ${all.cleared} of them cleared: ${figure(seconds, 's')}`,
  )
  print(
    `  ${acknowledged} entries said to be recorded: ${lost.length} lost; records not whole: ${broken.length}; recorded and not said: ${untold}`,
  )
  print(`  wrong next: ${wrongNext.length}, vague: ${vague.length}, jobs that did not go on: ${stuck.length}`)
  print(
    `  taken up on the command line ${all.onTheLine}, on the screens ${all.onTheScreens}, by somebody else ${all.byOthers}`,
  )
  for (const [name, tallies] of Object.entries({ where: all.byPlace, how: all.byHow }))
    for (const [kind, { interruptions, wrong }] of Object.entries(tallies))
      print(`  ${name}: ${kind}: ${interruptions}, wrong ${wrong}`)
  print(`  keys to the first thing recorded: ${JSON.stringify(all.keys)}`)
  for (const fault of [...lost, ...broken, ...wrongNext, ...vague, ...stuck].slice(0, 20)) print(`  ${fault}`)
}
