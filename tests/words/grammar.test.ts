import { describe, expect, test } from 'vitest'
import {
  counted,
  isAre,
  joined,
  litresText,
  numberRanges,
  sentence,
  singular,
  stepNumbers,
} from '../../src/words/grammar.ts'

test.each<[number[], string]>([
  [[], ''],
  [[5], '5'],
  [[5, 6], '5 and 6'],
  [[7, 5, 6], '5 to 7'],
  [[1, 2, 4, 5, 6, 9], '1, 2, 4 to 6 and 9'],
  [[3, 3, 4, 5], '3 to 5'],
])('the numbers %j are said %j', (numbers, said) => {
  expect(numberRanges(numbers)).toBe(said)
})

describe('one of what a plural names', () => {
  test.each([
    ['cam caps', 'cam cap'],
    ['valve cover bolts', 'valve cover bolt'],
    ['exhaust valves', 'exhaust valve'],
    ['bushes', 'bush'],
    ['junction boxes', 'junction box'],
    ['coolant hoses', 'coolant hose'],
    ['sub-assemblies', 'sub-assembly'],
    ['pulleys', 'pulley'],
    ['bearing halves', 'bearing half'],
    ['left engine mount bolts', 'left engine mount bolt'],
    ['Clips', 'Clip'],
  ])('%s: %s', (many, one) => {
    expect(singular(many)).toBe(one)
  })

  test.each([
    'cylinder head',
    'chassis',
    'brass',
    'gas',
    'lens',
    'pliers',
    'radius',
    'axes',
    'dies',
    'ABS',
    'bolts with sealing washers',
    'bolts (long)',
    'bolts M8',
    'Dichtungen',
    'vis à tête',
    '螺栓',
    '',
  ])('%s stays as it is', (name) => {
    expect(singular(name)).toBe(name)
  })
})

describe('parts of sentences', () => {
  test.each([
    [[], ''],
    [['a'], 'a'],
    [['a', 'b'], 'a and b'],
    [['a', 'b', 'c'], 'a, b and c'],
  ])('joined %j', (items, text) => {
    expect(joined(items)).toBe(text)
  })

  test.each([
    ['bag 5 holds 4', 'Bag 5 holds 4.'],
    ['cover bolts are home.', 'Cover bolts are home.'],
    ['is it right?', 'Is it right?'],
    ['x1, stud snapped', 'x1, stud snapped.'],
    ['"fit p1"', '"fit p1".'],
    ['"leave off p1 because ..."', '"leave off p1 because ...".'],
    ['8 × bolts', '8 × bolts.'],
    ['über', 'über.'],
  ])('%s as a sentence', (text, whole) => {
    expect(sentence(text)).toBe(whole)
  })

  test('counts', () => {
    expect([counted(1, 'reason'), counted(3, 'reason'), counted(0, 'entry', 'entries')]).toEqual([
      '1 reason',
      '3 reasons',
      '0 entries',
    ])
    expect([isAre(1), isAre(2), isAre(0)]).toEqual(['is', 'are', 'are'])
    expect([stepNumbers([3]), stepNumbers([3, 4, 7])]).toEqual(['step 3', 'steps 3, 4 and 7'])
    expect([litresText(2), litresText(2.1), litresText(0.946352946)]).toEqual(['2 L', '2.1 L', '0.95 L'])
  })
})
