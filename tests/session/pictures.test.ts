import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { Belongs } from '../../src/journal/entry.ts'
import { allPictures, picturesOf, unsortedPictures } from '../../src/session/pictures.ts'
import { at, bag, endStrip, matchedOff, move, newBag, off, strip } from '../support/commands.ts'
import { given } from '../support/journal.ts'

/** A picture of that name, whose bytes go by its name; `taken` is the hour of a day. */
const picture = (file: string, belongs: Belongs | null, hour?: number): Command => ({
  do: 'add-pictures',
  pictures: [
    {
      file,
      sha256: Buffer.from(file).toString('hex').padStart(64, '0'),
      taken: hour === undefined ? null : `2026-05-02T${String(hour).padStart(2, '0')}:00:00`,
      belongs,
    },
  ],
})

// Bag 1 holds the bracket bolts p1 of step 1, bag 2 the caps p2 and p3 of step 2.
const apart = [
  strip('bracket off'),
  off(6, 'bracket bolt'),
  strip('caps off'),
  matchedOff(['I1', 'I2'], 'cap'),
  endStrip,
]

const names = (pictures: readonly { file: string }[]) => pictures.map(({ file }) => file)

describe('the pictures of', () => {
  const { state } = given(
    ...apart,
    picture('evening', { container: 1 }, 18),
    picture('no time', { container: 1 }),
    picture('morning', { container: 1 }, 8),
    picture('caps', { container: 2 }, 9),
    picture('bracket', { step: 1 }, 7),
    picture('where is this?', null, 6),
  )

  test('a container, in the order in which they were taken', () => {
    expect(names(picturesOf(state, { container: 1 }))).toEqual(['morning', 'evening', 'no time'])
    expect(names(picturesOf(state, { container: 2 }))).toEqual(['caps'])
    expect(picturesOf(state, { container: 9 })).toEqual([])
  })

  test('a piece: those of its container', () => {
    expect(names(picturesOf(state, { piece: 'p1' }))).toEqual(['morning', 'evening', 'no time'])
    expect(names(picturesOf(state, { piece: 'p3' }))).toEqual(['caps'])
  })

  test('a step: its own, and those of its pieces', () => {
    expect(names(picturesOf(state, { step: 1 }))).toEqual(['bracket', 'morning', 'evening', 'no time'])
    expect(names(picturesOf(state, { step: 2 }))).toEqual(['caps'])
  })

  test('the job: all of them, and those that nobody has sorted', () => {
    expect(names(allPictures(state))).toEqual([
      'where is this?',
      'bracket',
      'morning',
      'caps',
      'evening',
      'no time',
    ])
    expect(names(unsortedPictures(state))).toEqual(['where is this?'])
  })
})

describe('a piece keeps the pictures of where it lay', () => {
  test('when it moves on, and has those of its new container too', () => {
    const { state } = given(
      ...apart,
      picture('in bag 2', { container: 2 }, 8),
      move('p2', newBag),
      picture('in bag 3', { container: 3 }, 9),
      picture('bag 2 without it', { container: 2 }, 10),
    )
    expect(names(picturesOf(state, { piece: 'p2' }))).toEqual(['in bag 2', 'in bag 3'])
    expect(names(picturesOf(state, { piece: 'p3' }))).toEqual(['in bag 2', 'bag 2 without it'])
    expect(names(picturesOf(state, { step: 2 }))).toEqual(['in bag 2', 'in bag 3', 'bag 2 without it'])
  })

  test('when it goes to the bench', () => {
    const { state } = given(...apart, picture('in bag 1', { container: 1 }), move('p1', at('bench')))
    expect(names(picturesOf(state, { piece: 'p1' }))).toEqual(['in bag 1'])
  })

  test('and has those of a label that was photographed before it was used', () => {
    const { state } = given(
      strip('cover off'),
      { do: 'deal-labels', count: 3 },
      picture('label 2', { container: 2 }),
      off(4, 'cover bolt', { into: bag(2) }),
    )
    expect(names(picturesOf(state, { piece: 'p1' }))).toEqual(['label 2'])
  })

  test('once the picture is sorted', () => {
    const sort = (belongs: Belongs | 'none'): Command => ({ do: 'sort-picture', picture: 'g1', belongs })
    const of = (...more: Command[]) =>
      names(picturesOf(given(...apart, picture('lid', null), ...more).state, { piece: 'p1' }))
    expect(of()).toEqual([])
    expect(of(sort({ container: 1 }))).toEqual(['lid'])
    expect(of(sort({ container: 1 }), sort('none'))).toEqual([])
    expect(of(sort({ container: 1 }), { do: 'undo' })).toEqual([])
  })
})
