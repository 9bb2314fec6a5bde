import { readFileSync } from 'node:fs'
import { readArguments } from './arguments.ts'
import { Desk } from './desk.ts'
import type { DiskShelf } from './job-shelf.ts'
import { runFile } from './run-file.ts'

/** Where `demo` leaves off, so that there is something to do. */
const MIDDLE = 'The rest of the build-up'

/** Makes a job from the demo's file of commands, and chooses it. Answers its path. */
export function addDemoJob(shelf: DiskShelf, { whole }: { whole: boolean }): string {
  const { options } = readArguments([]) as Extract<ReturnType<typeof readArguments>, { options: unknown }>
  const desk = new Desk(shelf, { options, cwd: shelf.home, colour: false })
  const { failure } = runFile(desk, demoText(), { name: 'the demo', until: whole ? undefined : MIDDLE })
  // What the disk refused is told like any other trouble with it; everything else is a fault of the demo.
  if (failure)
    throw failure.cause ?? new Error(`the demo stopped at line ${failure.line}: ${failure.told.what}`)
  const open = desk.current()
  if (!open.ok) throw new Error('the demo made no job')
  return open.path
}

// The file lies beside src/ and dist/ alike; a bundle keeps its chunks one folder down.
function demoText(): string {
  const up = import.meta.url.includes('/src/cli/') ? '../../' : '../'
  return readFileSync(new URL(`${up}jobs/demo/blue-twin.txt`, import.meta.url), 'utf8')
}
