import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { comparisonsDue, comparisonView } from '../../src/session/comparison-view.ts'
import { heedsAfter } from '../../src/session/heeds.ts'
import { featuresFor } from '../../src/trade/inspection/compare-features.ts'
import { heedText } from '../../src/words/heeds.ts'
import { alike, at, endStrip, move, off, replace, supply } from '../support/commands.ts'
import { given } from '../support/journal.ts'

const pump = given(off(1, 'water pump', { kind: 'part' }), endStrip)
const fresh = pump.and(replace('p1', 1))
const found = (feature: string, how: 'alike' | 'differs' | 'wrong', says?: string): Command => ({
  do: 'compare',
  piece: 'p2',
  features: [{ feature, how, says }],
})
const heeds = (job: ReturnType<typeof given>) => {
  const entry = job.entries.at(-1)
  return entry ? heedsAfter(job.state, entry).map((heed) => heedText(job.state, heed)) : []
}

describe('a comparison as it is shown', () => {
  test('has every feature that such a part is compared for, and those that the user named', () => {
    const view = comparisonView(fresh.and(found('colour', 'differs', 'grey')).state, 'p2')
    expect(view?.features.map(({ feature }) => feature)).toEqual([...featuresFor('water pump'), 'colour'])
    expect(view?.features.at(-1)).toEqual({ feature: 'colour', how: 'differs', says: 'grey' })
    expect(view?.features[0]?.how).toBeNull()
  })

  test('is alike in all once that was said of it, and in none before', () => {
    const view = comparisonView(fresh.and(alike('p2')).state, 'p2')
    expect(new Set(view?.features.map(({ how }) => how))).toEqual(new Set(['alike']))
  })

  test('is due until it is right, or its home has gone to the next', () => {
    expect(comparisonsDue(fresh.state).map(({ piece }) => piece)).toEqual(['p2'])
    expect(comparisonsDue(fresh.and(alike('p2')).state)).toEqual([])
    const next = fresh.and(found('ports', 'wrong'), supply('p2', 1))
    expect(comparisonsDue(next.state).map(({ piece }) => piece)).toEqual(['p3'])
    expect(comparisonView(fresh.state, 'p1')).toBeNull()
  })
})

describe('what is said beside an entry', () => {
  test('of a new part: what to hold it beside, and for what', () => {
    expect(heeds(fresh)).toEqual([
      'Hold it beside the old, p1, in bag 1: ports, bolt holes, threads, shaft and drive, connectors, studs and variant; then "compare p2: alike".',
    ])
    expect(heeds(pump.and(move('p1', at('scrap')), replace('p1', 1)))).toEqual([])
  })

  test('of what still sits on the old one', () => {
    const studded = pump.and(
      { do: 'carry', on: 'p1', items: [{ kind: 'fastener', name: 'studs', count: 3 }] },
      replace('p1', 1),
    )
    expect(heeds(studded)).toContain('3 × studs still on the old one: "move over from p1 to p3" when moved.')
  })

  test('of a thread that is not that of the old one, and of none that only is of another length', () => {
    const bolts = given(off(4, 'bolts', { size: 'M6x25 hex 10' }), endStrip)
    const sized = (size: string) => heeds(bolts.and({ ...replace('p1', 4), size } as Command))
    expect(sized('M8x25 hex 13')).toContain(
      'The thread is not that of the old one: bolts M8x25 hex 13 (p2), and p1 was M6x25 hex 10: is that right?',
    )
    expect(sized('M6x30 hex 10').join()).not.toContain('The thread is not')
  })

  test('of the wrong one, and of features that leave nothing but the rest', () => {
    expect(heeds(fresh.and(found('ports', 'wrong')))).toEqual([
      'It goes back: "send back p2 because ..."; the old one stays until the right one is here.',
    ])
    const all = featuresFor('water pump').map((feature) => found(feature, 'alike'))
    expect(heeds(fresh.and(...all.slice(1)))).toEqual([])
    expect(heeds(fresh.and(...all))).toEqual([
      'Every feature is said: "compare p2: rest alike" ends it, and the old one goes to scrap.',
    ])
  })
})
