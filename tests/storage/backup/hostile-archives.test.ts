import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { BadArchive } from '../../../src/storage/backup/bad-archive.ts'
import { openArchive } from '../../../src/storage/backup/read-archive.ts'
import { restoreArchive } from '../../../src/storage/backup/restore-archive.ts'
import { writeArchive } from '../../../src/storage/backup/write-archive.ts'
import { badArchiveText } from '../../../src/words/bad-archive.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { contents, journalOf, keepJob } from './support/kept-job.ts'
import { makeZip, readZip, type ZipFileMade } from './support/zip-format.ts'

const JOURNAL = Buffer.from(journalOf({}))

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const listed = (name: string, bytes: Buffer) => ({ name, bytes: bytes.length, sha256: sha256(bytes) })

const MANIFEST = {
  kind: 'putback back-up',
  version: 1,
  made: '2030-01-02T17:05:00.000Z',
  program: '0.1.0',
  folder: 'blue-twin',
  job: { no: 7, name: 'blue twin', id: 'e1', entries: 1, hurt: null },
  files: [listed('journal.log', JOURNAL)],
  missing: [],
}

const manifestFile = (manifest: object | string): ZipFileMade => ({
  name: 'manifest.json',
  bytes: Buffer.from(typeof manifest === 'string' ? manifest : JSON.stringify(manifest)),
})

/** An archive that is right but for what is said. */
function archive(...more: ZipFileMade[]): Buffer {
  const files = [...MANIFEST.files, ...more.map(({ name, bytes }) => listed(String(name), bytes))]
  return makeZip([{ name: 'journal.log', bytes: JOURNAL }, ...more, manifestFile({ ...MANIFEST, files })])
}

/** What comes of restoring bytes, and that nothing is left behind where it is refused. */
async function restoring(bytes: Buffer): Promise<BadArchive | 'restored'> {
  const folder = temporaryFolder()
  const [path, home] = [join(folder, 'archive.zip'), join(folder, 'home')]
  writeFileSync(path, bytes)
  mkdirSync(home)
  try {
    const opened = await openArchive(path)
    try {
      await restoreArchive(opened, home)
    } finally {
      opened.close()
    }
  } catch (error) {
    if (!(error instanceof BadArchive)) throw error
    expect(readdirSync(folder).sort()).toEqual(['archive.zip', 'home'])
    expect(readdirSync(home)).toEqual([])
    const { what, cure } = badArchiveText({ path: 'x.zip', why: error.code, file: error.file })
    expect(what).toMatch(/^[xT].{15,160}\.$/u)
    expect(cure).not.toBe('')
    return error
  }
  return 'restored'
}

const refusing = async (bytes: Buffer) => {
  const bad = await restoring(bytes)
  return bad === 'restored' ? bad : bad.file === null ? bad.code : `${bad.code}: ${bad.file}`
}

const picture = (name: string | Buffer, more: Partial<ZipFileMade> = {}): ZipFileMade => ({
  name,
  bytes: Buffer.from('bytes of a picture'),
  ...more,
})

test('an archive that is made by hand, as a back-up is, is restored', async () => {
  expect(await refusing(archive())).toBe('restored')
  expect(await refusing(archive(picture('photos/20300101-081500.jpg')))).toBe('restored')
  expect(await refusing(archive(picture('photos/Bild Ü (1).jpg')))).toBe('restored')
})

