import { createHash } from 'node:crypto'
import fs, {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { groupedCode, labelCode } from '../../src/label/code.ts'
import { type ImportOptions, importPhotos } from '../../src/photos/import-photos.ts'
import type { ImportedPicture } from '../../src/photos/record-pictures.ts'
import type { Session } from '../../src/session/session.ts'
import type { PhotoFileSystem } from '../../src/storage/photo-files.ts'
import { sessionIn, sessionWith, tell } from '../session/support/sessions.ts'
import { faultyFileSystem } from '../storage/support/faulty-file-system.ts'
import { off, strip, undo } from '../support/commands.ts'
import { type Phone, phone, picture } from '../support/photos/phone.ts'

const bag1 = labelCode(7, 1)
const bag2 = labelCode(7, 2)
const step1 = labelCode(7, 9001)
const machine = labelCode(7, 9000)

const job = () => sessionWith(strip('valve cover off'), off(6, 'cover bolts'), off(4, 'bracket bolts'))
const folderOf = (session: Session) => dirname(session.store.path)
const copiesOf = (session: Session) => {
  const path = join(folderOf(session), 'photos')
  return existsSync(path) ? readdirSync(path).sort() : []
}
const recordOf = (session: Session) =>
  [...session.state.pictures.values()].map(({ file, belongs }) => [file, belongs])

async function imported(session: Session, { folder }: Pick<Phone, 'folder'>, options: ImportOptions = {}) {
  const progress: string[] = []
  const outcome = await importPhotos(session, folder, (text) => progress.push(text), options)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome))
  const { pictures } = outcome.answer as { pictures: ImportedPicture[] }
  return { ...outcome, pictures, progress }
}

/** The names and bytes of a folder, to see that nothing in it was touched. */
const contents = (folder: string) =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ name }) => [
      name,
      createHash('sha256')
        .update(readFileSync(join(folder, name)))
        .digest('hex'),
    ])

