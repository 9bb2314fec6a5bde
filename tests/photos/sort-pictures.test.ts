import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { readTaken } from '../../src/photos/capture-time.ts'
import {
  type KnownLabels,
  type SeenPicture,
  type Sorted,
  sortPictures,
} from '../../src/photos/sort-pictures.ts'

const labels: KnownLabels = {
  job: 7,
  containers: new Map<number, 'valid' | { voidFor: number | null }>([
    [1, 'valid'],
    [2, 'valid'],
    [3, { voidFor: 2 }],
  ]),
  steps: new Set([1]),
}
const bag1 = labelCode(7, 1)
const bag2 = labelCode(7, 2)
const voided = labelCode(7, 3)
const unknown = labelCode(7, 88)
const machine = labelCode(7, 9000)
const step1 = labelCode(7, 9001)
const elsewhere = labelCode(8, 1)

/** `10:00`, `10:00:01.5+02:00` on one day, or with `26 ` before it on another; what the picture shows. */
function picture(name: string, when: string | null, ...codes: string[]): SeenPicture {
  const unreadable = codes.includes('?')
  const read = codes.filter((code) => code !== '?')
  const match = /^(?:(\d\d) )?(\d\d:\d\d)(:\d\d)?(?:\.(\d+))?([+-].*)?$/.exec(when ?? '')
  const [, day = '25', minutes = '', seconds = ':00', fraction, offset] = match ?? []
  const taken =
    when === null
      ? null
      : readTaken({
          DateTimeOriginal: `2026:11:${day} ${minutes}${seconds}`,
          SubSecTimeOriginal: fraction,
          OffsetTimeOriginal: offset,
        })
  if (when !== null && taken === null) throw new Error(`no time: ${when}`)
  return { name, taken, codes: read, unreadable }
}

/** Each picture in the order of the answer, with what it belongs to or why that is in doubt. */
const told = (sorted: readonly Sorted<SeenPicture>[]) =>
  sorted.map(({ picture: { name }, owner, doubt }) => {
    if (doubt) return `${name} ? ${doubt.why}`
    if (owner === 'none') return `${name} job`
    return `${name} ${'step' in owner ? `step ${owner.step}` : `bag ${owner.container}`}`
  })
const sort = (...pictures: SeenPicture[]) => told(sortPictures(pictures, labels))

describe('pictures after a label', () => {
  test('belong to it until the next, in the order in which they were taken', () => {
    expect(
      sort(
        picture('a', '10:04'),
        picture('b', '10:00', bag1),
        picture('c', '10:03', bag2),
        picture('d', '10:01'),
        picture('e', '10:05', step1),
        picture('f', '10:06'),
        picture('g', '10:07', machine),
        picture('h', '10:08'),
      ),
    ).toEqual(['b bag 1', 'd bag 1', 'c bag 2', 'a bag 2', 'e step 1', 'f step 1', 'g job', 'h job'])
  })

  test('are in doubt before the first one', () => {
    expect(sort(picture('a', '10:00'), picture('b', '10:01', bag1))).toEqual([
      'a ? before-first-label',
      'b bag 1',
    ])
  })

  test.each([
    ['several labels', [bag1, bag2], 'several-labels'],
    ['one of ours and one of another job', [bag1, elsewhere], 'several-labels'],
    ['a label of another job', [elsewhere], 'other-job'],
    ['a number that was not dealt', [unknown], 'not-dealt'],
    ['a step that there is not', [labelCode(7, 9002)], 'not-dealt'],
    ['a void label', [voided], 'void'],
    ['a symbol that cannot be read', ['?'], 'unreadable-label'],
  ])('are in doubt after %s, up to the next', (_, codes, why) => {
    expect(
      sort(
        picture('a', '10:00', bag1),
        picture('b', '10:01', ...codes),
        picture('c', '10:02'),
        picture('d', '10:03', bag2),
        picture('e', '10:04'),
      ),
    ).toEqual(['a bag 1', `b ? ${why}`, 'c ? after-doubtful', 'd bag 2', 'e bag 2'])
  })

  test('are in doubt more than twelve hours after it, however many are between', () => {
    expect(
      sort(
        picture('a', '10:00', bag1),
        picture('b', '22:00'),
        picture('c', '22:00:01'),
        picture('d', '26 09:00'),
        picture('e', '26 09:01', bag1),
        picture('f', '26 09:02'),
      ),
    ).toEqual(['a bag 1', 'b bag 1', 'c ? long-after', 'd ? long-after', 'e bag 1', 'f bag 1'])
  })

  test('and without a time are in doubt, and so is a label without one: it opens nothing', () => {
    expect(
      sort(picture('b', null), picture('a', null, bag2), picture('c', '10:00', bag1), picture('d', '10:01')),
    ).toEqual(['c bag 1', 'd bag 1', 'a ? no-time', 'b ? no-time'])
  })
})

