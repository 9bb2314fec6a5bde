import { createHash } from 'node:crypto'
import fs, {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { NotRecorded } from '../../src/storage/journal/not-recorded.ts'
import {
  isCopyName,
  type PhotoFileSystem,
  PhotoFiles,
  photoFile,
  SourceChanged,
} from '../../src/storage/photo-files.ts'
import { type FaultyFileSystem, faultyFileSystem } from './support/faulty-file-system.ts'
import { temporaryFolder } from './support/temporary-folder.ts'

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex')

/** A phone's folder and a job's folder, and pictures that are only texts: nothing here looks into them. */
function bench(files: PhotoFileSystem | undefined = undefined, recorded: string[] = []) {
  const phone = temporaryFolder()
  const job = temporaryFolder()
  const photos = new PhotoFiles(job, recorded, files)
  const put = (name: string, text: string) => {
    writeFileSync(join(phone, name), text)
    return { source: join(phone, name), sha256: sha256(text), extension: 'jpg' }
  }
  const copies = () => (existsSync(photos.path) ? readdirSync(photos.path).sort() : [])
  const text = (name: string) => readFileSync(join(photos.path, name), 'utf8')
  return { phone, job, photos, put, copies, text }
}

/** Fails like the faulty one, with links too. */
function faulty(link: PhotoFileSystem['linkSync'] = fs.linkSync): FaultyFileSystem & PhotoFileSystem {
  return Object.assign(faultyFileSystem(), { linkSync: link })
}

const noLinks = (): never => {
  throw Object.assign(new Error('EPERM'), { code: 'EPERM' })
}

describe.each([
  ['with hard links', undefined],
  ['without hard links', noLinks],
])('a copy, on a disk %s', (_, link) => {
  const disk = () => faulty(link)

  test('has the bytes of the picture, and the picture stays', () => {
    const { photos, put, copies, text, phone } = bench(disk())
    const picture = put('IMG_1.JPG', 'six bolts')
    expect(photos.copyIn({ ...picture, stem: '20261125-101112-001000368' })).toBe(
      '20261125-101112-001000368.jpg',
    )
    photos.flush()
    expect(copies()).toEqual(['20261125-101112-001000368.jpg'])
    expect(text('20261125-101112-001000368.jpg')).toBe('six bolts')
    expect(readFileSync(join(phone, 'IMG_1.JPG'), 'utf8')).toBe('six bolts')
  })

  test('never takes the place of a file that is there, or that the record names', () => {
    const { photos, put, copies, text } = bench(disk(), ['20261125-101112-2.JPG'])
    mkdirSync(photos.path)
    writeFileSync(join(photos.path, '20261125-101112.jpg'), 'somebody else’s')
    const first = photos.copyIn({ ...put('a', 'one'), stem: '20261125-101112' })
    const second = photos.copyIn({ ...put('b', 'two'), stem: '20261125-101112' })
    expect([first, second]).toEqual(['20261125-101112-3.jpg', '20261125-101112-4.jpg'])
    expect(copies()).toHaveLength(3)
    expect(text('20261125-101112.jpg')).toBe('somebody else’s')
  })

  test('is put back under its own name, but not over anything', () => {
    const { photos, put, text } = bench(disk(), ['20261125-101112.jpg'])
    const { source, sha256 } = put('a', 'one')
    expect(photos.has('20261125-101112.jpg')).toBe(false)
    expect(photos.restore('20261125-101112.jpg', source, sha256)).toBe(true)
    expect(photos.has('20261125-101112.jpg')).toBe(true)
    expect(text('20261125-101112.jpg')).toBe('one')
    expect(photos.restore('20261125-101112.jpg', source, sha256)).toBe(false)
  })

  test('leaves nothing half done, whichever call fails', () => {
    for (const errno of ['ENOSPC', 'EIO']) {
      for (let at = 1; ; at += 1) {
        const files = disk()
        const { photos, put, copies, text } = bench(files)
        const picture = { ...put('a', 'one'), stem: '20261125-101112' }
        files.plant({ at, errno })
        let copied: string | null = null
        try {
          copied = photos.copyIn(picture)
          photos.flush()
        } catch (error) {
          const isOurs = error instanceof NotRecorded || error instanceof SourceChanged
          expect(isOurs, `${errno} in ${files.hit}: ${error}`).toBe(true)
        }
        files.mend()
        for (const name of copies().filter(isCopyName))
          expect(text(name), `call ${at}, ${files.hit}`).toBe('one')
        // The next try ends with one whole copy, whatever the first one left.
        const again = new PhotoFiles(photos.path.slice(0, -'/photos'.length), [])
        expect(again.copyIn(picture)).toBe('20261125-101112.jpg')
        expect(copies()).toEqual(['20261125-101112.jpg'])
        if (copied !== null && files.hit === null) break
      }
    }
  })
})

test.runIf(process.platform !== 'win32')('only this user may read the copies', () => {
  const { photos, put } = bench()
  const name = photos.copyIn({ ...put('a', 'one'), stem: '20261125-101112' })
  const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8)
  expect([modeOf(photos.path), modeOf(join(photos.path, name))]).toEqual(['700', '600'])
})

