import type { Desk } from './desk/desk.ts'
import { crashText } from './terminal/ways-out.ts'

interface Shown {
  desk: Pick<Desk, 'ended' | 'lastWords' | 'progress' | 'close'>
  /** Ends when the desk has ended; fails by a fault of the program's own. */
  app: { waitUntilExit(): Promise<unknown> }
  terminal: { restore(): void }
}

/** Waits until the user leaves. Answers the exit code, with the terminal as it was before. */
export async function untilLeft({ desk, app, terminal }: Shown): Promise<number> {
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
