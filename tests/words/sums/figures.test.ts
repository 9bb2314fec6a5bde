import { expect, test } from 'vitest'
import { figure, percent } from '../../../src/words/sums/figures.ts'

test.each([
  [29.827994, 4, '29.83'],
  [1355.8179, 4, '1356'],
  [13558.179, 4, '13560'],
  [0.0039370079, 3, '0.00394'],
  [100, 3, '100'],
  [0.1, 4, '0.1'],
  [9.9996, 4, '10'],
  [-40, 4, '-40'],
  [-17.7777, 3, '-17.8'],
  [0, 4, '0'],
  [0.0000000012, 2, '0.0000000012'],
])('%d to %d figures is %s', (value, figures, text) => expect(figure(value, figures)).toBe(text))

test('a share in percent', () => expect(percent(0.7042)).toBe('70 %'))
