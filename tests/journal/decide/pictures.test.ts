import { describe, expect, test } from 'vitest'
import type { Command, NewPicture } from '../../../src/journal/command.ts'
import { parseEntry } from '../../../src/journal/entry.ts'
import { at, bag, clear, endStrip, move, off, stop, strip, undo } from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

/** A picture whose bytes go by a number. */
const picture = (bytes: number, more: Partial<NewPicture> = {}): NewPicture => ({
  file: `${bytes}.jpg`,
  sha256: `${bytes}`.padStart(64, '0'),
  taken: null,
  belongs: null,
  ...more,
})
const add = (...pictures: NewPicture[]): Command => ({ do: 'add-pictures', pictures })
const sort = (
  picture: `g${number}`,
  belongs: Extract<Command, { do: 'sort-picture' }>['belongs'],
): Command => ({
  do: 'sort-picture',
  picture,
  belongs,
})

describe('a picture', () => {
  test('enters with a number of its own, and none is dealt twice', () => {
    const job = given(add(picture(1), picture(2)), undo, add(picture(1)))
    expect([...job.state.pictures.keys()]).toEqual(['g3'])
    expect(job.state.pictures.get('g3')).toEqual({ id: 'g3', ...picture(1), pieces: [] })
  })

  test('is known by its bytes, whatever it is called', () => {
    const job = given(add(picture(1), picture(2)))
    job.when(add(picture(3), picture(2, { file: 'copy.jpg' }))).refuses('picture-known', {
      file: 'copy.jpg',
      picture: 'g2',
    })
    job
      .and(undo)
      .when(add(picture(2)))
      .makes('pictures-added')
    job.when(add(picture(4), picture(4, { file: 'b.jpg' }))).refuses('picture-wrong', { why: 'twice' })
    job.when(add(picture(4), picture(5, { file: '4.JPG' }))).refuses('picture-wrong', { why: 'twice' })
    job.when(add(picture(5, { file: '1.JPG' }))).refuses('picture-wrong', { why: 'twice' })
  })

  test.each([
    '',
    '.hidden.jpg',
    '..',
    'photos/1.jpg',
    '..\\journal.jsonl',
    'C:1.jpg',
    'a\u001b[2J.jpg',
    'a\u202egpj.exe',
    `${'x'.repeat(117)}.jpg`,
  ])('is never called %j', (file) => {
    given()
      .when(add(picture(1, { file })))
      .refuses('picture-wrong', { why: 'file' })
  })

  test.each(['1.jpg', 'Zylinderkopf außen.heic', 'κεφαλή.png', `${'x'.repeat(116)}.jpg`])(
    'may be called %j',
    (file) => {
      const { entries } = given()
        .when(add(picture(1, { file })))
        .makes('pictures-added')
      expect(parseEntry(JSON.parse(JSON.stringify(entries.at(-1))))).toEqual(entries.at(-1))
    },
  )

  test.each<[string, Partial<NewPicture>, string]>([
    ['a checksum cut short', { sha256: 'ab' }, 'sha256'],
    ['a checksum in capitals', { sha256: 'A'.repeat(64) }, 'sha256'],
    ['a date of no calendar', { taken: '2026-13-40T00:00:00' }, 'taken'],
    ['a date as a camera writes it', { taken: '2026:05:02 14:03:11' }, 'taken'],
    ['container 0', { belongs: { container: 0 } }, 'belongs'],
  ])('does not come with %s', (_, more, why) => {
    given()
      .when(add(picture(1, more)))
      .refuses('picture-wrong', { why })
  })

  test.each(['2026-05-02T14:03:11', '2026-05-02T14:03:11.250', '2026-05-02T14:03:11+02:00', null])(
    'comes with the time %j',
    (taken) => {
      given()
        .when(add(picture(1, { taken })))
        .makes('pictures-added')
    },
  )

  test('comes with others, at least one and at most 1000', () => {
    given().when(add()).refuses('count-wrong')
    const many = Array.from({ length: 1001 }, (_, index) => picture(index))
    given()
      .when(add(...many))
      .refuses('count-wrong', { count: 1001 })
    given()
      .when(add(...many.slice(1)))
      .makes('pictures-added')
  })
})

describe('what a picture shows', () => {
  const job = given(strip('cover off'), off(4, 'bolts'), { do: 'deal-labels', count: 3 })

  test('is a container, an unused label, a step, or still to be asked', () => {
    job.when(add(picture(1, { belongs: { container: 1 } }))).makes('pictures-added')
    job.when(add(picture(1, { belongs: { container: 2 } }))).makes('pictures-added')
    job.when(add(picture(1, { belongs: { step: 1 } }))).makes('pictures-added')
    job.when(add(picture(1, { belongs: { container: 9 } }))).refuses('unknown', { what: 'container' })
    job.when(add(picture(1, { belongs: { step: 9 } }))).refuses('unknown', { what: 'step' })
    const torn = job.and({ do: 'void-container', container: 2, reason: 'torn' })
    torn.when(add(picture(1, { belongs: { container: 2 } }))).refuses('container-void')
  })

  test('is said later, and said again', () => {
    const added = job.and(add(picture(1)))
    const sorted = added.and(sort('g1', { container: 1 }))
    expect(sorted.state.pictures.get('g1')).toMatchObject({ belongs: { container: 1 }, pieces: ['p1'] })
    expect(sorted.and(sort('g1', { step: 1 })).state.pictures.get('g1')).toMatchObject({
      belongs: { step: 1 },
      pieces: [],
    })
    expect(sorted.and(sort('g1', 'none')).state.pictures.get('g1')?.belongs).toBe('none')
    expect(sorted.and(undo).state.pictures.get('g1')?.belongs).toBeNull()
    added.when(sort('g9', 'none')).refuses('unknown', { what: 'picture', id: 'g9' })
    added.when(sort('g1', { container: 9 })).refuses('unknown', { what: 'container' })
  })

  test('is noted with the pieces that were in the container then', () => {
    const noted = job.and(add(picture(1, { belongs: { container: 1 } })), endStrip, move('p1', at('bench')))
    expect(noted.state.pictures.get('g1')?.pieces).toEqual(['p1'])
    const later = job.and(add(picture(1, { belongs: { container: 2 } })), off(2, 'nuts', { into: bag(2) }))
    expect(later.state.pictures.get('g1')?.pieces).toEqual([])
  })
})

test('pictures leave the clearance and the card, and come in when the job is closed', () => {
  const home: Command[] = [
    off(1, 'bolt', { into: at('bench') }),
    endStrip,
    { do: 'fit', fittings: [{ piece: 'p1' }] },
    { do: 'close-step' },
    clear,
  ]
  expect(given(...home, add(picture(1)), sort('g1', 'none')).state.cleared).toBe(true)
  expect(given(stop(), add(picture(1)), sort('g1', 'none')).state.card).not.toBeNull()
  given(...home, { do: 'first-start' }, { do: 'close-job' }, add(picture(1)))
    .when(sort('g1', 'none'))
    .makes('picture-sorted')
})
