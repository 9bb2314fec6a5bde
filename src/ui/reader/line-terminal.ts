import { ringer } from '../terminal/ringer.ts'
import { hook, type WaysOut, watchWaysOut } from '../terminal/ways-out.ts'

/** A terminal that is only written on, line by line: no escape sequence is ever sent to it. */
export interface LineTerminal {
  /** What Ink writes its sentences to. */
  output: NodeJS.WriteStream
  /** Begins to listen: each line as it was entered, and once the end of them. */
  listen(listener: { line(text: string): void; end(): void }): void
  ring(times: number): void
  width(): number
  restore(): void
}

const PROMPT = '> '

/**
 * Takes the terminal as it is. It edits and echoes the line itself, as it does for any command, so that a screen
 * reader says the keys as it is used to; it hands over whole lines.
 */
export function openLineTerminal({ onSignal }: Pick<WaysOut, 'onSignal'>): LineTerminal {
  const { stdin, stdout } = process
  let isOpen = true
  let isPrompted = false
  const write = (text: string) => {
    if (isOpen && text !== '') stdout.write(text)
  }
  const restore = () => {
    if (!isOpen) return
    isOpen = false
    for (const undo of undoing) undo()
    stdin.pause()
    if (isPrompted) stdout.write('\n')
  }
  const undoing = [watchWaysOut({ restore, onSignal }).stop]
  return {
    output: sentenceStream((text) => {
      // What comes by itself begins on a row of its own.
      write(`${isPrompted ? '\n' : ''}${text}${PROMPT}`)
      isPrompted = true
    }),
    listen({ line, end }) {
      let rest = ''
      stdin.setEncoding('utf8')
      undoing.push(
        hook(stdin, 'data', (chunk: string) => {
          const lines = (rest + chunk).split(/\r\n|[\r\n]/)
          rest = lines.pop() ?? ''
          for (const text of lines) {
            isPrompted = false
            line(text)
          }
        }),
        // What was typed without an Enter is not taken.
        hook(stdin, 'end', end),
      )
      stdin.resume()
    },
    ring: ringer(write),
    width: () => (stdout.columns || 80) - 1,
    restore,
  }
}

/** As much of a stream as Ink needs. It is no terminal to Ink, which would show a cursor at the end. */
function sentenceStream(write: (text: string) => void): NodeJS.WriteStream {
  const stream = {
    columns: 0,
    write(text: string) {
      if (text !== '') write(text)
      return true
    },
    on: () => stream,
    off: () => stream,
  }
  return stream as unknown as NodeJS.WriteStream
}
