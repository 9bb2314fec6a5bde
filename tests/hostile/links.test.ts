import { spawnSync } from 'node:child_process'
import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { parseEntry } from '../../src/journal/entry.ts'
import { nodeFileSystem } from '../../src/storage/files/file-system.ts'
import { openJournal } from '../../src/storage/journal/open-journal.ts'
import { enterJob } from '../../src/storage/lock/presence.ts'
import { PhotoFiles, photoFile } from '../../src/storage/photo-files.ts'
import { type Bench, benchWithJob } from '../cli/support/bench.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'

// A link inside a job may lead anywhere. The home may be one: where the jobs lie is its owner's choice.

const SECRET = 'a file of somebody else\n'

/** A job, and outside of it a file and a folder that must stay as they are. */
function outside(): { on: Bench; job: string; file: string; folder: string; isUntouched(): boolean } {
  const on = benchWithJob('begin cover off', 'off 4 M6x20 bolts into new bag')
  const elsewhere = temporaryFolder()
  const [file, folder] = [join(elsewhere, 'file'), join(elsewhere, 'folder')]
  writeFileSync(file, SECRET)
  mkdirSync(folder)
  return {
    on,
    job: join(on.home, 'blue-twin'),
    file,
    folder,
    isUntouched: () =>
      readFileSync(file, 'utf8') === SECRET &&
      readdirSync(folder).length === 0 &&
      readdirSync(elsewhere).length === 2,
  }
}

describe.skipIf(process.platform === 'win32')('a link in the place of', () => {
  test('the journal is not read, not written, and said', async () => {
    const { on, job, isUntouched } = outside()
    const moved = join(temporaryFolder(), 'moved.log')
    renameSync(join(job, 'journal.log'), moved)
    const before = readFileSync(moved)
    symlinkSync(moved, join(job, 'journal.log'))
    expect(on.say('--job', job, 'note: x')).toMatchObject({ code: 4 })
    expect(on.say('note: x').code).not.toBe(0)
    // Put there between the look and the opening.
    expect(() => openJournal(job, { parse: parseEntry })).toThrow(/ELOOP/)
    expect(readFileSync(moved)).toEqual(before)
    expect(isUntouched()).toBe(true)
  })

  test('the journal while it is open keeps what is typed from being recorded elsewhere', () => {
    const { on, job, file, isUntouched } = outside()
    const session = on.shelf.open(job)
    renameSync(join(job, 'journal.log'), join(job, 'aside.log'))
    symlinkSync(file, join(job, 'journal.log'))
    const outcome = session.send({ do: 'note', kind: 'note', text: 'x' })
    expect(outcome.kind).toBe('not-recorded')
    expect(isUntouched()).toBe(true)
  })

  test.each(['to a file', 'to nothing'])('the lock, %s, is not followed and named', (to) => {
    const { on, job, file, folder, isUntouched } = outside()
    symlinkSync(to === 'to a file' ? file : join(folder, 'gone'), join(job, 'journal.lock'))
    const { code, err } = on.say('note: x')
    expect(code).toBe(3)
    expect(err).toContain('a link lies in its place')
    expect(err).toContain('journal.lock')
    expect(isUntouched()).toBe(true)
  })

  test('a sign of presence is replaced by the sign', () => {
    const { job, file, isUntouched } = outside()
    const sign = join(job, `journal.open-${process.pid}`)
    symlinkSync(file, sign)
    const presence = enterJob(job)
    expect(lstatSync(sign).isFile()).toBe(true)
    expect(isUntouched()).toBe(true)
    presence.leave()
    expect(existsSync(sign)).toBe(false)
  })

  test.each(['.chosen', '.settings.json', '.printing.json'])(
    '%s is not read, and replaced when it is written',
    async (name) => {
      const { on, file, isUntouched } = outside()
      const path = join(on.home, name)
      rmSync(path, { force: true })
      const real = {
        '.chosen': 'blue-twin\n',
        '.settings.json': '{"sound":false}',
        '.printing.json': '{"stock":"a4-8"}',
      }[name]
      const copy = join(temporaryFolder(), 'copy')
      writeFileSync(copy, real ?? '')
      symlinkSync(copy, path)
      expect(on.shelf.hasSound()).toBe(true)
      expect(on.shelf.chosen()).toBe(name === '.chosen' ? null : join(on.home, 'blue-twin'))
      expect((await on.send('labels usual')).out).not.toContain('a4-8')
      rmSync(path)
      symlinkSync(file, path)
      on.shelf.choose(join(on.home, 'blue-twin'))
      on.shelf.setSound(true)
      await on.send('labels usual on a4-24')
      expect(lstatSync(path).isFile()).toBe(true)
      expect(isUntouched()).toBe(true)
    },
  )

  test('the folder of pictures, or a picture, leads nowhere', () => {
    const { job, file, folder, isUntouched } = outside()
    symlinkSync(folder, join(job, 'photos'))
    writeFileSync(join(folder, 'a.jpg'), SECRET)
    expect(photoFile(job, 'a.jpg')).toBeNull()
    rmSync(join(folder, 'a.jpg'))
    const source = join(temporaryFolder(), 'b.jpg')
    writeFileSync(source, 'x')
    const photos = new PhotoFiles(job, [])
    expect(() =>
      photos.copyIn({ source, sha256: '0'.repeat(64), stem: '20300101-080000', extension: 'jpg' }),
    ).toThrow(expect.objectContaining({ name: 'NotRecorded', code: 'ELOOP' }))
    rmSync(join(job, 'photos'))
    mkdirSync(join(job, 'photos'))
    symlinkSync(file, join(job, 'photos', 'a.jpg'))
    expect(photoFile(job, 'a.jpg')).toBeNull()
    expect(isUntouched()).toBe(true)
  })

  test('a file that is printed or written is not gone over', async () => {
    const { on, file, folder, isUntouched } = outside()
    symlinkSync(file, join(on.home, 'list.csv'))
    symlinkSync(join(folder, 'new.pdf'), join(on.home, 'tag.pdf'))
    expect((await on.send('buy csv list.csv')).err).toContain('is there already')
    expect((await on.send('labels machine to tag.pdf')).err).toContain('tag.pdf')
    expect(isUntouched()).toBe(true)
  })

  test('the folder of what is printed leads where its owner wants it, and to nothing makes nothing', async () => {
    const { on, folder } = outside()
    const labels = join(on.home, '..', 'labels')
    mkdirSync(labels)
    symlinkSync(folder, join(labels, 'out'))
    expect((await on.send('labels machine')).err).toBe('')
    expect(readdirSync(folder)).toEqual(['001-machine.pdf'])
    rmSync(join(labels, 'out'))
    symlinkSync(join(folder, 'gone'), join(labels, 'out'))
    const { code, err } = await on.send('labels machine')
    expect(code).toBe(3)
    expect(err).toContain(join(labels, 'out'))
    expect(existsSync(join(folder, 'gone'))).toBe(false)
  })

  test('a job is no job; of the home is the home', () => {
    const { on, job } = outside()
    symlinkSync(job, join(on.home, 'link'))
    expect(on.say('jobs').out.match(/blue twin/g)).toHaveLength(1)
    expect(on.say('--job', join(on.home, 'link'), 'card').code).not.toBe(0)
    const home = join(temporaryFolder(), 'home')
    symlinkSync(on.home, home)
    expect(on.say('--home', home, 'note: through the home').err).toBe('')
    expect(on.session().entries()).toHaveLength(4)
  })
})

