import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { build } from 'esbuild'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { importPhotos } from '../../src/photos/import-photos.ts'
import { openLookers } from '../../src/photos/lookers.ts'
import { sessionWith } from '../session/support/sessions.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import { off, strip } from '../support/commands.ts'
import { phone } from '../support/photos/phone.ts'

const bag1 = labelCode(7, 1)
// Within the repository, so that the packages are found, and where nothing is kept.
const folder = join('node_modules', '.cache', `putback-lookers-${process.pid}`)
const worker = join(folder, 'decode-worker.mjs')

beforeAll(async () => {
  await build({
    entryPoints: ['src/photos/decode-worker.ts'],
    outfile: worker,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
  })
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('threads import a folder as the thread that calls does', async () => {
  const camera = phone()
  for (let index = 0; index < 6; index += 1)
    camera.shot(`IMG_${index}.jpg`, `10:00:0${index}`, ...(index === 1 ? [bag1] : []))
  camera.file('broken.jpg', 'no picture')
  const outcomes = []
  for (const lookers of [openLookers(pathToFileURL(worker)), openLookers(pathToFileURL('nowhere.mjs'))]) {
    const session = sessionWith(strip('cover off'), off(6, 'bolts'))
    const outcome = await importPhotos(session, camera.folder, () => {}, { lookers })
    outcomes.push({ ok: outcome.ok, pictures: [...session.state.pictures.values()] })
  }
  expect(outcomes[0]?.pictures).toHaveLength(6)
  expect(outcomes[0]).toEqual(outcomes[1])
})

test('a thread that dies on a picture costs that picture, and no other', async () => {
  const dying = join(temporaryFolder(), 'dying.mjs')
  writeFileSync(
    dying,
    `import { parentPort } from 'node:worker_threads'
    parentPort.on('message', (path) => {
      if (path.includes('bad')) throw new Error('out of memory')
      if (path.includes('worse')) process.exit(1)
      parentPort.postMessage({ kind: 'other' })
    })`,
  )
  const lookers = openLookers(pathToFileURL(dying))
  const looks = await Promise.all(
    ['1', 'bad', '2', 'worse', '3', 'bad', '4'].map((path) => lookers.look(path)),
  )
  await lookers.close()
  const lost = { kind: 'broken', why: 'undecodable' }
  const fine = { kind: 'other' }
  expect(looks).toEqual([fine, lost, fine, lost, fine, lost, fine])
})
