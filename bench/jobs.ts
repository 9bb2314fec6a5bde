import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Command } from '../src/journal/command.ts'
import { decide } from '../src/journal/decide/decide.ts'
import { ENTRY_VERSION, type Entry, parseEntry } from '../src/journal/entry.ts'
import { foldOn } from '../src/journal/fold.ts'
import { emptyState } from '../src/journal/state.ts'
import { Session } from '../src/session/session.ts'
import { createJob } from '../src/storage/job-folders.ts'
import { JOURNAL_NAME } from '../src/storage/journal/journal-file.ts'
import { writeLine } from '../src/storage/journal/line.ts'
import { openJournal } from '../src/storage/journal/open-journal.ts'

/** The entries of a made-up strip-down with so many lots of pieces. */
export function madeUpLots(lots: number): Entry[] {
  return madeUpEntries(lots + Math.ceil(lots / (LOTS - 1)) + 1, lots * 2)
}

/** Lots, the step's beginning among them, of a step. */
const LOTS = 20

/** The entries of a made-up strip-down with so many entries: a step for each 20 lots of four bolts, a bag for each. */
export function madeUpEntries(length: number, mostLots = 9000): Entry[] {
  let state = emptyState()
  const entries: Entry[] = []
  const send = (command: Command) => {
    const decision = decide(state, command)
    if (!decision.ok) throw new Error(JSON.stringify(decision.refusal))
    const header = {
      v: ENTRY_VERSION,
      n: entries.length + 1,
      at: '2026-01-01T00:00:00.000Z',
      id: `bench-${entries.length}`,
    }
    const entry = { ...header, ...decision.body } as Entry
    entries.push(entry)
    state = foldOn(state, entries, [entry])
  }
  send({ do: 'open-job', no: 1, name: 'Bench', machine: '', units: 'metric' })
  for (let lot = 0; entries.length < length; lot += 1) {
    // Pieces are many in a large job; beyond so many the record grows by notes, as a long job's does.
    if (lot > mostLots)
      send({ do: 'note', kind: 'note', text: `note ${lot} on how the harness runs behind the bracket` })
    else if (lot % LOTS === 0) send({ do: 'begin-strip', title: `Cover ${lot / LOTS} off` })
    else {
      const item = {
        kind: 'fastener' as const,
        name: `bracket bolts ${lot}`,
        found: 4,
        should: 4,
        size: 'M6x25 hex 10',
      }
      send({
        do: 'take-off',
        item,
        into: lot % LOTS === 1 ? { kind: 'new', container: 'bag' } : { kind: 'hand' },
      })
    }
  }
  return entries
}

/** Writes a job with these entries into a home of its own, and gives its folder and the way to remove it. */
export function writtenJob(entries: readonly Entry[]): { home: string; path: string; remove: () => void } {
  const home = mkdtempSync(join(tmpdir(), 'putback-bench-'))
  const { path } = createJob(home, 'Bench')
  let crc = '00000000'
  const lines = entries.map((entry) => {
    const line = writeLine(crc, entry)
    crc = line.crc
    return line.text
  })
  writeFileSync(join(path, JOURNAL_NAME), lines.join(''))
  return { home, path, remove: () => rmSync(home, { recursive: true, force: true }) }
}

/** Opens a job as the program does. */
export function openSession(path: string): Session {
  return new Session(openJournal(path, { parse: parseEntry }))
}