describe.skipIf(process.platform === 'win32')('a pipe, a device or a folder in the place of a file', () => {
  test.each(['journal.log', 'journal.lock', '.chosen', '.settings.json', '.printing.json', 'photos'])(
    'a pipe as %s is not waited for',
    async (name) => {
      const { on, job } = outside()
      const path = join(name.startsWith('.') ? on.home : job, name)
      rmSync(path, { force: true })
      expect(spawnSync('mkfifo', [path]).status).toBe(0)
      expect(() => nodeFileSystem.openSync(path, 'r')).toThrow(expect.objectContaining({ code: 'EFTYPE' }))
      for (const line of ['jobs', 'note: x', 'photos', 'labels usual', 'card']) {
        const { out, err } = await on.send(line)
        expect(`${out}${err}`, line).toMatch(/\S/)
      }
      expect(on.shelf.hasSound()).toBe(true)
    },
  )

  test.each(['journal.log', 'journal.lock', '.settings.json', '.printing.json'])(
    'a folder as %s is told, and stays',
    async (name) => {
      const { on, job } = outside()
      const path = join(name.startsWith('.') ? on.home : job, name)
      rmSync(path, { force: true })
      mkdirSync(path)
      for (const line of ['jobs', 'note: x', 'labels usual on a4-8', 'card']) {
        const { out, err } = await on.send(line)
        expect(`${out}${err}`, line).toMatch(/\S/)
      }
      expect(lstatSync(path).isDirectory()).toBe(true)
    },
  )

  test('what has no end is not read', () => {
    expect(() => nodeFileSystem.openSync('/dev/zero', 'r')).toThrow(
      expect.objectContaining({ code: 'EFTYPE' }),
    )
  })
})
