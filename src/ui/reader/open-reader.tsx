import { render } from 'ink'
import { Desk, type DeskOptions } from '../desk/desk.ts'
import { untilLeft } from '../until-left.ts'
import { openLineTerminal } from './line-terminal.ts'
import { ReadAloud } from './read-aloud.tsx'
import { Reader } from './reader.ts'

/** The screens read line by line, until the user leaves. Answers the exit code. */
export async function openReader(options: Omit<DeskOptions, 'ring'>): Promise<number> {
  const desk = new Desk({ ...options, ring: (times) => terminal.ring(times) })
  const terminal = openLineTerminal({ onSignal: () => desk.leaveAtOnce() })
  const reader = new Reader(desk)
  const app = render(<ReadAloud desk={desk} reader={reader} width={terminal.width} />, {
    stdout: terminal.output,
    isScreenReaderEnabled: true,
    exitOnCtrlC: false,
    patchConsole: false,
  })
  terminal.listen({ line: (text) => reader.take(text), end: () => reader.end() })
  return untilLeft({ desk, app, terminal })
}
