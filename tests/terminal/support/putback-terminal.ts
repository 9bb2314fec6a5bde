import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type IPty, spawn } from '@lydell/node-pty'
import xterm from '@xterm/headless'
import { onTestFinished } from 'vitest'

/** The built program. */
export const PROGRAM = join(import.meta.dirname, '../../../dist/putback.js')

let isBuilt = false

/** Brings dist/ up to the sources, where it is not. */
export function buildOnce(): void {
  if (isBuilt) return
  const script =
    "import { prepareWorkspace } from './scripts/prepare-workspace.mjs'; await prepareWorkspace()"
  const root = join(import.meta.dirname, '../../..')
  // The build looks at the name it was started by; under -e that is the first argument.
  const args = ['--input-type=module', '-e', script, 'package.json']
  const { status, stderr } = spawnSync(process.execPath, args, {
    cwd: root,
    encoding: 'utf8',
  })
  if (status !== 0) throw new Error(`the build failed: ${stderr}`)
  isBuilt = true
}

/** A folder for jobs that is gone after the test. */
export function homeForTest(): string {
  const home = mkdtempSync(join(tmpdir(), 'putback-terminal-'))
  onTestFinished(() => rmSync(home, { recursive: true, force: true, maxRetries: 5 }))
  return home
}

export interface Options {
  columns?: number
  rows?: number
  env?: Record<string, string>
}

/**
 * putback in a real pseudo-terminal, which a shell started, as a person's shell would: after it the shell says how
 * the terminal was left. Every wait is for something on the screen.
 */
export class PutbackTerminal {
  readonly #pty: IPty
  readonly #screen: xterm.Terminal
  #raw = ''
  #tail = ''
  #onDrawn = () => {}

  constructor(home: string, { columns = 80, rows = 24, env = {} }: Options = {}) {
    const { CI: _, NO_COLOR: __, FORCE_COLOR: ___, ...inherited } = process.env
    // The shell stays: what is written just before the end of a pty may be lost.
    const command = `"${process.execPath}" "${PROGRAM}" --home "${home}"; echo "left with $?"; stty -a; echo "end of test"; read -r _`
    this.#pty = spawn('/bin/sh', ['-c', command], {
      cols: columns,
      rows,
      cwd: home,
      env: { ...inherited, TERM: 'xterm-256color', ...env },
    })
    this.#screen = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true })
    this.#pty.onData((data) => {
      this.#raw += data
      this.#screen.write(data, () => {
        this.#tail = (this.#tail + data.replaceAll('\x07', '')).slice(-SHOWS_CURSOR.length)
        this.#onDrawn()
      })
    })
    // The shell leads a group of its own: putback goes with it.
    onTestFinished(() => killGroup(this.#pty.pid))
  }

  /** Everything that came, with its escape sequences. */
  get raw(): string {
    return this.#raw
  }

  /** Whether a frame stands there whole: each ends with the cursor in its place. A bell may ring after it. */
  get isDrawn(): boolean {
    return this.#tail === SHOWS_CURSOR
  }

  get isAlternate(): boolean {
    return this.#screen.buffer.active.type === 'alternate'
  }

  write(text: string): void {
    this.#pty.write(text)
  }

  /**
   * Enter on the empty line. The blank before it says that it is meant: alone, and so soon after another, it would be
   * passed over as a key held down.
   */
  enter(): void {
    this.write(' \r')
  }

  resize(columns: number, rows: number): void {
    this.#screen.resize(columns, rows)
    this.#pty.resize(columns, rows)
  }

  /** The rows of the screen without what is blank at their ends. */
  rows(): string[] {
    const { active } = this.#screen.buffer
    return Array.from({ length: this.#screen.rows }, (_, row) =>
      (active.getLine(active.viewportY + row)?.translateToString(true) ?? '').trimEnd(),
    )
  }

  text(): string {
    return this.rows().join('\n')
  }

  /** The row and the column in which the cursor stands. */
  cursor(): { row: number; column: number } {
    const { active } = this.#screen.buffer
    return { row: active.cursorY, column: active.cursorX }
  }

  /** Waits until the screen shows something; fails with what it shows instead. */
  async sees(wanted: string | RegExp, patience = PATIENCE): Promise<string> {
    const isThere = () =>
      typeof wanted === 'string' ? this.text().includes(wanted) : wanted.test(this.text())
    await this.until(isThere, String(wanted), patience)
    return this.text()
  }

  /** Waits until something is so, looking whenever the screen has changed and a few times more. */
  async until(isSo: () => boolean, what: string, patience = PATIENCE): Promise<void> {
    const end = Date.now() + patience
    while (!isSo()) {
      if (Date.now() > end) throw new Error(`never saw ${what}; the screen is:\n${this.text()}`)
      await this.#drawn()
    }
  }

  /** Until something was drawn, or for the moment that what is no drawing may take. */
  #drawn(): Promise<void> {
    return new Promise((resolve) => {
      const done = () => {
        clearTimeout(timer)
        this.#onDrawn = () => {}
        resolve()
      }
      const timer = setTimeout(done, 15)
      this.#onDrawn = done
    })
  }

  /** The process id of putback itself: the child of the shell. */
  pid(): number {
    const { stdout } = spawnSync('ps', ['-o', 'pid=', '--ppid', String(this.#pty.pid)], { encoding: 'utf8' })
    const pid = Number(stdout.trim().split('\n')[0])
    if (!Number.isInteger(pid) || pid <= 0) throw new Error(`no child of ${this.#pty.pid}: ${stdout}`)
    return pid
  }

  signal(name: 'SIGTERM' | 'SIGHUP' | 'SIGINT' | 'SIGQUIT' | 'SIGKILL'): void {
    process.kill(this.pid(), name)
  }
}

const SHOWS_CURSOR = '\x1b[?25h'

/** How long anything may take, in milliseconds: far longer than it does. */
const PATIENCE = 20_000

/** putback on a first job, the blue twin, on the screen of the strip-down. */
export async function onFirstJob(options: Options = {}, home = homeForTest()) {
  const terminal = new PutbackTerminal(home, options)
  await terminal.sees('WHAT IS IT TO BE?')
  terminal.write('\rblue twin\r\r')
  await terminal.sees('[.1 OFF]')
  return { terminal, home }
}

function killGroup(pid: number): void {
  try {
    process.kill(-pid, 'SIGKILL')
  } catch {
    // It has ended by itself.
  }
}
