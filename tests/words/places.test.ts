import { describe, expect, test } from 'vitest'
import { NAMED_PLACES, type Place } from '../../src/ledger/place.ts'
import {
  containerName,
  containerPath,
  containerPlace,
  goneText,
  intoName,
  placeName,
  whereName,
} from '../../src/words/places.ts'
import { at, job, move, off, open } from '../errors/commands.ts'
import { play } from '../errors/play.ts'

const { state } = play([
  job,
  open('shelf'),
  open('bin', undefined, 1),
  open('tray', 12, 2),
  { do: 'open-container', kind: 'bag', name: 'exhaust nuts', inside: 2 },
  open('tag'),
])

describe('places', () => {
  const names = (place: Place) => [placeName(state, place), whereName(state, place), intoName(state, place)]

  test.each<[Place, string, string, string]>([
    ['c4', 'bag 4', 'in bag 4', 'into bag 4'],
    ['c3/5', 'tray 3, slot 5', 'in tray 3, slot 5', 'into tray 3, slot 5'],
    ['c1', 'shelf 1', 'on shelf 1', 'onto shelf 1'],
    ['c5', 'tag 5', 'on tag 5', 'onto tag 5'],
    ['c99', 'container 99', 'in container 99', 'into container 99'],
    ['machine', 'the machine', 'on the machine', 'onto the machine'],
    ['bench', 'the bench', 'on the bench', 'onto the bench'],
    ['toolbox', 'the toolbox', 'in the toolbox', 'into the toolbox'],
    ['out', 'out', 'out', 'out'],
    ['supplier', 'a supplier', 'at a supplier', 'to a supplier'],
    ['spare', 'spare', 'among the spares', 'to the spares'],
    ['scrap', 'scrap', 'in scrap', 'to scrap'],
    ['lost', 'lost', 'lost', 'to lost'],
  ])('%s', (place, ...said) => {
    expect(names(place)).toEqual(said)
  })

  test('every place that has a name of its own is said in words of its own', () => {
    const said = NAMED_PLACES.map((place) => placeName(state, place))
    expect(new Set(said).size).toBe(NAMED_PLACES.length)
  })

  test('what a place names', () => {
    expect([containerPlace('c3/5'), containerPlace('c12'), containerPlace('bench')]).toEqual([
      { container: 3, slot: '5' },
      { container: 12, slot: undefined },
      null,
    ])
  })

  test('a container with its name and with all that it stands in', () => {
    expect([containerName(state, 4), containerName(state, 3), containerName(state, 99)]).toEqual([
      'bag 4 (exhaust nuts)',
      'tray 3',
      'container 99',
    ])
    expect([containerPath(state, 4), containerPath(state, 1), containerPath(state, 99)]).toEqual([
      'bag 4 in bin 2 on shelf 1',
      'shelf 1',
      'container 99',
    ])
  })

  test('a circle, which only a damaged record could hold, ends', () => {
    const circle = play([job, open('bin'), open('bag', undefined, 1)]).state
    for (const bin of circle.containers.values()) bin.inside = bin.no === 1 ? 2 : 1
    expect(containerPath(circle, 2)).toBe('bag 2 in bin 1')
  })

  test('of a long row of containers those that are nearest', () => {
    const row = play([
      job,
      ...Array.from({ length: 40 }, (_, index) => open('bin', undefined, index || undefined)),
    ]).state
    expect(containerPath(row, 40)).toMatch(/^bin 40 in bin 39 in .* in bin 28, and further out$/)
    expect(containerPath(row, 13)).toMatch(/ in bin 2 in bin 1$/)
  })

  test('where those are that cannot be had', () => {
    const lying = play([
      job,
      off(8, 'bolts'),
      move('p1', at('scrap'), { count: 2 }),
      move('p1', at('lost'), { count: 1, from: 'c1', reason: 'fell' }),
    ]).state
    expect(goneText(lying, 'p1', ['scrap', 'lost'])).toBe(', 2 in scrap, 1 lost')
    expect(goneText(lying, 'p1', ['spare'])).toBe('')
  })
})
