import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { nodeArchiveFileSystem } from '../../../src/storage/backup/archive-file-system.ts'
import { BadArchive } from '../../../src/storage/backup/bad-archive.ts'
import { openArchive } from '../../../src/storage/backup/read-archive.ts'
import { restoreArchive } from '../../../src/storage/backup/restore-archive.ts'
import { writeArchive } from '../../../src/storage/backup/write-archive.ts'
import { type Chance, chanceOf } from '../../support/damage/chance.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { contents, keepJob } from './support/kept-job.ts'

const MUTATIONS = 400

/** Nobody pulls a plug here, and waiting for the disk would take longer than all the rest. */
const HURRIED = { ...nodeArchiveFileSystem, fsyncSync: () => undefined }

test.each([1, 2, 3, 4, 5])(
  `of ${MUTATIONS} archives that were changed, each is refused or is the job that was put in (seed %i)`,
  async (seed) => {
    const folder = temporaryFolder()
    const pictures = {
      '20300101-081500.jpg': Buffer.from('bytes of a picture'),
      '20300101-081600.png': Buffer.from('more'),
    }
    const job = keepJob(folder, { pictures })
    const whole = contents(job)
    const made = await writeArchive(job, { folder }, { now: new Date(2030, 0, 2), program: '0.1.0' })
    const bytes = readFileSync(made.path)
    const [path, home] = [join(folder, 'mutated.zip'), join(folder, 'home')]
    mkdirSync(home)
    const chance = chanceOf(seed)
    let refused = 0
    for (let number = 1; number <= MUTATIONS; number += 1) {
      const { name, mutated } = mutate(bytes, chance)
      writeFileSync(path, mutated)
      const which = `mutation ${number}: ${name}`
      try {
        const archive = await openArchive(path, HURRIED)
        try {
          await restoreArchive(archive, home, { fs: HURRIED })
        } finally {
          archive.close()
        }
        expect(contents(join(home, 'blue-twin')), which).toEqual(whole)
        rmSync(join(home, 'blue-twin'), { recursive: true })
      } catch (error) {
        if (!(error instanceof BadArchive)) throw new Error(which, { cause: error })
        refused += 1
      }
      expect(readdirSync(home), which).toEqual([])
    }
    // Times of files, versions of makers and rights may be anything: they come out as this program makes them.
    expect(refused).toBeGreaterThan(MUTATIONS * 0.6)
    expect(contents(job)).toEqual(whole)
  },
)

/** One change to the bytes: in most archives the headers are most of it, so all kinds of them are hit. */
function mutate(bytes: Buffer, chance: Chance): { name: string; mutated: Buffer } {
  const mutated = Buffer.from(bytes)
  const at = chance.whole(0, bytes.length - 1)
  const to = Math.min(bytes.length, at + chance.whole(1, 40))
  const other = chance.whole(0, bytes.length - 1)
  const kinds: [string, () => Buffer][] = [
    ['a bit', () => withByte(mutated, at, (mutated[at] ?? 0) ^ (1 << chance.whole(0, 7)))],
    ['a byte', () => withByte(mutated, at, chance.whole(0, 255))],
    ['a field at its most', () => Buffer.from(mutated.fill(0xff, at, Math.min(at + 4, bytes.length)))],
    ['a field of nothing', () => Buffer.from(mutated.fill(0, at, Math.min(at + 4, bytes.length)))],
    ['left out', () => Buffer.concat([bytes.subarray(0, at), bytes.subarray(to)])],
    ['doubled', () => Buffer.concat([bytes.subarray(0, to), bytes.subarray(at)])],
    [
      'moved',
      () => Buffer.from(mutated.fill(bytes.subarray(at, to), other, Math.min(other + to - at, bytes.length))),
    ],
    ['turned round', () => Buffer.concat([bytes.subarray(at), bytes.subarray(0, at)])],
  ]
  const [kind, make] = kinds[chance.whole(0, kinds.length - 1)] as [string, () => Buffer]
  return { name: `${kind} at ${at}, ${to}, ${other}`, mutated: make() }
}

function withByte(bytes: Buffer, at: number, value: number): Buffer {
  bytes[at] = value
  return bytes
}