describe('a name that leads out of the job or is no name of a file', () => {
  test.each([
    '../journal.log',
    'photos/../../x.jpg',
    'photos/../x.jpg',
    '/etc/x.jpg',
    '//server/x.jpg',
    'C:/x.jpg',
    'C:x.jpg',
    'photos/C:x.jpg',
    'photos\\x.jpg',
    '..\\x.jpg',
    'photos/..\\x.jpg',
    'photos//x.jpg',
    'photos/a/x.jpg',
    './photos/x.jpg',
    'photos/./x.jpg',
    'photos/.hidden.jpg',
    'photos/..',
    'photos/x\0.jpg',
    'photos/x\n.jpg',
    'photos/\u202egpj.x',
    'photos/x.jpg ',
    'photos/x.jpg.',
    'photos/x.jpg:stream',
    'photos/NUL',
    'photos/com1.jpg',
    'photos/LPT¹.jpg',
    'photos/CON .jpg',
    `photos/${'x'.repeat(121)}`,
    'Photos/x.jpg',
    'photos',
    'journal.lock',
    'journal.open-4711',
    'journal.log.bak',
    'journal.torn-',
    'journal.torn-../x',
    '.chosen',
    'x.jpg',
    '__proto__',
    'constructor',
    '',
  ])('%j', async (name) => {
    expect(await refusing(archive(picture(name)))).toMatch(/^name: /)
  })

  test('that is no UTF-8', async () => {
    const name = Buffer.concat([Buffer.from('photos/'), Buffer.from([0xc3, 0x28, 0xff]), Buffer.from('.jpg')])
    expect(await refusing(archive(picture(name)))).toMatch(/^name: /)
  })
})

describe('what is no plain file', () => {
  test.each([
    ['a link', { mode: 0o120777 }],
    ['a folder', { mode: 0o040755 }],
    ['a pipe', { mode: 0o010644 }],
    ['a device', { mode: 0o020644 }],
    ['a socket', { mode: 0o140644 }],
  ])('%s', async (_, how) => {
    expect(await refusing(archive(picture('photos/x.jpg', how)))).toBe('link: photos/x.jpg')
  })

  test('a folder by its name', async () => {
    expect(await refusing(archive(picture('photos/')))).toBe('link: photos/')
  })
})

describe('a name that is there twice', () => {
  test.each([
    ['photos/x.jpg', 'photos/x.jpg'],
    ['photos/x.jpg', 'photos/X.JPG'],
    ['photos/\u00e9.jpg', 'photos/e\u0301.jpg'],
    ['photos/ﬁ.jpg', 'photos/fi.jpg'],
  ])('%j and %j', async (one, other) => {
    expect(await refusing(archive(picture(one), picture(other)))).toBe(`twice: ${other}`)
  })

  test('on the list alone', async () => {
    const files = [...MANIFEST.files, ...MANIFEST.files]
    const bytes = makeZip([{ name: 'journal.log', bytes: JOURNAL }, manifestFile({ ...MANIFEST, files })])
    expect(await refusing(bytes)).toBe('twice: journal.log')
  })
})

describe('what would not come out as it went in', () => {
  test.each<[string, ZipFileMade, string]>([
    ['encrypted', picture('photos/x.jpg', { flags: 0x801, packedSize: 30 }), 'encrypted: photos/x.jpg'],
    ['a packed picture', picture('photos/x.jpg', { method: 8 }), 'packed: photos/x.jpg'],
    ['packed in another way', picture('journal.torn-1', { method2: 14 }), 'packed: journal.torn-1'],
    ['another checksum', picture('photos/x.jpg', { crc: 1 }), 'changed: photos/x.jpg'],
    ['more than it says', picture('journal.torn-1', { method: 8, size: 3 }), 'changed: journal.torn-1'],
    ['less than it says', picture('journal.torn-1', { method: 8, size: 300 }), 'changed: journal.torn-1'],
    ['lies over the journal', picture('photos/x.jpg', { over: 0 }), 'changed: photos/x.jpg'],
  ])('%s', async (_, file, why) => {
    expect(await refusing(archive(file))).toBe(why)
  })

  test('encrypted in the strong way', async () => {
    expect(await refusing(archive(picture('photos/x.jpg', { flags: 0x841 })))).toBe('not-an-archive')
  })

  test('a stored file of other lengths packed and unpacked', async () => {
    expect(await refusing(archive(picture('photos/x.jpg', { size: 30 })))).toBe('not-an-archive')
  })
})