describe('a folder of pictures', () => {
  test('comes into the job, sorted by its labels, with what is not certain asked', async () => {
    const session = job()
    const camera = phone()
    const bytes = camera.shot('IMG_3.jpg', '10:00:00', bag1)
    camera.shot('IMG_1.jpg', '10:01:00')
    camera.shot('IMG_2.jpg', '10:02:00', bag2)
    camera.shot('IMG_4.jpg', '10:03:00', bag1, bag2)
    camera.shot('IMG_5.jpg', '10:04:00')
    camera.shot('IMG_6.jpg', '10:05:00', step1)
    camera.shot('IMG_7.jpg', '10:06:00', machine)
    camera.shot('IMG_8.jpg', '09:00:00')
    camera.shot('IMG_9.jpg', '23:00:00')
    const before = contents(camera.folder)
    const { text, progress, entries } = await imported(session, camera)

    expect(recordOf(session)).toEqual([
      ['20261125-090000.jpg', null],
      [`20261125-100000-${bag1}.jpg`, { container: 1 }],
      [`20261125-100100-${bag1}.jpg`, { container: 1 }],
      [`20261125-100200-${bag2}.jpg`, { container: 2 }],
      ['20261125-100300.jpg', null],
      ['20261125-100400.jpg', null],
      [`20261125-100500-${step1}.jpg`, { step: 1 }],
      [`20261125-100600-${machine}.jpg`, 'none'],
      ['20261125-230000.jpg', null],
    ])
    expect(copiesOf(session)).toEqual(recordOf(session).map(([file]) => file))
    const copy = readFileSync(join(folderOf(session), 'photos', `20261125-100000-${bag1}.jpg`))
    expect(Buffer.compare(copy, bytes)).toBe(0)
    expect(contents(camera.folder)).toEqual(before)
    expect(progress).toContain('9 of 9: IMG_9.jpg')
    expect(entries.map(({ type }) => type)).toEqual(['pictures-added', 'picture-sorted'])
    expect(text).toEqual([
      `9 new pictures from ${camera.folder}, copied to ${join(folderOf(session), 'photos')}.`,
      '  2 of bag 1',
      '  1 of bag 2',
      '  1 of step 1, valve cover off',
      '  1 of the job as a whole',
      'Not sorted, since it is not certain what they show:',
      '  g1  IMG_8.jpg was taken before the first picture of a label',
      `  g5  IMG_4.jpg shows several labels: ${groupedCode(bag1)} and ${groupedCode(bag2)}`,
      '  g6  IMG_5.jpg comes after the label in IMG_4.jpg, and what that opens is in doubt',
      `  g9  IMG_9.jpg was taken more than 12 hours after the label in IMG_7.jpg (${groupedCode(machine)})`,
      'Say what each shows: "photo g1 to bag N", to step N, or to job.',
    ])
  })

  test('without a capture time is named by the time of its file, marked, and in doubt', async () => {
    const session = job()
    const camera = phone()
    camera.shot('a.jpg', null, bag1)
    utimesSync(join(camera.folder, 'a.jpg'), 0, new Date(2026, 10, 5, 9, 1, 2))
    const { pictures } = await imported(session, camera)
    expect(recordOf(session)).toEqual([['20261105-090102-filetime.jpg', null]])
    expect(pictures[0]?.doubt).toEqual({ why: 'no-time', codes: [bag1] })
    expect([...session.state.pictures.values()][0]?.taken).toBeNull()
  })

  test('with a bad name is copied under a good one, and shown harmlessly', async () => {
    const session = job()
    const camera = phone()
    const names = [
      '\x1b[2J\x1b]0;gone\x07.jpg',
      '..jpg',
      '-rf.jpg',
      '; rm -rf $HOME .jpg',
      '🔩 bolts.jpg',
      `${'long '.repeat(48)}.jpg`,
      'a\nb.jpg',
      '\u202egpj.exe',
    ]
    for (const [index, name] of names.entries()) camera.shot(name, `10:00:0${index}`)
    const { text, progress, pictures } = await imported(session, camera)
    expect(pictures).toHaveLength(names.length)
    for (const file of copiesOf(session)) expect(file).toMatch(/^20261125-10000\d\.jpg$/)
    expect([...text, ...progress].join('')).not.toMatch(/[\p{Cc}\u202e]/u)
  })

  test('with the same picture under two names has it once', async () => {
    const session = job()
    const camera = phone()
    const bytes = camera.shot('IMG_1.jpg', '10:00:00', bag1)
    camera.file('IMG_1 (copy).jpg', bytes)
    const { text } = await imported(session, camera)
    expect(copiesOf(session)).toEqual([`20261125-100000-${bag1}.jpg`])
    expect(text).toContainEqual('IMG_1.jpg is the same picture as IMG_1 (copy).jpg.')
  })

  test('with two pictures of one second gets two names', async () => {
    const session = job()
    const camera = phone()
    camera.shot('a.jpg', '10:00:00')
    camera.shot('b.jpg', '10:00:00')
    await imported(session, camera)
    expect(copiesOf(session)).toEqual(['20261125-100000-2.jpg', '20261125-100000.jpg'])
  })

  test('that is left out is named, what is no picture is counted, and nothing is followed', async () => {
    const session = job()
    const camera = phone()
    const whole = camera.shot('good.jpg', '10:00:00', bag1)
    camera.file('cut.jpg', whole.subarray(0, whole.length >> 1))
    camera.file('text.jpg', 'torque 20 Nm')
    camera.file('empty.png', '')
    camera.file('notes.txt', 'torque 20 Nm')
    camera.file('IMG_9.HEIC', '\0\0\0\x18ftypheic\0\0\0\0mif1heic')
    const large = join(camera.folder, 'large.jpg')
    writeFileSync(large, whole)
    fs.truncateSync(large, 100_000_001)
    mkdirSync(join(camera.folder, 'yesterday'))
    camera.file('yesterday/inside.jpg', picture(99, '10:00:00'))
    symlinkSync(join(camera.folder, 'yesterday/inside.jpg'), join(camera.folder, 'link.jpg'))
    const { text } = await imported(session, camera)
    expect(copiesOf(session)).toEqual([`20261125-100000-${bag1}.jpg`])
    expect(text.slice(2)).toEqual([
      'cut.jpg left out: it is cut short; copy it from the phone again.',
      'empty.png left out: it is no JPEG or PNG picture, whatever its name says.',
      'large.jpg left out: it is larger than 100 MB.',
      'text.jpg left out: it is no JPEG or PNG picture, whatever its name says.',
      '1 file in the HEIF format left out: let the phone save JPEG, or convert them first.',
      '1 file is neither JPEG nor PNG.',
      'Not looked into: 1 subfolder and 1 link.',
    ])
  })

  test('with nothing in it is no fault', async () => {
    const session = job()
    const { text, entries } = await imported(session, phone())
    expect(text).toEqual([expect.stringMatching(/^0 new pictures from /)])
    expect([entries, copiesOf(session)]).toEqual([[], []])
  })
})

