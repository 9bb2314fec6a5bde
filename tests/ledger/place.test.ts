import { describe, expect, test } from 'vitest'
import {
  containerOf,
  inContainer,
  isPlace,
  NAMED_PLACES,
  type Place,
  slotOf,
} from '../../src/ledger/place.ts'

describe('a place', () => {
  test.each<[Place, number | null, string | null]>([
    ['machine', null, null],
    ['bench', null, null],
    ['c7', 7, null],
    ['c7/3', 7, '3'],
    ['c9999/12', 9999, '12'],
  ])('%s: container %s, slot %s', (place, container, slot) => {
    expect(containerOf(place)).toBe(container)
    expect(slotOf(place)).toBe(slot)
    expect(isPlace(place)).toBe(true)
    if (container !== null) expect(inContainer(container, slot ?? undefined)).toBe(place)
  })

  test.each(NAMED_PLACES.map((place) => [place]))('%s is one', (place) => {
    expect(isPlace(place)).toBe(true)
  })

  test.each([
    [''],
    ['Machine'],
    ['garage'],
    ['c'],
    ['c0'],
    ['c007'],
    ['c-1'],
    ['c1.5'],
    ['c12345'],
    ['c7/'],
    ['c7/a b'],
    ['c7/3/4'],
    ['c7/1234567890123'],
    ['xc7'],
    ['c7x'],
  ])('%j is none', (text) => {
    expect(isPlace(text)).toBe(false)
  })
})
