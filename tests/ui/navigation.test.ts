import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { placeOf, type Screen, type Trail, walk } from '../../src/ui/navigation.ts'

const start: Trail = [{ screen: { at: 'now' }, scroll: null }]

/** Goes to each screen in turn, and tells the names of the way. */
function way(...screens: Screen[]): Trail {
  return screens.reduce<Trail>((trail, go) => walk(trail, { go }), start)
}
const names = (trail: Trail) => trail.map(({ screen }) => screen.at)

describe('going to and fro', () => {
  test('back leads the way one came, and stays at its beginning', () => {
    let trail = way({ at: 'off' }, { at: 'back' }, { at: 'step', step: 3 })
    expect(names(trail)).toEqual(['now', 'off', 'back', 'step'])
    for (const screen of ['back', 'off', 'now', 'now']) {
      trail = walk(trail, { back: true })
      expect(placeOf(trail).screen.at).toBe(screen)
    }
  })

  test('going where one is leaves the way as it was', () => {
    const trail = way({ at: 'step', step: 3 })
    expect(walk(trail, { go: { at: 'step', step: 3 } })).toBe(trail)
    expect(names(walk(trail, { go: { at: 'step', step: 4 } }))).toEqual(['now', 'step', 'step'])
  })

  test('a screen is found again as far down as one left it', () => {
    let trail = walk(way({ at: 'back' }), { scroll: 12 })
    trail = walk(walk(trail, { go: { at: 'step', step: 3 } }), { back: true })
    expect(placeOf(trail)).toEqual({ screen: { at: 'back' }, scroll: 12 })
  })

  test('a question is not gone back to once one has gone on', () => {
    expect(names(way({ at: 'off' }, { at: 'leave' }, { at: 'back' }))).toEqual(['now', 'off', 'back'])
  })

  test('a question into which something was scanned is gone back to, until one goes on from the scan', () => {
    const scanned = way({ at: 'off' }, { at: 'leave' }, { at: 'scan', text: '3' }, { at: 'scan', text: '4' })
    expect(names(scanned)).toEqual(['now', 'off', 'leave', 'scan', 'scan'])
    expect(names(walk(scanned, { go: { at: 'back' } }))).toEqual(['now', 'off', 'scan', 'scan', 'back'])
  })

  test('a count that was left starts at nothing', () => {
    const trail = way({ at: 'count', container: 1, given: [8, 3] }, { at: 'scan', text: '2' })
    expect(placeOf(walk(trail, { back: true })).screen).toEqual({ at: 'count', container: 1, given: [] })
  })

  test('however one walks, there is a place to be, and the way does not grow without end', () => {
    const screens = fc.constantFrom<Screen>(
      { at: 'off' },
      { at: 'back' },
      { at: 'leave' },
      { at: 'step', step: 1 },
    )
    const steps = fc.oneof(
      screens.map((go) => ({ go })),
      screens.map((turn) => ({ turn })),
      fc.constant({ back: true as const }),
      fc.nat(50).map((scroll) => ({ scroll })),
    )
    fc.assert(
      fc.property(fc.array(steps, { maxLength: 200 }), (taken) => {
        const trail = taken.reduce<Trail>(walk, start)
        expect(trail.length).toBeGreaterThan(0)
        expect(trail.length).toBeLessThan(60)
      }),
    )
  })
})
