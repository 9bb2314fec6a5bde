import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DiskShelf } from '../../src/cli/job-shelf.ts'
import { parseEntry } from '../../src/journal/entry.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import { firstUnlawful } from '../../src/session/health.ts'
import { examine } from '../../src/storage/damage/examine.ts'
import { JOURNAL_NAME } from '../../src/storage/journal/journal-file.ts'
import { readLines, writeLine } from '../../src/storage/journal/line.ts'
import { faultyFileSystem } from '../storage/support/faulty-file-system.ts'
import { commandByChance } from '../storage/support/work-by-chance.ts'
import { type Chance, chanceOf } from '../support/damage/chance.ts'
import { type FuzzReport, faultOf, newReport, note } from './fuzz-report.ts'
import { mutated, mutatedJson } from './mutated.ts'

/** How many entries the journals have before something happens to them. */
const ENTRIES = 40

/**
 * So many journals with damage by chance, each listed, opened, read, examined and written to as the program does it: what
 * stands before the damage is read as it was, the damage is found, and the laws hold in whatever was read.
 */
export function fuzzJournals(count: number, seed: number): FuzzReport {
  const chance = chanceOf(seed)
  const report = newReport()
  const home = mkdtempSync(join(tmpdir(), 'putback-hostile-'))
  try {
    // Without waiting for the disk to be flushed.
    const shelf = new DiskShelf(home, { lockLimit: 0, fs: faultyFileSystem() })
    const job = jobByChance(shelf, chance)
    const whole = readFileSync(join(job, JOURNAL_NAME))
    const other = readFileSync(join(jobByChance(shelf, chance), JOURNAL_NAME))
    for (let index = 0; index < count; index += 1) {
      const { kind, bytes, isChained } = damagedByChance(whole, other, chance)
      clear(job)
      writeFileSync(join(job, JOURNAL_NAME), bytes)
      const from = performance.now()
      const came = outcomeOf(() => look({ shelf, job, whole, bytes, isChained }))
      note(report, `${kind}, journal ${index} of seed ${seed}`, came, performance.now() - from)
    }
  } finally {
    rmSync(home, { recursive: true, force: true })
  }
  return report
}

interface Look {
  shelf: DiskShelf
  job: string
  whole: Buffer
  bytes: Buffer
  /** Whether its checksums are right all the same, so that only shapes and laws can tell. */
  isChained: boolean
}

function look({ shelf, job, whole, bytes, isChained }: Look): string {
  const summary = shelf.list().find(({ path }) => path === job)
  if (!summary) return 'fault: it is not in the list'

  const session = shelf.open(job)
  const { problem } = session.store
  const same = linesBefore(whole, bytes)
  const before = readLines(whole, parseEntry).entries.slice(0, same)
  if (JSON.stringify(session.entries().slice(0, same)) !== JSON.stringify(before))
    return 'fault: an entry before the damage is not what it was'
  const broken = auditLedger(session.state.ledger)
  if (broken.length > 0) return `fault: a law: ${JSON.stringify(broken)}`
  const isSilent = problem === null && session.unlawful === null && session.store.setAside.length === 0
  if (isSilent && !isChained && !isCutBetweenLines(whole, bytes)) return 'fault: it was not found'

  const examined = examine(bytes, { parse: parseEntry, firstUnlawful })
  if (examined.entries.length < session.entries().length - (session.unlawful ? session.entries().length : 0))
    return 'fault: the examination finds fewer entries than are read'
  const mended = readLines(examined.mended, parseEntry)
  if (examined.verdict === 'certain' && (mended.problem !== null || firstUnlawful(mended.entries) !== null))
    return 'fault: what was mended for certain is not right'
  if (JSON.stringify(mended.entries.slice(0, same)) !== JSON.stringify(before) && !isChained)
    return 'fault: mended, an entry before the damage is not what it was'
  return `${written(session, job, bytes)}, ${examined.verdict}`
}

/** One entry more, where there may be one; else the file stays as it is. */
function written(session: ReturnType<DiskShelf['open']>, job: string, bytes: Buffer): string {
  const good = session.store.problem === null && session.unlawful === null && session.entries().length > 0
  const outcome = session.send({ do: 'note', kind: 'note', text: 'and on' })
  if (outcome.kind === 'recorded' && !good) return 'fault: recorded behind damage'
  const now = readFileSync(join(job, JOURNAL_NAME))
  const aside = readdirSync(job)
    .filter((name) => name.startsWith('journal.torn-'))
    .map((name) => readFileSync(join(job, name)))
  // What was there is there still: in its place, or the end of it aside and perhaps an entry in that place.
  const stays = bytes.length - Buffer.concat(aside).length
  if (!Buffer.concat([now.subarray(0, stays), ...aside]).equals(bytes))
    return 'fault: what was there is not kept'
  if (outcome.kind !== 'recorded' && now.length !== stays) return 'fault: not recorded, and written'
  return outcome.kind === 'recorded' ? 'goes on' : outcome.kind
}

interface Damaged {
  kind: string
  bytes: Buffer
  isChained: boolean
}

function damagedByChance(whole: Buffer, other: Buffer, chance: Chance): Damaged {
  const kind = KINDS[chance.whole(0, KINDS.length - 1)] as (typeof KINDS)[number]
  const bytes = Buffer.from(kind.make(whole, other, chance))
  return bytes.equals(whole)
    ? damagedByChance(whole, other, chance)
    : { kind: kind.name, bytes, isChained: kind.isChained ?? false }
}

interface Kind {
  name: string
  make: (whole: Buffer, other: Buffer, chance: Chance) => Uint8Array
  isChained?: boolean
}

