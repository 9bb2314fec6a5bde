import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { temporaryFolder } from '../../storage/support/temporary-folder.ts'
import { jpegOf } from './encode.ts'
import { drawScene } from './scene.ts'

/** A phone's folder, filled by a test: `shot` takes a picture, of a label where one is named. */
export interface Phone {
  folder: string
  shot(name: string, taken: string | null, ...codes: string[]): Uint8Array
  file(name: string, content: Uint8Array | string): void
}

/** An empty folder of a phone. Its pictures are small, and each is another. */
export function phone(): Phone {
  const folder = temporaryFolder()
  let seed = 0
  const file: Phone['file'] = (name, content) => writeFileSync(join(folder, name), content)
  return {
    folder,
    file,
    shot(name, taken, ...codes) {
      seed += 1
      const bytes = picture(seed, taken, codes)
      file(name, bytes)
      return bytes
    },
  }
}

/** A small JPEG of the labels, taken at `2026:11:25` and the time of day. */
export function picture(seed: number, taken: string | null, codes: readonly string[] = []): Uint8Array {
  const labels = codes.map((code, index) => ({ code, x: 150 + 210 * index, y: 140, side: 110, turned: 9 }))
  const scene = drawScene({ width: 500, height: 290, seed, labels })
  return jpegOf(scene, taken === null ? undefined : { dateTimeOriginal: `2026:11:25 ${taken}` })
}