describe('the order', () => {
  test('is that of the moments where all have an offset', () => {
    expect(
      sort(
        picture('label 1', '12:00+02:00', bag1),
        picture('in between', '10:01+00:00'),
        picture('label 2', '11:02+01:00', bag2),
      ),
    ).toEqual(['label 1 bag 1', 'in between bag 1', 'label 2 bag 2'])
  })

  test('is that of the clock of the camera where all offsets are one, or there is none', () => {
    expect(
      sort(
        picture('label 1', '12:00+02:00', bag1),
        picture('before it', '10:01'),
        picture('after it', '12:01+02:00'),
      ),
    ).toEqual(['before it ? before-first-label', 'label 1 bag 1', 'after it bag 1'])
  })

  test('is not known of a picture without an offset where the clock was changed', () => {
    // In one hour of work the clocks went back: 12:05+01:00 is later than 11:30+01:00, and 12:00+02:00 before both.
    expect(
      sort(
        picture('label 1', '12:00+02:00', bag1),
        picture('label 2', '11:30+01:00', bag2),
        picture('after label 2', '12:05+01:00'),
        picture('before both', '11:50'),
        picture('label 3', '11:20', bag1),
      ),
    ).toEqual([
      'label 1 bag 1',
      'label 2 bag 2',
      'after label 2 bag 2',
      'before both ? no-zone',
      'label 3 ? no-zone',
    ])
  })

  test('goes by parts of a second, as many digits as there are', () => {
    expect(
      sort(picture('a', '10:00:00.1', bag1), picture('b', '10:00:00.09'), picture('c', '10:00:00.10001')),
    ).toEqual(['b ? before-first-label', 'a bag 1', 'c bag 1'])
  })

  test('goes by name, counted as a person does, where the time is the same', () => {
    expect(
      sort(picture('IMG_9', '10:00', bag1), picture('IMG_11', '10:02'), picture('IMG_10', '10:02')),
    ).toEqual(['IMG_9 bag 1', 'IMG_10 bag 1', 'IMG_11 bag 1'])
  })
})

describe('in one moment with a label', () => {
  test('a picture is in doubt, whichever side of it its name puts it', () => {
    expect(
      sort(
        picture('1', '10:00', bag1),
        picture('2', '10:05'),
        picture('3', '10:05', bag2),
        picture('4', '10:05'),
        picture('5', '10:06'),
      ),
    ).toEqual(['1 bag 1', '2 ? same-moment', '3 bag 2', '4 ? same-moment', '5 bag 2'])
  })

  test('it is certain where both sides are the same, or the parts of the second say', () => {
    expect(sort(picture('1', '10:00', bag1), picture('2', '10:05', bag1), picture('3', '10:05'))).toEqual([
      '1 bag 1',
      '2 bag 1',
      '3 bag 1',
    ])
    expect(
      sort(picture('1', '10:00:00.1', bag1), picture('2', '10:00:00.2', bag2), picture('3', '10:00:00.3')),
    ).toEqual(['1 bag 1', '2 bag 2', '3 bag 2'])
  })

  test('the same label a day before says nothing of a picture beside it', () => {
    const seen = [picture('1', '10:00', step1), picture('3', '26 21:00', step1)]
    expect(sort(...seen, picture('4', '26 21:00'))).toEqual(['1 step 1', '3 step 1', '4 ? same-moment'])
    expect(sort(...seen, picture('2', '26 21:00'))).toEqual(['1 step 1', '2 ? long-after', '3 step 1'])
  })

  test('after two labels nobody knows which was the later', () => {
    expect(sort(picture('1', '10:00', bag1), picture('2', '10:00', bag2), picture('3', '10:01'))).toEqual([
      '1 bag 1',
      '2 bag 2',
      '3 ? after-doubtful',
    ])
  })
})

