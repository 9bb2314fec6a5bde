import { render } from 'ink'
import type { Errands } from '../session/errands.ts'
import type { JobShelf } from '../session/jobs.ts'
import { App } from './app.tsx'
import { Desk } from './desk/desk.ts'
import { openReader } from './reader/open-reader.tsx'
import { openTerminal } from './terminal/terminal.ts'
import { untilLeft } from './until-left.ts'

export interface ScreensOptions {
  shelf: JobShelf
  colour: boolean
  errands: Errands
  /** Sentences line by line: for the ear, and for a terminal that cannot be drawn on. */
  isRead: boolean
}

/** Shows the screens until the user leaves. Answers the exit code, with the terminal as it was before. */
export async function openScreens({ shelf, colour, errands, isRead }: ScreensOptions): Promise<number> {
  const { stdin, stdout } = process
  if (!stdin.isTTY || !stdout.isTTY) {
    process.stderr.write(
      'putback: the screens need a terminal. "putback help" shows what works without one.\n',
    )
    return 2
  }
  if (isRead) return openReader({ shelf, colour: false, errands })
  const desk = new Desk({ shelf, colour, errands, ring: (times) => terminal.ring(times) })
  const terminal = openTerminal({ onSignal: () => desk.leaveAtOnce() })
  const app = render(<App desk={desk} terminal={terminal} colour={colour} />, {
    stdout: terminal.output,
    debug: true,
    exitOnCtrlC: false,
    patchConsole: false,
  })
  return untilLeft({ desk, app, terminal })
}
