import { existsSync, readdirSync, readFileSync, utimesSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Session } from '../../src/session/session.ts'
import { nodeFileSystem } from '../../src/storage/files/file-system.ts'
import { sessionIn, tell } from '../session/support/sessions.ts'
import { strip } from '../support/commands.ts'
import { chanceOf } from '../support/damage/chance.ts'
import { openJob } from '../support/record.ts'
import { faultyFileSystem } from './support/faulty-file-system.ts'
import { type PowerLoss, powerLoss } from './support/power-loss.ts'
import { temporaryFolder } from './support/temporary-folder.ts'
import { commandByChance } from './support/work-by-chance.ts'

test('the disk that these tests think of: bytes by the flush of the file, names by that of the folder', () => {
  const folder = temporaryFolder()
  const disk = powerLoss(nodeFileSystem, folder)
  const left = () => {
    const image = imageOf(disk, folder)
    return readdirSync(image).map((name) => readFileSync(join(image, name), 'utf8'))
  }
  const { fs } = disk
  const file = fs.openSync(join(folder, 'file'), 'wx')
  const names = fs.openSync(folder, 'r')
  fs.writeSync(file, Buffer.from('one '))
  fs.fsyncSync(file)
  fs.writeSync(file, Buffer.from('two'))
  expect(left()).toEqual([])
  fs.fsyncSync(names)
  expect(left()).toEqual(['one '])
  fs.fsyncSync(file)
  expect(left()).toEqual(['one two'])
  fs.closeSync(file)
  fs.closeSync(names)
})

describe('the power goes right after the screen said "recorded"', () => {
  test.each([
    ['the same program', (session: Session) => session],
    ['another one', (_: Session, next: () => Session) => next()],
  ])('a flush had failed, and its bytes could not be cut off again; %s writes them anew', (_, goesOn) => {
    const folder = temporaryFolder()
    const faulty = faultyFileSystem()
    const disk = powerLoss(faulty, folder)
    const cannotCut = {
      ...disk.fs,
      ftruncateSync: () => {
        throw Object.assign(new Error('EROFS'), { code: 'EROFS' })
      },
    }
    const session = tell(sessionIn(folder, { fs: cannotCut }), openJob)
    faulty.plantIn('fdatasyncSync', 'EIO')
    expect(session.send(strip('cover off'))).toMatchObject({
      kind: 'not-recorded',
      error: { code: 'EIO', takenBack: false },
    })
    const last = tell(
      goesOn(session, () => sessionIn(folder, { fs: cannotCut })),
      strip('bracket off'),
    )
    const stored = sessionIn(imageOf(disk, folder))
    expect(stored.entries().map(({ type }) => type)).toEqual(['opened', 'strip-began', 'strip-began'])
    expect(stored.entries()).toEqual(last.entries())
  })

  test.each([
    ['a sound disk', 0],
    ['a disk that refuses a call in 50', 0.02],
    ['a disk that refuses a call in 8', 0.12],
  ])('%s: 12 jobs at random', (_, rate) => {
    let recorded = 0
    let refused = 0
    for (let seed = 1; seed <= 12; seed += 1) {
      const folder = temporaryFolder()
      const chance = chanceOf(seed)
      const faulty = faultyFileSystem()
      const disk = powerLoss(faulty, folder)
      // Nobody else asks for the lock, so there is nothing to wait for.
      const session = tell(sessionIn(folder, { fs: disk.fs, lockLimit: 0 }), openJob)
      faulty.plantAtRandom(chance, rate)
      for (let turn = 0; turn < 25; turn += 1) {
        const outcome = session.send(commandByChance(session.state, chance))
        if (outcome.kind === 'not-recorded') refused += 1
        if (outcome.kind === 'recorded') {
          recorded += 1
          const left = sessionIn(imageOf(disk, folder))
          expect(left.entries(), `seed ${seed}, turn ${turn}`).toEqual(session.entries())
          expect(left.unlawful).toBeNull()
        }
        age(join(folder, 'journal.lock'))
        age(join(folder, 'journal.lock.takeover'))
      }
      faulty.mend()
      tell(sessionIn(folder), strip('and on'))
    }
    expect(recorded).toBeGreaterThan(20)
    expect(refused > 20).toBe(rate > 0)
  })
})

/** What is left of a folder. */
function imageOf({ leftOf }: PowerLoss, folder: string): string {
  const image = temporaryFolder()
  leftOf(folder, image)
  return image
}

/** A lock that could neither be named nor removed counts as abandoned after 10 s. */
function age(lock: string): void {
  if (existsSync(lock) && !readFileSync(lock, 'utf8').endsWith('}\n')) utimesSync(lock, 1, 1)
}
