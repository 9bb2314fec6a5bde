import { mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DiskShelf } from '../../../src/cli/job-shelf.ts'
import { perform } from '../../../src/cli/perform.ts'
import type { Card } from '../../../src/session/views.ts'
import { type ChildProgram, startProgram } from '../../helpers/child-program.ts'
import { type Chance, chanceOf } from '../../support/damage/chance.ts'
import { Book } from './book.ts'
import { deedsOf } from './deeds.ts'
import { lineDesk, OPTIONS } from './line-desk.ts'
import { madeUp } from './made-up.ts'
import { namedByCard } from './named.ts'

/** What came of killing programs in the middle of a whole job. Each fault names its seed. */
export interface RealKills {
  kills: number
  acknowledged: number
  /** Recorded, and killed before it could be said. */
  untold: number
  lost: string[]
  wrongNext: string[]
}

const DAYS = 60 * 24 * 60 * 60 * 1000

/** Kills one program after the other (SIGKILL), each in a job of its own; after sixty days somebody asks for the card. */
export async function killForReal(
  program: ChildProgram,
  { seed, kills, atOnce }: { seed: number; kills: number; atOnce: number },
): Promise<RealKills> {
  const seen: RealKills = { kills: 0, acknowledged: 0, untold: 0, lost: [], wrongNext: [] }
  const waiting = Array.from({ length: kills }, (_, nth) => seed + nth)
  const lane = async () => {
    for (let own = waiting.shift(); own !== undefined; own = waiting.shift())
      await killOne(program, own, seen)
  }
  await Promise.all(Array.from({ length: atOnce }, lane))
  return seen
}

async function killOne(program: ChildProgram, seed: number, seen: RealKills): Promise<void> {
  const home = mkdtempSync(join(tmpdir(), 'putback-broken-off-'))
  try {
    const chance = chanceOf(seed)
    const machine = madeUp(seed)
    const deeds = deedsOf(machine)
    const running = startProgram(program, home, seed)
    await running.said(chance.whole(1, deeds.length - LAST_OF_ALL))
    await later(chance)
    running.kill()
    const { signal, stderr } = await running.ended
    if (signal !== 'SIGKILL') throw new Error(`seed ${seed} ended by itself: ${stderr}`)
    seen.kills += 1
    lookAt(home, running.lines(), { seed, seen, book: new Book(machine, deeds) })
  } finally {
    rmSync(home, { recursive: true, force: true })
  }
}

/** So many deeds are left at least, for the program is not to end by itself. */
const LAST_OF_ALL = 30

function later(chance: Chance): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, chance.between(0, 3)))
}

/** A lock without a name counts as abandoned when it is ten seconds old. Nobody waits for that here. */
function ageUnnamedLocks(folder: string): void {
  for (const name of readdirSync(folder).filter((each) => each.startsWith('journal.lock'))) {
    const path = join(folder, name)
    if (!readFileSync(path, 'utf8').endsWith('}\n')) utimesSync(path, 1, 1)
  }
}

function lookAt(
  home: string,
  said: readonly string[],
  { seed, seen, book }: { seed: number; seen: RealKills; book: Book },
): void {
  const shelf = new DiskShelf(home, { by: 'Carla', now: () => new Date(Date.now() + DAYS) })
  const folder = shelf.chosen() ?? ''
  ageUnnamedLocks(folder)
  const session = shelf.open(folder)
  const there = new Map(session.entries().map((entry) => [entry.id, entry]))
  const told = new Set<string>()
  for (const line of said) {
    const [at = '', ...ids] = line.split(' ')
    for (const id of ids) told.add(id)
    const entries = ids.flatMap((id) => there.get(id) ?? [])
    if (entries.length < ids.length) seen.lost.push(`seed ${seed}: ${line}`)
    book.did(Number(at), entries)
  }
  seen.acknowledged += told.size
  // The first entry is the job itself, which nobody said.
  const untold = session.entries().filter(({ id, n }) => n > 1 && !told.has(id))
  seen.untold += untold.length
  const next = book.next()
  if (untold.length > 0 && next !== null) book.did(next, untold)
  book.stop(true)
  const result = perform(lineDesk(shelf, 'Carla'), ['card'], OPTIONS)
  if ('errand' in result || !result.ok) {
    seen.wrongNext.push(`seed ${seed}: no card`)
    return
  }
  const named = namedByCard(result.answer as Card)
  const wrong = book.wrongWith(named)
  if (wrong !== null) seen.wrongNext.push(`seed ${seed}: ${wrong}`)
}
