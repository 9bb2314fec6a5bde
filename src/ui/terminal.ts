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
const LEAVE = '\x1b[0m\x1b[?7h\x1b[?2004l\x1b[?25h\x1b[?1049l'

/** Between two rings, in milliseconds: terminals swallow those that follow at once. */
const RING_MS = 180

/** Exit codes by custom: 128 and the signal's number. */
const SIGNALS = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 } as const

/** Takes the terminal for the screens. The guard stands before anything is changed. */
export function openTerminal({ onSignal }: TerminalOptions): Terminal {
  const { stdin, stdout } = process
  const listeners = new Set<(chunk: string) => void>()
  const screen = drawer()
  let isOpen = true
  let cursor: Cursor | undefined
  let ringing: NodeJS.Timeout | undefined

  const hear = (chunk: string) => {
    for (const listener of listeners) listener(chunk)
  }
  const startOver = () => {
    screen.forget()
    stdout.write('\x1b[2J')
  }
  const restore = () => {
    if (!isOpen) return
    isOpen = false
    for (const undo of undoing.reverse()) undo()
    if (stdin.isTTY) stdin.setRawMode(false)
    stdin.pause()
    stdout.write(LEAVE)
  }
  const crash = (error: unknown) => {
    restore()
    process.stderr.write(`${crashText(error)}\n`)
    process.exit(1)
  }
  const end = (code: number) => () => {
    try {
      onSignal()
    } finally {
      restore()
      process.exit(code)
    }
  }
  const undoing = [
    hook(process, 'exit', restore),
    hook(process, 'uncaughtException', crash),
    ...Object.entries(SIGNALS).map(([signal, code]) => hook(process, signal, end(code))),
    // Before Ink hears of it and hands over the next frame.
    hook(stdout, 'resize', startOver),
    hook(stdin, 'data', hear),
    // The window was closed, and no signal came of it.
    hook(stdin, 'end', end(SIGNALS.SIGHUP)),
  ]
  stdin.setEncoding('utf8')
  if (stdin.isTTY) stdin.setRawMode(true)
  stdin.resume()
  stdout.write(ENTER)

  return {
    output: frameStream(stdout, (frame) => {
      if (isOpen) stdout.write(screen.draw(frame, stdout.rows, cursor))
    }),
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    placeCursor(place) {
      cursor = place
    },
    ring(times) {
      clearTimeout(ringing)
      const next = (left: number) => {
        if (!isOpen || left === 0) return
        stdout.write('\x07')
        ringing = setTimeout(next, RING_MS, left - 1).unref()
      }
      next(times)
    },
    restore,
  }
}

/** What a defect of ours looks like to the person at the terminal, and where it was. */
export function crashText(error: unknown): string {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error)
  return `putback stopped by a fault of its own. Everything shown as recorded is recorded.\n${text}`
}

/** Turns frames into the bytes that change the screen from the last one to the next. */
export function drawer() {
  let shown: string[] = []
  return {
    draw(frame: string, height: number, cursor: Cursor | undefined): string {
      const rows = frame.split('\n').slice(0, height)
      let bytes = ''
      for (let row = 0; row < Math.max(rows.length, shown.length); row += 1) {
        if (rows[row] === shown[row]) continue
        // Erased first: after a row of full width, erasing to its end would take its last character.
        bytes += `\x1b[${row + 1};1H\x1b[0m\x1b[2K${rows[row] ?? ''}`
      }
      shown = rows
      const place = cursor ? `\x1b[${cursor.y + 1};${cursor.x + 1}H\x1b[?25h` : ''
      return `\x1b[?25l${bytes}\x1b[0m${place}`
    },
    /** Nothing that was drawn is on the screen any more. */
    forget() {
      shown = []
    },
  }
}

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

type Listener = Parameters<NodeJS.EventEmitter['on']>[1]

/** Listens, and answers the way to stop it. */
function hook(emitter: NodeJS.EventEmitter, event: string, listener: Listener): () => void {
  emitter.on(event, listener)
  return () => {
    emitter.off(event, listener)
  }
}
