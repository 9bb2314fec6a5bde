import { mkdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { backupsFolder } from '../../../src/storage/backup/backups-folder.ts'
import { faultyFileSystem } from '../support/faulty-file-system.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

test('is made for this user alone', () => {
  const home = temporaryFolder()
  const folder = backupsFolder(home)
  expect(folder).toBe(join(home, 'backups'))
  expect(statSync(folder).isDirectory()).toBe(true)
  if (process.platform !== 'win32') expect(statSync(folder).mode & 0o777).toBe(0o700)
})

test.each(['new', 'there already'])('%s: its name is on the disk, or it is not answered', (which) => {
  const home = temporaryFolder()
  if (which === 'there already') mkdirSync(join(home, 'backups'))
  const fs = faultyFileSystem()
  fs.plantIn('fsyncSync', 'EIO')
  expect(() => backupsFolder(home, fs)).toThrow(expect.objectContaining({ code: 'EIO' }))
  expect(backupsFolder(home, fs)).toBe(join(home, 'backups'))
})