describe('once more', () => {
  test('nothing is copied or recorded twice, and what was added since is sorted by the labels of before', async () => {
    const session = job()
    const camera = phone()
    camera.shot('IMG_1.jpg', '10:00:00', bag1)
    camera.shot('IMG_2.jpg', '10:01:00')
    await imported(session, camera)
    const entries = session.entries().length
    expect((await imported(session, camera)).text.slice(1)).toEqual(['2 pictures in the record already.'])
    expect([session.entries().length, copiesOf(session).length]).toEqual([entries, 2])

    camera.shot('IMG_3.jpg', '10:02:00')
    expect((await imported(session, camera)).text.slice(1)).toEqual([
      '  1 of bag 1',
      '2 pictures in the record already.',
    ])
    expect(recordOf(session).at(-1)).toEqual([`20261125-100200-${bag1}.jpg`, { container: 1 }])
  })

  test('what was in doubt is sorted when its label is there, and what a person sorted stays', async () => {
    const session = job()
    const camera = phone()
    camera.shot('IMG_2.jpg', '10:01:00')
    camera.shot('IMG_3.jpg', '10:02:00')
    await imported(session, camera)
    tell(session, { do: 'sort-picture', picture: 'g2', belongs: { container: 2 } })
    camera.shot('IMG_1.jpg', '10:00:00', bag1)
    const { text } = await imported(session, camera)
    expect(recordOf(session).map(([, belongs]) => belongs)).toEqual([
      { container: 1 },
      { container: 2 },
      { container: 1 },
    ])
    expect(text).toContainEqual('  2 of bag 1')
  })

  test('a copy that is missing is put back', async () => {
    const session = job()
    const camera = phone()
    camera.shot('IMG_1.jpg', '10:00:00', bag1)
    await imported(session, camera)
    const [file = ''] = copiesOf(session)
    rmSync(join(folderOf(session), 'photos', file))
    const { text } = await imported(session, camera)
    expect(copiesOf(session)).toEqual([file])
    expect(text).toContainEqual(`${file} was missing among the copies and is there again.`)
  })

  test('after undo, the copies that are there are taken again', async () => {
    const session = job()
    const camera = phone()
    camera.shot('IMG_1.jpg', '10:00:00', bag1)
    await imported(session, camera)
    tell(session, undo)
    expect(session.state.pictures.size).toBe(0)
    await imported(session, camera)
    expect(copiesOf(session)).toHaveLength(1)
    expect(recordOf(session)).toHaveLength(1)
  })
})