describe('too much out of too little', () => {
  const zeros = Buffer.alloc(8 << 20)

  test('a megabyte of nothing packed into a few bytes', async () => {
    expect(await refusing(archive({ name: 'journal.torn-1', bytes: zeros, method: 8 }))).toBe(
      'packed: journal.torn-1',
    )
  })

  test('the same, said to be small', async () => {
    const file = { name: 'journal.torn-1', bytes: zeros, method: 8, size: 1000 } as const
    const files = [...MANIFEST.files, { ...listed('journal.torn-1', zeros), bytes: 1000 }]
    const bytes = makeZip([
      { name: 'journal.log', bytes: JOURNAL },
      file,
      manifestFile({ ...MANIFEST, files }),
    ])
    expect(await refusing(bytes)).toBe('changed: journal.torn-1')
  })

  test('a journal longer than any', async () => {
    const bytes = makeZip([
      { name: 'journal.log', bytes: JOURNAL, method: 8, size: 129 << 20, packedSize: 64 << 20 },
      manifestFile(MANIFEST),
    ])
    expect(await refusing(bytes)).toBe('too-large: journal.log')
  })

  test('a list far longer than what there is to list', async () => {
    const list = `[${'[],'.repeat(700_000)}[]]`
    const bytes = makeZip([{ name: 'journal.log', bytes: JOURNAL }, manifestFile(list)])
    expect(await refusing(bytes)).toBe('too-large: manifest.json')
  })

  test('a list that is nothing but depth', async () => {
    const bytes = makeZip([
      { name: 'journal.log', bytes: JOURNAL },
      manifestFile(`${'['.repeat(500_000)}"__proto__"${']'.repeat(500_000)}`),
    ])
    expect(await refusing(bytes)).toBe('foreign')
  })

  test('many files that all are the same bytes', async () => {
    const first = picture('photos/0.jpg', { bytes: Buffer.alloc(4000, 'x') })
    const more = Array.from({ length: 20 }, (_, index) => ({
      ...first,
      name: `photos/${index + 1}.jpg`,
      over: 1,
    }))
    expect(await refusing(archive(first, ...more))).toMatch(/^packed: /)
  })

  test('more files than any job has, by what the end says', async () => {
    const bytes = archive()
    // 4.3.14 and 4.3.15 of the format: the end of large archives, which may say any number of files.
    const end = Buffer.alloc(56 + 20)
    end.writeUInt32LE(0x06064b50, 0)
    end.writeBigUInt64LE(44n, 4)
    end.writeBigUInt64LE(2n ** 40n, 32)
    end.writeUInt32LE(0x07064b50, 56)
    end.writeBigUInt64LE(BigInt(bytes.length - 22), 64)
    expect(await refusing(Buffer.concat([bytes.subarray(0, -22), end, bytes.subarray(-22)]))).toBe(
      'too-large',
    )
  })
})

