import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { chmodSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { lookAtFile } from '../../src/photos/look-at-file.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { phone } from '../support/photos/phone.ts'

const bag1 = labelCode(7, 1)

test('a picture, by its bytes, its time and its labels', async () => {
  const camera = phone()
  const bytes = camera.shot('no-extension', '10:11:12', bag1)
  expect(await lookAtFile(join(camera.folder, 'no-extension'))).toEqual({
    kind: 'picture',
    format: 'jpeg',
    sha256: createHash('sha256').update(bytes).digest('hex'),
    taken: { local: '2026-11-25T10:11:12', fraction: '', offset: null },
    written: expect.stringMatching(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/),
    codes: [bag1],
    unreadable: false,
  })
})

test('coded data that makes no sense, in a frame that is whole', async () => {
  const camera = phone()
  const bytes = camera.shot('a.jpg', null)
  // Every table and every row is gone; the markers stand.
  const frame = bytes.map((byte, at) =>
    at > 20 && at < bytes.length - 2 && byte !== 0xff ? byte & 0xf0 : byte,
  )
  camera.file('a.jpg', frame)
  expect((await lookAtFile(join(camera.folder, 'a.jpg'))).kind).not.toBe('picture')
})

test('a file that is not there', async () => {
  const look = await lookAtFile(join(temporaryFolder(), 'gone.jpg'))
  expect(look).toEqual({ kind: 'broken', why: 'unreadable', errno: 'ENOENT' })
})

test.skipIf(process.platform === 'win32' || process.getuid?.() === 0)(
  'one that may not be read',
  async () => {
    const path = join(temporaryFolder(), 'a.jpg')
    writeFileSync(path, '')
    chmodSync(path, 0)
    expect(await lookAtFile(path)).toEqual({ kind: 'broken', why: 'unreadable', errno: 'EACCES' })
  },
)

test.skipIf(process.platform === 'win32')(
  'a pipe or a link in the place of a file is not waited for or followed',
  async () => {
    const folder = temporaryFolder()
    const camera = phone()
    camera.shot('a.jpg', null)
    execFileSync('/usr/bin/env', ['mkfifo', join(folder, 'pipe.jpg')])
    symlinkSync(join(camera.folder, 'a.jpg'), join(folder, 'link.jpg'))
    expect(await lookAtFile(join(folder, 'pipe.jpg'))).toEqual({ kind: 'other' })
    expect(await lookAtFile(join(folder, 'link.jpg'))).toEqual({
      kind: 'broken',
      why: 'unreadable',
      errno: 'ELOOP',
    })
  },
)
