import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import { labelCode } from '../../src/label/code.ts'
import { importPhotos } from '../../src/photos/import-photos.ts'
import { openLookers } from '../../src/photos/lookers.ts'
import { jpegOf } from '../../tests/support/photos/encode.ts'
import { drawScene } from '../../tests/support/photos/scene.ts'
import { madeUpEntries, openSession, writtenJob } from '../jobs.ts'
import { type Printer, ratio } from '../measure.ts'
import { PROGRAM } from '../program.ts'

const PICTURES = 12

/**
 * A folder of pictures of 12 million pixels, one in four of a label, from the phone into the record: by the thread of
 * the built program, beside the decoder alone on the same bytes in memory, once with what it does by default.
 */
export async function run({ print }: Printer): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-bench-photos-'))
  const names = makePictures(folder)
  const peer = await decoderAlone(names.map((name) => readFileSync(join(folder, name))))
  const { first, again, sorted } = await importTwice(folder)
  const perSecond = (ms: number) => `${((PICTURES * 1000) / ms).toFixed(2)} pictures a second`
  print(`decoder alone, as it comes  ${perSecond(peer)}`)
  print(
    `import                      ${perSecond(first)}, ${ratio(first, peer)} the time; ${sorted} of ${PICTURES} sorted`,
  )
  print(`import once more            ${perSecond(again)}, ${ratio(again, peer)} the time, nothing copied`)
  rmSync(folder, { recursive: true, force: true })
}

function makePictures(folder: string): string[] {
  return Array.from({ length: PICTURES }, (_, index) => {
    const labels =
      index % 4 === 0
        ? [{ code: labelCode(1, 1 + index / 4), x: 1900, y: 1500, side: 420, turned: 20 * index }]
        : []
    const scene = drawScene({ width: 4032, height: 3024, seed: index + 1, blur: 2, labels })
    const minute = String(index).padStart(2, '0')
    const name = `IMG_${minute}.jpg`
    writeFileSync(join(folder, name), jpegOf(scene, { dateTimeOriginal: `2026:11:25 10:${minute}:00` }))
    return name
  })
}

async function decoderAlone(pictures: readonly Buffer[]): Promise<number> {
  const wasm = createRequire(join(dirname(PROGRAM), '..', 'package.json')).resolve(
    'zxing-wasm/reader/zxing_reader.wasm',
  )
  await prepareZXingModule({
    overrides: { wasmBinary: new Uint8Array(readFileSync(wasm)).buffer },
    fireImmediately: true,
  })
  const from = performance.now()
  for (const bytes of pictures) await readBarcodes(bytes, { formats: ['QRCode'] })
  return performance.now() - from
}

async function importTwice(folder: string): Promise<{ first: number; again: number; sorted: number }> {
  const job = writtenJob(madeUpEntries(100))
  const session = openSession(job.path)
  const taken: number[] = []
  for (let round = 0; round < 2; round += 1) {
    const lookers = openLookers(pathToFileURL(join(dirname(PROGRAM), 'decode-worker.js')))
    const from = performance.now()
    const outcome = await importPhotos(session, folder, () => {}, { lookers })
    taken.push(performance.now() - from)
    if (!outcome.ok) throw new Error(outcome.code)
  }
  const sorted = [...session.state.pictures.values()].filter(({ belongs }) => belongs !== null).length
  job.remove()
  return { first: taken[0] ?? 0, again: taken[1] ?? 0, sorted }
}
