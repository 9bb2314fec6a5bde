import { expect, test } from 'vitest'
import { shimSizes } from '../../../src/trade/shims/shim-sizes.ts'

test.each<[(string | undefined)[], (number | null)[]]>([
  [
    ['2.45', '2,40 mm', '0.098 in', '245'],
    [2.45, 2.4, 2.4892, 2.45],
  ],
  [
    ['245', '240'],
    [null, null],
  ],
  [
    [undefined, '', 'thin', '2.40 2.45', '0.098', '2.45'],
    [null, null, null, null, null, 2.45],
  ],
])('%j: %j', (texts, sizes) => {
  expect(shimSizes(texts)).toEqual(sizes)
})

test('a list of what is for sale makes a code certain', () => {
  expect(shimSizes(['247'], [2.45, 2.475])).toEqual([2.475])
})
