/**
 * The one place that knows the terminal: alternate screen, bracketed paste, raw keys, and all of it undone again on
 * every way out but a kill -9. Ink draws; it reads no keys, for it would split scans and lose held keys (measured
 * with Ink 6.8). A newer Ink brings its own alternate screen; then only `open` and `restore` change.
 */
export interface Terminal {
  /** Calls `listener` with each chunk of raw input, until the returned function is called. */
  subscribe(listener: (chunk: string) => void): () => void
  /** Gives the terminal back as it was. Safe to call more than once. */
  restore(): void
}

export interface TerminalOptions {
  /** What is done first when a signal ends the program: the last chance to write something. */
  onSignal(): void
}

const ENTER = '\x1b[?1049h\x1b[?2004h\x1b[H\x1b[2J'
const LEAVE = '\x1b[?2004l\x1b[?25h\x1b[?1049l'

/** Exit codes by custom: 128 and the signal's number. */
const SIGNALS = { SIGINT: 130, SIGTERM: 143, SIGHUP: 129 } as const

/** Takes the terminal for the screens. The guard stands before anything is changed. */
export function openTerminal({ onSignal }: TerminalOptions): Terminal {
  const { stdin, stdout } = process
  const listeners = new Set<(chunk: string) => void>()
  let isOpen = true

  const hear = (chunk: string) => {
    for (const listener of listeners) listener(chunk)
  }
  const restore = () => {
    if (!isOpen) return
    isOpen = false
    stdin.off('data', hear)
    if (stdin.isTTY) stdin.setRawMode(false)
    stdin.pause()
    // Straight to the terminal: a process that is ending waits for no stream.
    stdout.write(LEAVE)
    for (const [signal, handler] of handlers) process.off(signal, handler)
    process.off('exit', restore)
    process.off('uncaughtException', crash)
  }
  const crash = (error: unknown) => {
    restore()
    process.stderr.write(`${crashText(error)}\n`)
    process.exit(1)
  }
  const handlers = Object.entries(SIGNALS).map(([signal, code]) => {
    const handler = () => {
      try {
        onSignal()
      } finally {
        restore()
        process.exit(code)
      }
    }
    return [signal as NodeJS.Signals, handler] as const
  })

  process.on('exit', restore)
  process.on('uncaughtException', crash)
  for (const [signal, handler] of handlers) process.on(signal, handler)
  stdin.setEncoding('utf8')
  if (stdin.isTTY) stdin.setRawMode(true)
  stdin.on('data', hear)
  stdin.resume()
  stdout.write(ENTER)

  return {
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    restore,
  }
}

/** What a defect of ours looks like to the person at the terminal: one line, and where it was. */
export function crashText(error: unknown): string {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error)
  return `putback stopped by a fault of its own. Everything shown as recorded is recorded.\n${text}`
}
