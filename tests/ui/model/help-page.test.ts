import { expect, test } from 'vitest'
import { helpPage } from '../../../src/ui/model/help-page.ts'
import { textOf } from '../../../src/ui/text/line.ts'

const shown = (about: string | null) => {
  const { rows } = helpPage(80, about)
  return Array.from({ length: rows.length }, (_, index) => textOf(rows.at(index)))
}

test('of one word, what it does and how it is written', () => {
  expect(shown('relabel')[0]).toBe('WHAT IT DOES')
  expect(shown('relabel').join('\n')).toContain('relabel 3 to 14 [because REASON]')
})

test('a word that there is not is said to be none, with the nearest, before all there is', () => {
  const [first, ...rest] = shown('lables').join('\n').split('KEYS')
  expect(first?.replace(/\s+/g, ' ').trim()).toBe(
    'There is no word "lables" to begin a line with. Perhaps "? labels". This is all there is:',
  )
  expect(`KEYS${rest.join('KEYS')}`).toBe(shown(null).join('\n'))
})
