import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { readArguments } from '../../../src/cli/arguments.ts'
import { cli } from '../../../src/cli/cli.ts'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import type { Session } from '../../../src/session/session.ts'

export interface Said {
  code: number
  out: string
  err: string
}

/** A home of jobs in a folder of its own, and a command line to work in it. */
export interface Bench {
  home: string
  shelf: DiskShelf
  /** One command, its words as a shell hands them on. Each is a program run of its own: nothing stays open. */
  say(...words: string[]): Said
  /** One errand, to its end. */
  send(...words: string[]): Promise<Said & { bytes: Uint8Array }>
  /** The same with --json, and the one object that came. */
  ask(...words: string[]): { code: number; json: Record<string, unknown> }
  /** Lines that must be carried out, one run each. */
  told(...lines: string[]): void
  /** The chosen job as it stands on the disk. */
  session(): Session
  /** From now on it is eight o'clock on that day: `2030-01-04`. */
  itIs(day: string): void
}

/** One moment, so that two jobs told alike are alike. */
const NOW = new Date(Date.UTC(2030, 0, 1, 8))

export function bench(): Bench {
  // Labels go beside the jobs: both lie in a folder of this test's own.
  const own = mkdtempSync(join(tmpdir(), 'putback-home-'))
  onTestFinished(() => rmSync(own, { recursive: true, force: true }))
  const home = join(own, 'jobs')
  mkdirSync(home)
  const shelf = new DiskShelf(home)
  let now = NOW
  const begin = (words: readonly string[]) => {
    const read = readArguments(words)
    if ('wrong' in read) throw new Error(read.wrong)
    const said = { out: '', err: '', bytes: new Uint8Array() as Uint8Array }
    const code = cli(read, {
      out: (text) => {
        said.out += text
      },
      error: (text) => {
        said.err += text
      },
      bytes: (bytes) => {
        said.bytes = bytes
      },
      env: { PUTBACK_HOME: home },
      cwd: home,
      colour: false,
      now: () => now,
    })
    return { code, said }
  }
  const say = (...words: string[]): Said => {
    const { code, said } = begin(words)
    if (typeof code !== 'number') throw new Error('an errand takes its time: await it')
    return { code, out: said.out, err: said.err }
  }
  return {
    home,
    shelf,
    say,
    itIs(day) {
      now = new Date(`${day}T08:00:00Z`)
    },
    async send(...words) {
      const { code, said } = begin(words)
      return { code: await code, ...said }
    },
    ask(...words) {
      const { code, out, err } = say('--json', ...words)
      if (err !== '') throw new Error(`on standard error: ${err}`)
      if (!/^\{.*\}\n$/.test(out)) throw new Error(`not one object: ${out}`)
      return { code, json: JSON.parse(out) }
    },
    told(...lines) {
      for (const line of lines) {
        const { code, err } = say(line)
        if (code !== 0) throw new Error(`${line}: ${err}`)
      }
    },
    session() {
      const path = shelf.chosen()
      if (path === null) throw new Error('no job is chosen')
      return shelf.open(path)
    },
  }
}

/** A bench with one job on it. */
export function benchWithJob(...lines: string[]): Bench {
  const made = bench()
  made.say('new', 'job', 'blue twin', '--machine', 'parallel twin')
  made.told(...lines)
  return made
}
