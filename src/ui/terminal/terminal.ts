import { drawer } from './drawer.ts'
import { ringer } from './ringer.ts'
import { suspender } from './suspender.ts'
import { hook, watchWaysOut } from './ways-out.ts'

/**
 * The one place that knows the terminal: alternate screen, raw keys, pastes, drawing, and all of it undone again on
 * every way out but a kill -9. Ink lays out, in its debug mode, which hands over each frame whole; it neither draws nor
 * reads keys. Its own drawing loses a row after the window shrinks and when it draws only what changed, and its input
 * splits scans (measured with 6.8). A newer Ink with an alternate screen of its own may take some of this over.
 */
export interface Terminal {
  /** What Ink writes its frames to. */
  output: NodeJS.WriteStream
  /** Calls `listener` with each chunk of raw input, until the returned function is called. */
  subscribe(listener: (chunk: string) => void): () => void
  /** Where the cursor stands in the frames from now on; undefined hides it. */
  placeCursor(place: Cursor | undefined): void
  /** Rings its bell so many times, apart from each other; what rang before and is not over gives way. */
  ring(times: number): void
  /** Gives the terminal back as it was. Safe to call more than once. */
  restore(): void
}

/** Column and row, counted from 0. */
export interface Cursor {
  x: number
  y: number
}

export interface TerminalOptions {
  /** What is done first when a signal ends the program: the last chance to write something. */
  onSignal(): void
}

// Alternate screen, bracketed paste, no wrapping at the edge: a row too wide for a moment must not push the others.
const ENTER = '\x1b[?1049h\x1b[?2004h\x1b[?7l\x1b[2J'
const LEAVE = '\x1b[?2026l\x1b[0m\x1b[?7h\x1b[?2004l\x1b[?25h\x1b[?1049l'

/** Takes the terminal for the screens. The guard stands before anything is changed. */
export function openTerminal({ onSignal }: TerminalOptions): Terminal {
  const { stdin, stdout } = process
  const listeners = new Set<(chunk: string) => void>()
  const screen = drawer()
  const bell = ringer((text) => {
    if (isShown) stdout.write(text)
  })
  let isOpen = true
  let isShown = false
  let cursor: Cursor | undefined
  let frame = ''

  const draw = () => {
    if (isShown) stdout.write(screen.draw(frame, stdout.rows, cursor))
  }
  const enter = () => {
    isShown = true
    screen.forget()
    if (stdin.isTTY) stdin.setRawMode(true)
    stdout.write(ENTER)
  }
  const leave = () => {
    if (!isShown) return
    isShown = false
    if (stdin.isTTY) stdin.setRawMode(false)
    stdout.write(LEAVE)
  }
  const restore = () => {
    if (!isOpen) return
    isOpen = false
    for (const undo of undoing) undo()
    stdin.pause()
    leave()
  }
  const waysOut = watchWaysOut({ restore, onSignal })
  const pause = suspender({
    leave,
    enter() {
      enter()
      draw()
    },
  })
  const hear = (chunk: string) => {
    // Ctrl-Z is a byte like any other while the keys come raw.
    const isPause = chunk.endsWith(CTRL_Z) && pause.isPossible
    const text = isPause ? chunk.slice(0, -1) : chunk
    if (text !== '') for (const listener of listeners) listener(text)
    if (isPause) pause.now()
  }
  const undoing = [
    waysOut.stop,
    pause.stop,
    // Before Ink hears of it and hands over the next frame.
    hook(stdout, 'resize', () => {
      if (!isShown) return
      screen.forget()
      stdout.write('\x1b[2J')
    }),
    hook(stdin, 'data', hear),
    // The window was closed, and no signal came of it.
    hook(stdin, 'end', waysOut.windowGone),
  ]
  // Never undone: giving back a terminal that is gone is an error as well.
  stdin.on('error', () => {
    if (isOpen) waysOut.windowGone()
  })
  stdin.setEncoding('utf8')
  enter()
  stdin.resume()

  return {
    output: frameStream(stdout, (next) => {
      frame = next
      draw()
    }),
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    placeCursor(place) {
      cursor = place
    },
    ring: bell,
    restore,
  }
}

const CTRL_Z = '\x1a'

/** As much of a terminal's stream as Ink looks at, with each frame handed to `draw`. */
function frameStream(stdout: NodeJS.WriteStream, draw: (frame: string) => void): NodeJS.WriteStream {
  const stream = {
    get columns() {
      return stdout.columns
    },
    get rows() {
      return stdout.rows
    },
    write(frame: string) {
      draw(frame)
      return true
    },
    on(event: string, listener: () => void) {
      stdout.on(event, listener)
      return stream
    },
    off(event: string, listener: () => void) {
      stdout.off(event, listener)
      return stream
    },
  }
  return stream as unknown as NodeJS.WriteStream
}
