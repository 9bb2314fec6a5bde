import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DiskShelf } from '../../src/cli/job-shelf.ts'
import { type Entry, parseEntry } from '../../src/journal/entry.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import type { ErrandOutcome } from '../../src/session/errands.ts'
import { nodeFileSystem } from '../../src/storage/files/file-system.ts'
import { openJournal } from '../../src/storage/journal/open-journal.ts'
import { answerRows } from '../../src/ui/answer.ts'
import { keyReader } from '../../src/ui/controls/line/key-reader.ts'
import { Desk } from '../../src/ui/desk/desk.ts'
import { frameRows } from '../../src/ui/screens/frame.tsx'
import { type Line, textOf } from '../../src/ui/text/line.ts'
import { chanceOf } from '../support/damage/chance.ts'
import { lineByChance } from './fuzz-lines.ts'
import { type FuzzReport, faultOf, newReport, note, steers } from './fuzz-report.ts'

const SIZE = { width: 80, height: 24 }
/** Where a screen is taken that the next lines are typed on, and what is pressed before some of them. */
const WAYS = [
  '',
  '',
  '',
  '',
  '.\r',
  '.1\r',
  '.2\r',
  '.3\r',
  '.4\r',
  '.5\r',
  '.6\r',
  '?\r',
  'step 2\r',
  'jobs\r',
  '1\r',
]

/** Lines as nobody would type them, typed on the screens over a job; each frame has to stand, and the laws to hold. */
export function fuzzTyped(entries: readonly Entry[], count: number, seed: number): FuzzReport {
  const chance = chanceOf(seed)
  const report = newReport()
  const home = mkdtempSync(join(tmpdir(), 'putback-hostile-'))
  try {
    const fs = { ...nodeFileSystem, fsyncSync: () => {}, fdatasyncSync: () => {} }
    const shelf = new DiskShelf(home, { now: SOME_TIME, fs })
    const path = shelf.create({ name: 'x', machine: 'x', units: 'metric' })
    openJournal(path, { parse: parseEntry, fs }).append((fresh) => entries.slice(fresh.length + 1))
    const desk = new Desk({ shelf, colour: false, errands: { run: async () => NOT_HERE }, now: SOME_TIME })
    desk.resize(SIZE)
    const reader = keyReader()
    const type = (text: string) => {
      for (const pressed of [...reader.push(text), ...reader.flush()]) desk.press(pressed)
    }
    for (let told = 0; told < count && desk.ended === null; told += 1) {
      const line = lineByChance(chance).replaceAll(/\bquit\b/gi, 'quiet')
      const asPaste = line.length > 300 || chance.whole(0, 4) === 0
      const typed = `${WAYS[chance.whole(0, WAYS.length - 1)]}${asPaste ? `\x1b[200~${line}\x1b[201~` : line}`
      const from = performance.now()
      const came = answerTo(
        desk,
        () => type(typed),
        () => type('\r'),
      )
      note(report, typed, came, performance.now() - from)
      type('\x1b[201~\x15')
    }
    const broken = desk.session ? auditLedger(desk.session.state.ledger) : []
    if (broken.length > 0) report.faults.push(`a law: ${JSON.stringify(broken)}`)
    desk.close()
    return report
  } finally {
    rmSync(home, { recursive: true, force: true })
  }
}

const SOME_TIME = () => new Date(Date.UTC(2030, 0, 15, 8))
const NOT_HERE: ErrandOutcome = {
  ok: false,
  exit: 'refused',
  code: 'no',
  told: { what: 'Not here.', lines: [], cure: 'Go on.' },
  entries: [],
}

/** Where one is, before and after Enter: every row of both frames, and of the answer. */
function answerTo(desk: Desk, typing: () => void, enter: () => void): string {
  try {
    typing()
    const before = frameOf(desk)
    enter()
    const answer = desk.answer()
    const rows = [...before, ...frameOf(desk), ...(answer ? answerRows(answer, 200) : [])].map(textOf)
    const steering = rows.find(steers)
    if (steering !== undefined) return `fault: shown ${JSON.stringify(steering)}`
    return `${desk.screen.at}, ${answer?.sign?.word ?? 'no sign'}`
  } catch (error) {
    return faultOf(error)
  }
}

function frameOf(desk: Desk): readonly Line[] {
  return frameRows(desk, SIZE).rows
}
