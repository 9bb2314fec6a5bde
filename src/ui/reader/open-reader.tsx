import { render } from 'ink'
import { Desk, type DeskOptions } from '../desk.ts'
import { crashText } from '../ways-out.ts'
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
  try {
    await app.waitUntilExit()
    terminal.restore()
    if (desk.lastWords.length > 0) process.stdout.write(`${desk.lastWords.join('\n')}\n`)
    // What was left in the middle must not hold the shell; it is done again by the same words.
    if (desk.progress() !== null) process.exit(desk.ended ?? 0)
    return desk.ended ?? 0
  } catch (error) {
    terminal.restore()
    process.stderr.write(`${crashText(error)}\n`)
    return 1
  } finally {
    desk.close()
    terminal.restore()
  }
}
