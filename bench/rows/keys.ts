import { DiskShelf } from '../../src/cli/job-shelf.ts'
import { Desk } from '../../src/ui/desk/desk.ts'
import { frameRows } from '../../src/ui/screens/frame.tsx'
import { madeUpLots, writtenJob } from '../jobs.ts'
import { figure, median, type Printer, ratio } from '../measure.ts'
import { PROGRAM } from '../program.ts'
import { inTerminal } from '../terminal.ts'

const SIZE = { width: 80, height: 24 }

/** Screens with what is typed on them: the letters of a filter on the list, elsewhere those of a line. */
const SCREENS = [
  { name: 'OFF, a line', go: '.1', typed: '4 M6x25 hex 10 brac' },
  { name: 'LIES, a filter', go: '.2', typed: 'bracket bolts m6x25' },
  { name: 'BACK, a line', go: '.3', typed: 'override start 1 be' },
  { name: 'a step, a line', go: 'step 1', typed: 'override start 1 be' },
  { name: 'LEFT, a line', go: '.4', typed: 'override start 1 be' },
  { name: 'LOG, a filter', go: '.5', typed: 'bracket bolts 2 m6x' },
] as const

/** From a key to the next frame, in a job of 10 lots of pieces and in one of 10,000: on a terminal, and without it. */
export async function run({ print }: Printer): Promise<void> {
  const few = deskWith(10)
  const many = deskWith(10_000)
  await onTerminal(print, few.home, many.home)
  print('the rows of the frame alone, without drawing them')
  for (const { name, go, typed } of SCREENS) {
    // In turn, so that a slow moment of the machine meets both.
    const [small, large] = measured([few.desk, many.desk], go, typed)
    const once = `first key ${figure(large?.first ?? 0)}, to the screen ${figure(large?.go ?? 0)}`
    print(`${row(name, small?.key ?? 0, large?.key ?? 0)}   ${once}`)
  }
  few.remove()
  many.remove()
}

/** The whole way: the key through the terminal, and the first that is drawn after it. */
async function onTerminal(print: Printer['print'], ...homes: [string, string]): Promise<void> {
  const programs = homes.map((home) => inTerminal([PROGRAM, '--home', home]))
  for (const program of programs) await program.shown(/Bench/)
  for (const { name, go, typed } of SCREENS) {
    for (const program of programs) {
      await program.key(`${go}\r`)
      await program.quiet()
      // The first letter makes the texts that are looked through.
      await program.key(typed.slice(0, 1))
      await program.quiet()
    }
    const taken = programs.map((): number[] => [])
    for (const letter of typed.slice(1)) {
      for (const [index, program] of programs.entries()) {
        taken[index]?.push(await program.key(letter))
        await program.quiet()
      }
    }
    const [small = 0, large = 0] = taken.map(median)
    print(row(name, small, large))
    for (const program of programs) await program.key('\x15')
  }
  for (const program of programs) await program.stop()
}

function row(name: string, small: number, large: number): string {
  return `${name.padEnd(15)} 10: ${figure(small).padEnd(9)} 10,000: ${figure(large).padEnd(9)} ${ratio(large, small)}`
}

interface Measured {
  /** Milliseconds of a key in the middle, of the first one, and of coming to the screen. */
  key: number
  first: number
  go: number
}

function measured(desks: readonly Desk[], go: string, typed: string): Measured[] {
  const came = desks.map((desk) => timed(desk, `${go}\r`))
  const first: number[] = []
  const keys = desks.map((): number[] => [])
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const letter of typed) {
      for (const [index, desk] of desks.entries()) keys[index]?.push(timed(desk, letter))
    }
    if (round === 0) for (const each of keys) first.push(each[0] ?? 0)
    for (const desk of desks) desk.press({ key: 'clear' })
  }
  return keys.map((each, index) => ({ key: median(each), first: first[index] ?? 0, go: came[index] ?? 0 }))
}

const ROUNDS = 15

function timed(desk: Desk, text: string): number {
  const from = performance.now()
  desk.press({ text })
  frameRows(desk, SIZE)
  return performance.now() - from
}

function deskWith(lots: number): { desk: Desk; home: string; remove: () => void } {
  const { home, remove } = writtenJob(madeUpLots(lots))
  const desk = new Desk({ shelf: new DiskShelf(home, {}), colour: false, errands: { run: noErrand } })
  desk.resize(SIZE)
  frameRows(desk, SIZE)
  return {
    desk,
    home,
    remove() {
      desk.close()
      remove()
    },
  }
}

function noErrand(): Promise<never> {
  throw new Error('no errand is measured')
}
