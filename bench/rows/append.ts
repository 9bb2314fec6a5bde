import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { LowSync } from 'lowdb'
import { JSONFileSync } from 'lowdb/node'
import type { Entry } from '../../src/journal/entry.ts'
import { madeUpEntries, openSession, writtenJob } from '../jobs.ts'
import { figure, median, type Printer, ratio, timeEach } from '../measure.ts'

/** One entry more: the journal at two lengths, lowdb's own file adapter, and SQLite with full synchronous commits. */
export async function run({ print }: Printer): Promise<void> {
  const short = madeUpEntries(1_000)
  const long = madeUpEntries(100_000)
  const ours = { short: appendOurs(short), long: appendOurs(long) }
  print(`journal, 1,000 entries     ${figure(ours.short)}`)
  print(`journal, 100,000 entries   ${figure(ours.long)}, ${ratio(ours.long, ours.short)} of the short one`)
  for (const [name, entries, times] of [
    ['1,000', short, 20],
    ['100,000', long, 3],
  ] as const) {
    const peer = appendLowdb(entries, times)
    const own = entries === short ? ours.short : ours.long
    print(
      `lowdb JSONFile, ${name.padEnd(8)}   ${figure(peer)} (no flush); the journal is ${ratio(own, peer)}`,
    )
  }
  const sqlite = appendSqlite(long)
  if (sqlite === null) print('better-sqlite3: not to be installed here, row left out')
  else print(`better-sqlite3, FULL       ${figure(sqlite)}; the journal is ${ratio(ours.long, sqlite)}`)
}

function appendOurs(entries: readonly Entry[]): number {
  const job = writtenJob(entries)
  const session = openSession(job.path)
  const taken = timeEach(300, (index) => {
    const outcome = session.send({ do: 'note', kind: 'note', text: `bench ${index}` })
    if (outcome.kind !== 'recorded') throw new Error(outcome.kind)
  })
  job.remove()
  return median(taken)
}

function appendLowdb(entries: readonly Entry[], times: number): number {
  const folder = mkdtempSync(join(tmpdir(), 'putback-bench-'))
  const db = new LowSync<Entry[]>(new JSONFileSync(join(folder, 'db.json')), [...entries])
  const last = entries.at(-1) as Entry
  const taken = timeEach(times, () => db.update((data) => data.push(last)))
  rmSync(folder, { recursive: true, force: true })
  return median(taken)
}

function appendSqlite(entries: readonly Entry[]): number | null {
  const Database = sqlitePeer()
  if (!Database) return null
  const folder = mkdtempSync(join(tmpdir(), 'putback-bench-'))
  const db = new Database(join(folder, 'db.sqlite'))
  db.pragma('journal_mode = WAL')
  db.pragma('synchronous = FULL')
  db.exec('create table entries (n integer primary key, body text not null)')
  const insert = db.prepare('insert into entries (body) values (?)')
  db.transaction(() => {
    for (const entry of entries) insert.run(JSON.stringify(entry))
  })()
  const body = JSON.stringify(entries.at(-1))
  const taken = timeEach(300, () => insert.run(body))
  db.close()
  rmSync(folder, { recursive: true, force: true })
  return median(taken)
}

/** What this row uses of better-sqlite3, which is not there when types are checked. */
type SqlitePeer = new (
  path: string,
) => {
  pragma(text: string): void
  exec(sql: string): void
  prepare(sql: string): { run(...values: unknown[]): void }
  transaction(work: () => void): () => void
  close(): void
}

/** The peer is no dependency: a native module, installed for the bench alone, beside the built rows. */
function sqlitePeer(): SqlitePeer | null {
  const folder = join(dirname(fileURLToPath(import.meta.url)), 'peers')
  const requirePeer = createRequire(join(folder, 'package.json'))
  const load = (): SqlitePeer => requirePeer('better-sqlite3')
  try {
    return load()
  } catch {
    console.error('  installing better-sqlite3 for the comparison (once, it may compile) ...')
    mkdirSync(folder, { recursive: true })
    writeFileSync(
      join(folder, 'package.json'),
      JSON.stringify({ private: true, allowScripts: { 'better-sqlite3': true } }),
    )
    const args = ['install', '--no-audit', '--no-fund', 'better-sqlite3@12']
    spawnSync('npm', args, { cwd: folder, stdio: 'ignore', shell: process.platform === 'win32' })
    try {
      return load()
    } catch {
      return null
    }
  }
}
