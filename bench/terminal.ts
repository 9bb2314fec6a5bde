import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pty from '@lydell/node-pty'

/** A program in a pseudo-terminal of 80 by 24. */
export interface InTerminal {
  /** Milliseconds since the program was started, once its output answers to the sign. */
  shown(sign: RegExp): Promise<number>
  /** Milliseconds from a key to the first that is drawn after it. */
  key(text: string): Promise<number>
  /** Nothing more is drawn. */
  quiet(): Promise<void>
  /** Megabytes that it holds. */
  memory(): number
  stop(): Promise<void>
}

const LIMIT_MS = 30_000
/** So long without output nothing more is coming. */
const QUIET_MS = 120

/** Starts a program of Node in a terminal, with a home of its own. */
export function inTerminal(args: readonly string[]): InTerminal {
  const home = mkdtempSync(join(tmpdir(), 'putback-bench-'))
  const { CI: _ci, ...env } = process.env
  const from = performance.now()
  const child = pty.spawn(process.execPath, [...args], {
    cols: 80,
    rows: 24,
    env: { ...env, TERM: 'xterm-256color', PUTBACK_HOME: home },
  })
  let seen = ''
  let isOver = false
  const listeners = new Set<() => void>()
  child.onData((data) => {
    seen += data
    for (const listener of listeners) listener()
  })
  const exited = new Promise<void>((resolve) => {
    child.onExit(() => {
      isOver = true
      rmSync(home, { recursive: true, force: true })
      for (const listener of listeners) listener()
      resolve()
    })
  })

  /** Waits for output until something is so. */
  function until(isSo: () => boolean): Promise<number> {
    return new Promise((resolve, reject) => {
      const end = (why?: string) => {
        clearTimeout(limit)
        listeners.delete(look)
        if (why === undefined) resolve(performance.now())
        else reject(new Error(`${why}: ${seen.slice(-400)}`))
      }
      const look = () => {
        if (isSo()) end()
        else if (isOver) end('ended')
      }
      const limit = setTimeout(() => end('nothing came'), LIMIT_MS)
      listeners.add(look)
      look()
    })
  }

  return {
    shown: async (sign) => (await until(() => sign.test(seen))) - from,
    async key(text) {
      const before = seen.length
      const pressed = performance.now()
      child.write(text)
      return (await until(() => seen.length > before)) - pressed
    },
    async quiet() {
      for (let length = -1; length !== seen.length; ) {
        length = seen.length
        await new Promise((resolve) => setTimeout(resolve, QUIET_MS))
      }
    },
    memory() {
      const { stdout } = spawnSync('ps', ['-o', 'rss=', '-p', String(child.pid)], { encoding: 'utf8' })
      return Number(stdout) / 1024
    },
    async stop() {
      child.kill('SIGKILL')
      await exited
    },
  }
}
