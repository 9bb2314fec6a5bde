import { expect, test } from 'vitest'
import { jobWith } from '../support/bench.ts'

test('what sits on another piece has a row of its own, as what lies in a bag has', () => {
  const { enter, rows } = jobWith(
    'begin pump off, does not hide',
    'off water pump; front cover into new bag 3',
    'on water pump: 3 studs M6x25; seal ring',
    'end',
  )
  enter('.2')
  const shown = rows().map((row) => row.replace(/ +/g, ' ').trim())
  expect(shown[0]).toBe('WHAT LIES WHERE 1 container')
  expect(shown.at(-1)).toBe('p1 on water pump 3 × studs M6x25, 1 × seal ring')
  enter('scrap seal ring because it is worn', '.2')
  expect(rows().at(-1)).toMatch(/p1 {2}on water pump +3 × studs M6x25$/)
  enter('move studs to bench', '.2')
  expect(rows().join('\n')).not.toContain('p1  on')
})