const anyBytes: Kind = { name: 'bytes', make: mutated }
const KINDS: readonly Kind[] = [
  anyBytes,
  anyBytes,
  anyBytes,
  {
    name: 'one bit',
    make: (whole, _, chance) => {
      const bytes = Buffer.from(whole)
      const at = chance.whole(0, bytes.length - 1)
      bytes[at] = (bytes[at] ?? 0) ^ (1 << chance.whole(0, 7))
      return bytes
    },
  },
  { name: 'cut', make: (whole, _, chance) => whole.subarray(0, chance.whole(0, whole.length - 1)) },
  lines('lines lost', (all, at, end) => all.toSpliced(at, end - at)),
  lines('lines doubled', (all, at, end) => all.toSpliced(end, 0, ...all.slice(at, end))),
  lines('lines swapped', (all, at, end) => [
    ...all.slice(0, at),
    ...all.slice(end, 2 * end - at),
    ...all.slice(at, end),
    ...all.slice(2 * end - at),
  ]),
  lines('lines of another job', (all, at, end, others) =>
    all.toSpliced(at, end - at, ...others.slice(at, end)),
  ),
  {
    name: 'zeros',
    make: (whole, _, chance) => {
      const bytes = Buffer.from(whole)
      const at = chance.whole(0, bytes.length - 1)
      return bytes.fill(0, at, Math.min(bytes.length, at + 2 ** chance.whole(0, 13)))
    },
  },
  {
    name: 'zeros at the end',
    make: (whole, _, chance) => Buffer.concat([whole, Buffer.alloc(2 ** chance.whole(0, 13))]),
  },
  { name: 'an editor', make: (whole) => Buffer.from(`\ufeff${whole.toString().replaceAll('\n', '\r\n')}`) },
  {
    name: 'a huge line',
    make: (whole, _, chance) =>
      chance.whole(0, 9) === 0
        ? Buffer.concat([
            whole,
            Buffer.alloc(1_500_000, 'x'),
            Buffer.from(chance.whole(0, 1) === 0 ? '\n' : ''),
          ])
        : mutated(whole, whole, chance),
  },
  { name: 'an entry that cannot be', make: chainedAnew, isChained: true },
  { name: 'an entry that cannot be', make: chainedAnew, isChained: true },
  { name: 'an entry that cannot be', make: chainedAnew, isChained: true },
]

/** Something done to some lines, 1 to 4 from any place on. */
function lines(
  name: string,
  change: (all: Buffer[], at: number, end: number, others: Buffer[]) => Buffer[],
): Kind {
  return {
    name,
    make: (whole, other, chance) => {
      const all = linesOf(whole)
      const at = chance.whole(0, all.length - 2)
      const end = Math.min(all.length, at + chance.whole(1, 4))
      return Buffer.concat(change(all, at, end, linesOf(other)))
    },
  }
}

/** Entries with a part exchanged, or an entry of another job among them, and all checksums right. */
function chainedAnew(whole: Buffer, other: Buffer, chance: Chance): Buffer {
  const entries = jsonOf(whole)
  const at = chance.whole(0, entries.length - 1)
  const others = jsonOf(other)
  switch (chance.whole(0, 3)) {
    case 0:
      entries.splice(at, 1)
      break
    case 1:
      entries.splice(at, chance.whole(0, 1), others[chance.whole(0, others.length - 1)])
      break
    default:
      entries[at] = jsonOr(mutatedJson(entries[at], chance), entries[at])
  }
  let crc = '00000000'
  const text = entries.map((entry, index) => {
    const numbered = typeof entry === 'object' && entry !== null ? { ...entry, n: index + 1 } : entry
    const line = writeLine(crc, numbered ?? null)
    crc = line.crc
    return line.text
  })
  return Buffer.from(text.join(''))
}

/** Lists within lists can be read deeper than they can be written: those are left to `json.test.ts`. */
function jsonOr(text: string, otherwise: unknown): unknown {
  try {
    const value: unknown = JSON.parse(text)
    JSON.stringify(Array.from({ length: 100 }).reduce((inner) => [inner], value))
    return value
  } catch {
    return otherwise
  }
}

function jsonOf(bytes: Buffer): unknown[] {
  return linesOf(bytes).map((line) => JSON.parse(line.toString().slice(9)))
}

function linesOf(bytes: Buffer): Buffer[] {
  return bytes
    .toString('latin1')
    .split(/(?<=\n)/)
    .map((line) => Buffer.from(line, 'latin1'))
}

/** How many whole lines two journals have in common from their beginnings. */
function linesBefore(one: Buffer, other: Buffer): number {
  let at = 0
  let feeds = 0
  while (at < one.length && at < other.length && one[at] === other[at]) {
    if (one[at] === 0x0a) feeds += 1
    at += 1
  }
  return feeds
}

/** Nothing can tell it from a journal to which nothing more was ever written. */
function isCutBetweenLines(whole: Buffer, bytes: Buffer): boolean {
  return whole.subarray(0, bytes.length).equals(bytes) && (bytes.length === 0 || bytes.at(-1) === 0x0a)
}

/** A job of its own, told by chance. */
function jobByChance(shelf: DiskShelf, chance: Chance): string {
  const path = shelf.create({ name: 'blue twin', machine: 'the blue twin', units: 'metric' })
  const session = shelf.open(path)
  while (session.entries().length < ENTRIES) {
    const command = commandByChance(session.state, chance)
    if (command.do !== 'add-pictures') session.send(command)
  }
  return path
}

/** Away with what was set aside. */
function clear(job: string): void {
  for (const name of readdirSync(job)) rmSync(join(job, name))
}

function outcomeOf(work: () => string): string {
  try {
    return work()
  } catch (error) {
    return faultOf(error)
  }
}
