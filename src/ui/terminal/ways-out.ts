/** What is done on the ways out of the program that nobody asked for. */
export interface WaysOut {
  /** Gives the terminal back as it was. Safe to call more than once. */
  restore(): void
  /** The last chance to write something, before a signal ends the program. */
  onSignal(): void
}

/** Exit codes by custom: 128 and the signal's number. On Windows SIGHUP comes when the window is closed. */
const SIGNALS = { SIGINT: 130, SIGQUIT: 131, SIGTERM: 143, SIGHUP: 129 } as const

/** Watches every way out but a kill -9. Answers how to stop watching, and what to do where the window has gone. */
export function watchWaysOut({ restore, onSignal }: WaysOut): { stop(): void; windowGone(): void } {
  const crash = (error: unknown) => {
    restore()
    process.stderr.write(`${crashText(error)}\n`)
    process.exit(1)
  }
  const undoing = [
    hook(process, 'exit', restore),
    // Rejections that nobody handles come here too.
    hook(process, 'uncaughtException', crash),
    ...Object.entries(SIGNALS).map(([signal, code]) => hook(process, signal, () => end(code))),
    // A file that may not grow any further is told by the write itself. Without a listener of ours, that of Ink would end
    // the program with the words that were typed.
    hook(process, 'SIGXFSZ', () => undefined),
  ]
  function end(code: number): void {
    try {
      onSignal()
    } finally {
      restore()
      process.exit(code)
    }
  }
  return {
    stop() {
      for (const undo of undoing.splice(0)) undo()
    },
    windowGone: () => end(SIGNALS.SIGHUP),
  }
}

/** What a defect of ours looks like to the person at the terminal, and where it was. */
export function crashText(error: unknown): string {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error)
  return `putback stopped by a fault of its own. Everything shown as recorded is recorded.\n${text}`
}

type Listener = Parameters<NodeJS.EventEmitter['on']>[1]

/** Listens, and answers the way to stop it. */
export function hook(emitter: NodeJS.EventEmitter, event: string, listener: Listener): () => void {
  emitter.on(event, listener)
  return () => {
    emitter.off(event, listener)
  }
}