test('of many in one second the names that others took are tried once, not again for each', () => {
  let links = 0
  const counting: PhotoFileSystem['linkSync'] = (existing, name) => {
    links += 1
    fs.linkSync(existing, name)
  }
  const { photos, put, copies } = bench(faulty(counting))
  mkdirSync(photos.path)
  const name = (number: number) => `20261125-101112${number === 1 ? '' : `-${number}`}.jpg`
  for (let number = 1; number <= 40; number += 1)
    writeFileSync(join(photos.path, name(number)), `of another program ${number}`)
  for (let number = 41; number <= 80; number += 1)
    expect(photos.copyIn({ ...put(`IMG_${number}.JPG`, `${number}`), stem: '20261125-101112' })).toBe(
      name(number),
    )
  expect(copies()).toHaveLength(80)
  expect(links).toBe(80)
})

test('nothing is made before the first copy', () => {
  const { photos, copies } = bench()
  expect(photos.has('20261125-101112.jpg')).toBe(false)
  expect(copies()).toEqual([])
  expect(existsSync(photos.path)).toBe(false)
})

describe('a copy that no entry names', () => {
  test('is taken instead of a second one, by its content', () => {
    const { photos, job, put, copies } = bench()
    const one = { ...put('a', 'one'), stem: '20261125-101112' }
    const two = { ...put('b', 'two'), stem: '20261125-101112' }
    expect([photos.copyIn(one), photos.copyIn(two)]).toEqual(['20261125-101112.jpg', '20261125-101112-2.jpg'])
    const again = new PhotoFiles(job, [])
    expect([again.copyIn(two), again.copyIn(one)]).toEqual(['20261125-101112-2.jpg', '20261125-101112.jpg'])
    expect(copies()).toHaveLength(2)
  })

  test('but not under the name of another time or another bag, and not the user’s own files', () => {
    const { photos, put, copies } = bench()
    mkdirSync(photos.path)
    writeFileSync(join(photos.path, '20261125-101112-001000368.jpg'), 'one')
    writeFileSync(join(photos.path, 'mine.jpg'), 'two')
    expect(photos.copyIn({ ...put('a', 'one'), stem: '20261125-101112' })).toBe('20261125-101112.jpg')
    expect(photos.copyIn({ ...put('b', 'two'), stem: '20261125-101113' })).toBe('20261125-101113.jpg')
    expect(copies()).toHaveLength(4)
  })
})

test('a half copy of a program that is no more is cleared away, that of a living one stays', () => {
  const { photos, put, copies } = bench()
  mkdirSync(photos.path)
  // No system has a process of that number: it is beyond the largest.
  writeFileSync(join(photos.path, '.copy-999999999-1.tmp'), 'half')
  writeFileSync(join(photos.path, `.copy-${process.ppid}-1.tmp`), 'half')
  photos.copyIn({ ...put('a', 'one'), stem: '20261125-101112' })
  expect(copies()).toEqual([`.copy-${process.ppid}-1.tmp`, '20261125-101112.jpg'])
})

describe('a picture that is not what was looked at', () => {
  test.each([
    ['changed', (path: string) => writeFileSync(path, 'six other bolts'), null],
    ['gone', (path: string) => fs.unlinkSync(path), 'ENOENT'],
  ] as const)('%s', (_, change, errno) => {
    const { photos, put, copies } = bench()
    const picture = put('a', 'six bolts')
    change(picture.source)
    const copy = () => photos.copyIn({ ...picture, stem: '20261125-101112' })
    expect(copy).toThrow(SourceChanged)
    expect(copy).toThrow(expect.objectContaining({ errno }))
    expect(copies()).toEqual([])
  })
})

describe('where the copy of a recorded picture lies', () => {
  test('for a plain name of a file that is there', () => {
    const { photos, job, put } = bench()
    const name = photos.copyIn({ ...put('a', 'one'), stem: '20261125-101112' })
    expect(photoFile(job, name)).toBe(join(photos.path, name))
  })

  test.each([
    '../journal.log',
    '..',
    '.hidden.jpg',
    'a/b.jpg',
    'a\\b.jpg',
    'c:d.jpg',
    'a\x1b[2J.jpg',
    'gone.jpg',
    '',
  ])('nowhere for %j', (name) => {
    const { photos, job } = bench()
    mkdirSync(photos.path)
    writeFileSync(join(job, 'journal.log'), '')
    expect(photoFile(job, name)).toBeNull()
  })

  test('nowhere for a folder or a link', () => {
    const { photos, job } = bench()
    mkdirSync(join(photos.path, 'folder.jpg'), { recursive: true })
    writeFileSync(join(job, 'secret'), '')
    symlinkSync(join(job, 'secret'), join(photos.path, 'link.jpg'))
    expect([photoFile(job, 'folder.jpg'), photoFile(job, 'link.jpg')]).toEqual([null, null])
  })
})