describe('a list that is not true', () => {
  const withManifest = (manifest: object | string, ...files: ZipFileMade[]) =>
    makeZip([{ name: 'journal.log', bytes: JOURNAL }, ...files, manifestFile(manifest)])
  const text = JSON.stringify(MANIFEST)

  test.each<[string, Buffer, string]>([
    ['is not there', makeZip([{ name: 'journal.log', bytes: JOURNAL }]), 'foreign'],
    ['is no JSON', withManifest('{'), 'foreign'],
    ['is a list', withManifest('[]'), 'foreign'],
    ['is nothing', withManifest(''), 'foreign'],
    ['is of something else', withManifest({ ...MANIFEST, kind: 'a cake' }), 'foreign'],
    ['is of a newer program', withManifest({ ...MANIFEST, version: 2, more: 1 }), 'newer'],
    ['has a key too many', withManifest({ ...MANIFEST, more: 1 }), 'foreign'],
    [
      'has a key __proto__',
      withManifest(text.replace('"missing"', '"__proto__":{"x":1},"missing"')),
      'foreign',
    ],
    ['has one deep down', withManifest(text.replace('"no":7', '"no":7,"\\u005f_proto__":{}')), 'foreign'],
    [
      'has a file of no length',
      withManifest({ ...MANIFEST, files: [{ ...MANIFEST.files[0], bytes: -1 }] }),
      'foreign',
    ],
    [
      'has a sum that is none',
      withManifest({ ...MANIFEST, files: [{ ...MANIFEST.files[0], sha256: 'x' }] }),
      'foreign',
    ],
    ['has no journal', withManifest({ ...MANIFEST, files: [] }), 'missing: journal.log'],
    [
      'names what is not there',
      withManifest({ ...MANIFEST, files: [...MANIFEST.files, listed('photos/x.jpg', JOURNAL)] }),
      'missing: photos/x.jpg',
    ],
    [
      'names itself',
      withManifest({ ...MANIFEST, files: [...MANIFEST.files, listed('manifest.json', JOURNAL)] }),
      'missing: manifest.json',
    ],
    ['does not name all', withManifest(MANIFEST, picture('photos/x.jpg')), 'not-listed: photos/x.jpg'],
    [
      'has another sum',
      withManifest({ ...MANIFEST, files: [{ ...MANIFEST.files[0], sha256: '0'.repeat(64) }] }),
      'changed: journal.log',
    ],
    [
      'has another length',
      withManifest({ ...MANIFEST, files: [{ ...MANIFEST.files[0], bytes: 1 }] }),
      'changed: journal.log',
    ],
    [
      'tells of another job',
      withManifest({ ...MANIFEST, job: { ...MANIFEST.job, id: 'e2' } }),
      'journal: journal.log',
    ],
    [
      'tells of another number',
      withManifest({ ...MANIFEST, job: { ...MANIFEST.job, no: 8 } }),
      'journal: journal.log',
    ],
  ])('it %s', async (_, bytes, why) => {
    expect(await refusing(bytes)).toBe(why)
  })
})

describe('what is no archive, or not all of one', () => {
  const wholeArchive = async () => {
    const home = temporaryFolder()
    const made = await writeArchive(keepJob(home), { folder: home }, { now: new Date(0), program: '0.1.0' })
    return readFileSync(made.path)
  }

  test.each([
    ['nothing', Buffer.alloc(0)],
    ['a text', Buffer.from('putback back-up')],
    ['a picture', Buffer.from([0xff, 0xd8, 0xff, 0xe0])],
    ['an empty archive cut short', Buffer.from('PK\x05\x06')],
  ])('%s', async (_, bytes) => {
    expect(await refusing(bytes)).toBe('not-an-archive')
  })

  test('an archive of nothing', async () => {
    expect(await refusing(makeZip([]))).toBe('foreign')
  })

  test('a whole one cut at each of its last 600 bytes, and at every 97th before', async () => {
    const whole = await wholeArchive()
    for (let length = whole.length - 1; length >= 0; length -= length > whole.length - 600 ? 1 : 97)
      expect(await refusing(whole.subarray(0, length))).toBe('not-an-archive')
  })

  test('one with something behind it', async () => {
    expect(await refusing(Buffer.concat([await wholeArchive(), Buffer.from('x')]))).toBe('not-an-archive')
  })

  test('a folder', async () => {
    const folder = temporaryFolder()
    await expect(openArchive(folder)).rejects.toMatchObject({ code: 'not-an-archive' })
  })
})

test('what is put into an archive comes out under its name, and through no link that lies there', async () => {
  const folder = temporaryFolder()
  const path = join(folder, 'archive.zip')
  writeFileSync(path, archive(picture('photos/x.jpg')))
  const victim = join(folder, 'victim')
  writeFileSync(victim, 'untouched')
  symlinkSync(victim, join(folder, 'x.jpg'))
  const opened = await openArchive(path)
  await expect(opened.copyPictureOut('x.jpg', join(folder, 'x.jpg'))).rejects.toMatchObject({
    code: 'EEXIST',
  })
  opened.close()
  expect(readFileSync(victim, 'utf8')).toBe('untouched')
  expect(Object.keys(contents(folder)).sort()).toEqual(['archive.zip', 'victim', 'x.jpg'])
  expect(readZip(readFileSync(path))).toHaveLength(3)
})