describe('an import that is broken off', () => {
  /** Breaks the program off at the so-manyth call of a kind, as a kill would: nothing is cleared up after it. */
  class Killed extends Error {}

  test('at any copy ends, run again, where a whole one ends', async () => {
    const camera = phone()
    for (let index = 0; index < 5; index += 1)
      camera.shot(`IMG_${index}.jpg`, `10:0${index}:00`, ...(index % 2 ? [] : [index ? bag2 : bag1]))
    const whole = job()
    await imported(whole, camera, { batch: 2 })
    for (const call of ['linkSync', 'fsyncSync', 'writeSync'] as const) {
      for (let at = 1; at <= 5; at += 2) {
        const session = job()
        let calls = 0
        const killing: PhotoFileSystem = {
          ...fs,
          [call]: (...args: never[]) => {
            calls += 1
            if (calls >= at) throw new Killed()
            return (fs[call] as (...args: never[]) => unknown)(...args)
          },
          // What a killed program would have cleared up stays.
          unlinkSync: (path) => {
            if (calls < at) fs.unlinkSync(path)
          },
        }
        await expect(imported(session, camera, { batch: 2, fs: killing })).rejects.toThrow(Killed)
        const again = sessionIn(folderOf(session))
        await imported(again, camera, { batch: 2 })
        expect(recordOf(again), `${call} ${at}`).toEqual(recordOf(whole))
        expect(copiesOf(again).filter((name) => !name.endsWith('.tmp'))).toEqual(copiesOf(whole))
      }
    }
  })

  test('before an entry is on the disk: the copies without one are taken', async () => {
    const session = job()
    const camera = phone()
    camera.shot('IMG_1.jpg', '10:00:00', bag1)
    camera.shot('IMG_2.jpg', '10:01:00')
    const disk = faultyFileSystem()
    const failing = sessionIn(folderOf(session), { fs: disk })
    disk.plantIn('fdatasyncSync', 'EIO')
    const outcome = await importPhotos(failing, camera.folder, () => {})
    expect(outcome).toMatchObject({ ok: false, exit: 'not-recorded', code: 'EIO', entries: [] })
    expect(copiesOf(session)).toHaveLength(2)
    disk.mend()
    await imported(failing, camera)
    expect(copiesOf(session)).toHaveLength(2)
    expect(recordOf(failing)).toHaveLength(2)
  })

  test('by a full disk: says so, and what was recorded stands', async () => {
    const session = job()
    const camera = phone()
    for (const name of ['a', 'b', 'c']) camera.shot(`${name}.jpg`, `10:00:0${name.charCodeAt(0) - 97}`)
    let writes = 0
    const full: PhotoFileSystem = {
      ...fs,
      writeSync: (fd, bytes) => {
        writes += 1
        if (writes > 2) throw Object.assign(new Error('full'), { code: 'ENOSPC' })
        return fs.writeSync(fd, bytes)
      },
    }
    const outcome = await importPhotos(session, camera.folder, () => {}, { fs: full, batch: 1 })
    expect(outcome).toMatchObject({ ok: false, exit: 'not-recorded', code: 'ENOSPC' })
    expect(outcome).toMatchObject({ told: { what: expect.stringMatching(/disk is full/) } })
    expect(outcome.entries).toHaveLength(2)
    expect(copiesOf(session)).toHaveLength(2)
  })
})

test('two programs that import the same folder at once record each picture once, and every copy is there', async () => {
  const one = job()
  const two = sessionIn(folderOf(one))
  const camera = phone()
  for (let index = 0; index < 6; index += 1)
    camera.shot(`IMG_${index}.jpg`, `10:00:0${index}`, ...(index % 3 ? [] : [bag1]))
  await Promise.all([imported(one, camera, { batch: 2 }), imported(two, camera, { batch: 3 })])
  one.refresh()
  const files = recordOf(one).map(([file]) => file)
  expect(files).toHaveLength(6)
  for (const file of files) expect(copiesOf(one)).toContain(file)
})

test('a picture that changes while it is copied is named and left out', async () => {
  const session = job()
  const camera = phone()
  camera.shot('a.jpg', '10:00:00')
  camera.shot('b.jpg', '10:00:01')
  const outcome = await importPhotos(session, camera.folder, (progress) => {
    if (progress.startsWith('copying 1 ')) camera.file('b.jpg', 'overwritten')
  })
  expect(outcome.ok && outcome.text).toContainEqual(
    'b.jpg left out: it changed while it was copied; import the folder again.',
  )
  expect(recordOf(session)).toEqual([['20261125-100000.jpg', null]])
})

describe('refused', () => {
  test.each([
    ['a folder that there is not', 'nowhere/at all', 'no-such-folder'],
    ['a file', 'IMG_1.jpg', 'no-such-folder'],
  ])('%s', async (_, name, code) => {
    const session = job()
    const camera = phone()
    camera.shot('IMG_1.jpg', '10:00:00')
    const outcome = await importPhotos(session, join(camera.folder, name), () => {})
    expect(outcome).toMatchObject({ ok: false, exit: 'refused', code })
  })

  test('the folder of the copies themselves', async () => {
    const session = job()
    const camera = phone()
    camera.shot('IMG_1.jpg', '10:00:00')
    await imported(session, camera)
    const outcome = await importPhotos(session, join(folderOf(session), 'photos'), () => {})
    expect(outcome).toMatchObject({ ok: false, exit: 'refused', code: 'own-photos' })
  })
})

test('a folder may be named from where one is, or in quotes as a terminal writes it', async () => {
  const camera = phone()
  camera.shot('IMG_1.jpg', '10:00:00')
  const name = camera.folder.slice(dirname(camera.folder).length + 1)
  for (const said of [name, `'${camera.folder}'`, ` "${name}" `]) {
    const outcome = await importPhotos(job(), said, () => {}, { cwd: dirname(camera.folder) })
    expect(outcome).toMatchObject({ ok: true })
  }
})
