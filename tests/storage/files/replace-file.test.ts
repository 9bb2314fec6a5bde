import { spawnSync } from 'node:child_process'
import { lstatSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { replaceFile } from '../../../src/storage/files/replace-file.ts'
import { slugOf } from '../../../src/storage/job-slug.ts'
import { faultyFileSystem } from '../support/faulty-file-system.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

test('the bytes stand in the place of the file, whether or not there was one', () => {
  const path = join(temporaryFolder(), 'file')
  replaceFile(path, Buffer.from('first, and longer'))
  replaceFile(path, Buffer.from('second'))
  expect(readFileSync(path, 'utf8')).toBe('second')
})

test.skipIf(process.platform === 'win32')('is for this user only, whatever the old one was', () => {
  const path = join(temporaryFolder(), 'file')
  writeFileSync(path, 'old', { mode: 0o644 })
  replaceFile(path, Buffer.from('new'))
  expect(statSync(path).mode & 0o777).toBe(0o600)
})

test.skipIf(process.platform === 'win32')('a link there is replaced, and what it led to stays', () => {
  const folder = temporaryFolder()
  writeFileSync(join(folder, 'other'), 'not ours')
  symlinkSync('other', join(folder, 'file'))
  replaceFile(join(folder, 'file'), Buffer.from('ours'))
  expect(readFileSync(join(folder, 'other'), 'utf8')).toBe('not ours')
  expect(lstatSync(join(folder, 'file')).isFile()).toBe(true)
})

test('every call failing in turn: the old bytes or the new ones, no draft, and the error names the file', () => {
  for (let at = 1; ; at += 1) {
    const folder = temporaryFolder()
    const path = join(folder, 'file')
    writeFileSync(path, 'old')
    const fs = faultyFileSystem()
    fs.plant({ at, errno: 'ENOSPC' })
    const said = failureOf(() => replaceFile(path, Buffer.from('new'), fs))
    const holds = readFileSync(path, 'utf8')
    expect(readdirSync(folder), `call ${at}: ${fs.hit}`).toEqual(['file'])
    if (fs.hit === null) {
      expect([at > 5, said, holds]).toEqual([true, null, 'new'])
      return
    }
    if (said === null) expect(holds, `call ${at}: ${fs.hit}`).toBe('new')
    else expect(['old', 'new']).toContain(holds)
    if (holds === 'old') expect(said).toMatchObject({ code: 'ENOSPC', path })
  }
})

test('what killed programs left is cleared away; drafts of others, and what only looks like one, stay', () => {
  const folder = temporaryFolder()
  const path = join(folder, '.chosen')
  const host = slugOf(hostname())
  const { pid: dead } = spawnSync(process.execPath, ['--version'])
  const kept = [
    `.chosen.${host}-${process.ppid}-1.tmp`,
    `.chosen.another-computer-${dead}-1.tmp`,
    `.chosen.${host}-${dead}-1.txt`,
    `.chosen.${host}-mine.tmp`,
    `.chosen-too.${host}-${dead}-1.tmp`,
  ]
  for (const name of [...kept, `.chosen.${host}-${dead}-1.tmp`, `.chosen.${host}-${dead}-27.tmp`])
    writeFileSync(join(folder, name), 'half')
  replaceFile(path, Buffer.from('new'))
  expect(readdirSync(folder).sort()).toEqual(['.chosen', ...kept].sort())
})

function failureOf(work: () => void): unknown {
  try {
    work()
    return null
  } catch (error) {
    return error
  }
}
