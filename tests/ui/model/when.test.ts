import { expect, test } from 'vitest'
import { whenText } from '../../../src/ui/model/when.ts'

const now = new Date(2030, 10, 3, 18, 0)

test.each([
  [new Date(2030, 10, 3, 7, 5), '07:05'],
  [new Date(2030, 10, 2, 17, 42), '2 Nov 17:42'],
  [new Date(2029, 10, 3, 17, 42), '3 Nov 2029 17:42'],
])('%s', (at, text) => {
  expect(whenText(at.toISOString(), now)).toBe(text)
})
