import { rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import type { PicturesOf } from '../../src/lines/errand.ts'
import { importPhotos } from '../../src/photos/import-photos.ts'
import { type Opener, type OpenOptions, openersFor, openPhotos } from '../../src/photos/open-pictures.ts'
import { sessionWith, tell } from '../session/support/sessions.ts'
import { bag, move, off, strip } from '../support/commands.ts'
import { phone } from '../support/photos/phone.ts'

const bag1 = labelCode(7, 1)
const bag2 = labelCode(7, 2)
const step1 = labelCode(7, 9001)

/** A job with two bags and a step, and pictures of each and of none. */
async function pictured() {
  const session = sessionWith(
    strip('cover off'),
    off(6, 'cover bolts'),
    strip('bracket off'),
    off(4, 'bracket bolts'),
  )
  const camera = phone()
  camera.shot('0.jpg', '09:00:00')
  camera.shot('1.jpg', '10:00:00', bag1)
  camera.shot('2.jpg', '10:01:00')
  camera.shot('3.jpg', '10:02:00', bag2)
  camera.shot('4.jpg', '10:03:00', step1)
  camera.shot('5.jpg', null)
  await importPhotos(session, camera.folder, () => {})
  return { session, photos: join(dirname(session.store.path), 'photos') }
}

const bench = (platform: NodeJS.Platform, { isThere = true, display = ':0' } = {}) => {
  const started: Opener[] = []
  const options: OpenOptions = {
    platform,
    env: { DISPLAY: display },
    start: async (opener) => {
      if (isThere) started.push(opener)
      return isThere
    },
  }
  return { started, options }
}

describe('whose pictures', () => {
  test.each([
    [{ of: 'container', no: 1 }, ['100000', '100100']],
    [{ of: 'container', no: 2 }, ['100200']],
    // Its own, and those of what came off in it.
    [{ of: 'step', no: 1 }, ['100000', '100100', '100300']],
    [{ of: 'piece', piece: 'p1' }, ['100000', '100100']],
    [{ of: 'piece', piece: 'p2' }, ['100200']],
  ] as [PicturesOf, string[]][])('%j', async (of, times) => {
    const { session, photos } = await pictured()
    const { started, options } = bench('linux')
    const outcome = await openPhotos(session, of, options)
    const paths = started.map(({ args }) => args[0])
    expect(paths).toEqual(times.map((time) => expect.stringContaining(join(photos, `20261125-${time}`))))
    expect(outcome.ok && outcome.text).toEqual(paths.map((path) => expect.stringContaining(`${path}`)))
  })

  test('a piece keeps the pictures of the bag that it was in', async () => {
    const { session } = await pictured()
    tell(session, move('p2', bag(1)))
    const { started, options } = bench('linux')
    await openPhotos(session, { of: 'piece', piece: 'p2' }, options)
    expect(started.map(({ args }) => args[0]?.slice(-20, -4))).toEqual(
      ['100000', '100100', '100200'].map((time) => expect.stringContaining(time)),
    )
  })

  test('of the job: all, those first that nobody sorted, of which a few are opened', async () => {
    const { session } = await pictured()
    const { started, options } = bench('linux')
    const outcome = await openPhotos(session, { of: 'job' }, options)
    expect(started).toHaveLength(4)
    const text = outcome.ok ? outcome.text : []
    expect(text).toHaveLength(7)
    expect(text[0]).toMatch(/^g1 {2}2026-11-25 09:00 {2}not sorted yet {2}.*20261125-090000\.jpg$/)
    expect(text[1]).toMatch(/^g6 {2}without a time {2}not sorted yet /)
    expect(text[2]).toMatch(/^g2 {2}2026-11-25 10:00 {2}of bag 1 /)
    expect(text[6]).toBe('4 pictures opened of 6; the others lie beside.')
  })

  test('none', async () => {
    const { session } = await pictured()
    const { options } = bench('linux')
    expect(await openPhotos(session, { of: 'container', no: 3 }, options)).toMatchObject({
      ok: false,
      exit: 'refused',
      code: 'no-pictures',
    })
  })
})

describe('how', () => {
  const path = '/home/a & b/%PATH%/photos/20261125-100000.jpg'
  const cwd = dirname(path)

  test.each([
    ['linux', { program: 'xdg-open', args: [path], cwd }],
    ['darwin', { program: 'open', args: [path], cwd }],
    // The folder is never among the words that this program reads.
    ['win32', { program: 'cmd', args: ['/d', '/c', 'start', '', '20261125-100000.jpg'], cwd }],
  ] as const)('on %s', (platform, opener) => {
    expect(openersFor([path], platform)).toEqual([{ opener, files: 1 }])
  })

  test('a name that is not one of ours is no word for a command processor', () => {
    expect(openersFor(['/photos/a&calc.jpg', '/photos/20261125-100000.jpg&calc.jpg'], 'win32')).toEqual([])
  })

  test('without a screen nothing is started, and the paths are told', async () => {
    const { session } = await pictured()
    const { started, options } = bench('linux', { display: '' })
    const outcome = await openPhotos(session, { of: 'container', no: 2 }, options)
    expect(started).toEqual([])
    expect(outcome.ok && outcome.text.join('\n')).toMatch(/20261125-100200.*\nThere is no screen here/)
  })

  test('with no program for it, the paths are told', async () => {
    const { session } = await pictured()
    const { options } = bench('linux', { isThere: false })
    const outcome = await openPhotos(session, { of: 'container', no: 2 }, options)
    expect(outcome.ok && outcome.text.at(-1)).toMatch(/^No program that opens pictures could be started/)
  })

  test('a copy that is missing is told, and the others are opened', async () => {
    const { session, photos } = await pictured()
    rmSync(join(photos, `20261125-100000-${bag1}.jpg`))
    const { started, options } = bench('linux')
    const outcome = await openPhotos(session, { of: 'container', no: 1 }, options)
    expect(started).toHaveLength(1)
    expect(outcome.ok && outcome.text[0]).toMatch(/its copy is missing: import its folder again$/)
  })
})
