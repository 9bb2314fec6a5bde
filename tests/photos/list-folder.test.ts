import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { listFolder } from '../../src/photos/list-folder.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'

test('files in the order in which a person counts; what is no file is only counted', async () => {
  const folder = temporaryFolder()
  for (const name of ['IMG_10.jpg', 'IMG_9.jpg', 'img_9.png', 'DSC1.jpg'])
    writeFileSync(join(folder, name), '')
  mkdirSync(join(folder, 'older'))
  writeFileSync(join(folder, 'older', 'IMG_1.jpg'), '')
  symlinkSync(join(folder, 'IMG_9.jpg'), join(folder, 'link.jpg'))
  expect(await listFolder(folder)).toEqual({
    files: ['DSC1.jpg', 'IMG_9.jpg', 'img_9.png', 'IMG_10.jpg'],
    folders: 1,
    links: 1,
    others: 0,
  })
})
