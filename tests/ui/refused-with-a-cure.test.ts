import { expect, test } from 'vitest'
import { EVERY_SCREEN } from './support/every-screen.ts'

const WRONG = ['98', '.9', '999', 'xyzzy plugh', '-1x', '1 2 3 4 4', 'fit', '0 0', '(', '"']

test('what the screens do not take they answer with a cause and a cure, wherever it is typed', async () => {
  const seen = new Set<string>()
  for (const { name, open } of EVERY_SCREEN) {
    const desk = await open()
    for (const words of WRONG) {
      desk.press({ key: 'clear' })
      desk.press({ text: words })
      const meaning = desk.meaning()
      if (meaning.kind !== 'not-understood') continue
      const { what, cure } = meaning.told
      expect(what, `${words} on ${name}`).toMatch(/\w.*[.?]$/)
      expect(cure, `${words} on ${name}: ${what}`).toMatch(/\w/)
      seen.add(what)
    }
  }
  // Each kind of place has its own.
  expect(seen.size).toBeGreaterThan(8)
})
