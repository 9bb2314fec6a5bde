import { expect, test } from 'vitest'
import { inLarge, inWhole } from '../../../src/ui/model/large-words.ts'
import { chip, SIGNS } from '../../../src/ui/signs.ts'
import { textOf } from '../../../src/ui/text/line.ts'

const under = (...parts: Parameters<typeof inLarge>[1]) => inLarge('I3', parts).under.map(textOf)

test('parts stand as they are said; empty ones not at all', () => {
  expect(under('24 N·m', '', 'pass 2 of 3')).toEqual(['24 N·m', 'pass 2 of 3'])
  expect(under()).toEqual([])
})

test('the longest part gives way from its end, until there are twelve words', () => {
  expect(under('in bag 4', 'one two three four five six seven eight nine ten')).toEqual([
    'in bag 4',
    'one two three four five six seven eight nine..',
  ])
  expect(under('a b c d e f g, h', '1 2 3 4 5 6 7 8')).toEqual(['a b c d e f..', '1 2 3 4 5 6..'])
})

test('a sign with its word stays whole', () => {
  expect(under([chip(SIGNS.notCompared)], 'a b c d e f g h i j k')).toEqual([
    ' ! NOT COMPARED ',
    'a b c d e f g h i j..',
  ])
})

test('where each part is one word, the last ones fall away', () => {
  const words = [...'abcdefghijklmno']
  expect(under(...words)).toEqual([...'abcdefghijkl'])
})

test('what is copied by hand stands there whole or not at all', () => {
  expect(inWhole(['bag 4', '8 COVER BOLTS M6x25', '> COVER, STEP 1', '2/2', 'FIT AGAIN SOON'])).toEqual([
    'bag 4',
    '8 COVER BOLTS M6x25',
    '> COVER, STEP 1',
    '2/2',
  ])
  expect(inWhole(['one two three four five six seven eight nine ten eleven twelve thirteen'])).toEqual([])
})