const shows = fc.constantFrom(
  [],
  [],
  [],
  [],
  [bag1],
  [bag2],
  [step1],
  [machine],
  [bag1, bag2],
  [elsewhere],
  [voided],
  [unknown],
  ['?'],
)
const times = fc.oneof(
  { weight: 9, arbitrary: fc.integer({ min: 0, max: 59 }).map((m) => `10:${String(m).padStart(2, '0')}`) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 23 }).map((h) => `26 ${String(h).padStart(2, '0')}:00`) },
  { weight: 1, arbitrary: fc.constant(null) },
)
const folders = fc
  .array(fc.tuple(times, shows), { maxLength: 25 })
  .map((rows) => rows.map(([when, codes], index) => picture(`IMG_${index}`, when, ...codes)))

describe('whatever lies in the folder', () => {
  test('each picture is answered once: either with what it belongs to, or with a doubt', () => {
    fc.assert(
      fc.property(folders, (pictures) => {
        const sorted = sortPictures(pictures, labels)
        expect(sorted.map(({ picture: { name } }) => name).sort()).toEqual(
          pictures.map(({ name }) => name).sort(),
        )
        for (const { owner, code, doubt } of sorted) {
          expect(owner === null).toBe(doubt !== null)
          expect(code === null).toBe(doubt !== null)
        }
      }),
    )
  })

  test('the order of the files, and their names, change nothing that is certain', () => {
    const renamed = folders.chain((pictures) =>
      fc.tuple(
        fc.constant(pictures),
        fc.shuffledSubarray(
          pictures.map(({ name }) => name),
          { minLength: pictures.length },
        ),
      ),
    )
    fc.assert(
      fc.property(renamed, ([pictures, names]) => {
        const ownerOf = new Map(sortPictures(pictures, labels).map((one) => [one.picture.name, one.owner]))
        const again = pictures.map((one, index) => ({ ...one, was: one.name, name: names[index] ?? '' }))
        for (const { picture, owner } of sortPictures(again.reverse(), labels))
          expect(owner).toEqual(ownerOf.get(picture.was))
      }),
    )
  })

  test('what is certain is what a plain walk says that knows no doubt but these', () => {
    fc.assert(
      fc.property(folders, (pictures) => {
        const sorted = new Map(sortPictures(pictures, labels).map((one) => [one.picture.name, one]))
        for (const one of pictures) {
          const answer = sorted.get(one.name)
          if (!answer || answer.owner === null) continue
          // The last label up to that moment, among all, is one and is that of the answer.
          const time = (seen: SeenPicture) => `${seen.taken?.local}`
          const isLabel = (seen: SeenPicture) => seen.codes.length > 0 || seen.unreadable
          const before = pictures.filter((seen) => seen.taken && isLabel(seen) && time(seen) <= time(one))
          const last = before.map(time).sort().at(-1)
          const candidates = isLabel(one) ? [one] : before.filter((seen) => time(seen) === last)
          expect(new Set(candidates.map(({ codes }) => codes.join()))).toEqual(new Set([answer.code]))
        }
      }),
    )
  })

  test('a label that nobody took a picture of changes nothing for the others', () => {
    fc.assert(
      fc.property(folders, (pictures) => {
        const more = { ...labels, containers: new Map([...labels.containers, [4, 'valid'] as const]) }
        expect(told(sortPictures(pictures, more))).toEqual(told(sortPictures(pictures, labels)))
      }),
    )
  })
})
