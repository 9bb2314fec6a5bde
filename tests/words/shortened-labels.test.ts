import { expect, test } from 'vitest'
import { type CutLabel, shortenedText } from '../../src/words/shortened-labels.ts'

test('what is cut is told once, with the labels on which; a cut job is not told', () => {
  const cut: CutLabel[] = [
    { label: 'bag 1', parts: ['job'] },
    { label: 'bag 2', parts: ['what', 'job'] },
    { label: 'bag 3', parts: ['what', 'warnings'] },
    { label: 'bag 4', parts: [] },
  ]
  expect(shortenedText(cut)).toEqual(['shortened names on bag 2, bag 3', 'shortened cautions on bag 3'])
  expect(shortenedText(cut.slice(0, 1))).toEqual([])
})

test('of very many the first are named, and the rest counted', () => {
  const cut = Array.from({ length: 30 }, (_, n): CutLabel => ({ label: `bag ${n + 1}`, parts: ['where'] }))
  expect(shortenedText(cut)).toEqual([
    'shortened where it goes on bag 1, bag 2, bag 3, bag 4, bag 5, bag 6, bag 7, bag 8 and 22 more',
  ])
})
