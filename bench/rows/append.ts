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
import { alternate, figure, median, type Printer, ratio, timeEach } from '../measure.ts'

/** How many appends are taken from each in its turn, and how often each has its turn. */
const TIMES = 20
const ROUNDS = 25
/** lowdb writes the whole file each time. */
const SLOW_TIMES = { short: 2, long: 1 }
const SLOW_ROUNDS = 5

/**
 * One entry more, with all that makes it safe: the lock, reading what others wrote, deciding, checksum, write and flush.
 * In turns with SQLite with full synchronous commits, so that a slow moment of the disk meets both; then beside lowdb's own
 * file adapter. Each at two lengths.
 */
export async function run({ print }: Printer): Promise<void> {
  const short = madeUpEntries(1_000)
  const long = madeUpEntries(100_000)
  const Database = sqlitePeer()
  const works = [
    oursOf(short),
    oursOf(long),
    ...(Database ? [sqliteOf(Database, short), sqliteOf(Database, long)] : []),
  ]
  const [ours1 = 0, ours100 = 0, sqlite1, sqlite100] = await alternate(
    ROUNDS,
    works.map(
      ({ append }) =>
        () =>
          median(timeEach(TIMES, append)),
    ),
  )
  print(`journal, 1,000 entries        ${figure(ours1)}`)
  print(`journal, 100,000 entries      ${figure(ours100)}, ${ratio(ours100, ours1)} of the short one`)
  if (sqlite1 === undefined || sqlite100 === undefined)
    print('better-sqlite3: not to be installed here, rows left out')
  else {
    print(`better-sqlite3 FULL, 1,000    ${figure(sqlite1)}; the journal is ${ratio(ours1, sqlite1)}`)
    print(`better-sqlite3 FULL, 100,000  ${figure(sqlite100)}; the journal is ${ratio(ours100, sqlite100)}`)
  }
  for (const { remove } of works) remove()

  const peers = [lowdbOf(short), lowdbOf(long)]
  const [lowdb1 = 0, lowdb100 = 0] = await alternate(
    SLOW_ROUNDS,
    peers.map(
      ({ append }, index) =>
        () =>
          median(timeEach(index === 0 ? SLOW_TIMES.short : SLOW_TIMES.long, append)),
    ),
  )
  print(`lowdb JSONFile, 1,000         ${figure(lowdb1)} (no flush); the journal is ${ratio(ours1, lowdb1)}`)
  print(
    `lowdb JSONFile, 100,000       ${figure(lowdb100)} (no flush); the journal is ${ratio(ours100, lowdb100)}`,
  )
  for (const { remove } of peers) remove()
}

/** Something that can be appended to, as often as wanted. */
interface Appended {
  append(): void
  remove(): void
}

function oursOf(entries: readonly Entry[]): Appended {
  const { path, remove } = writtenJob(entries)
  const session = openSession(path)
  return {
    append() {
      const outcome = session.send({ do: 'note', kind: 'note', text: 'behind the bracket' })
      if (outcome.kind !== 'recorded') throw new Error(outcome.kind)
    },
    remove,
  }
}

function lowdbOf(entries: readonly Entry[]): Appended {
  const folder = mkdtempSync(join(tmpdir(), 'putback-bench-'))
  const db = new LowSync<Entry[]>(new JSONFileSync(join(folder, 'db.json')), [...entries])
  const last = entries.at(-1) as Entry
  return {
    append: () => db.update((data) => data.push(last)),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}

function sqliteOf(Database: SqlitePeer, entries: readonly Entry[]): Appended {
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
  return {
    append: () => insert.run(body),
    remove() {
      db.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
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
