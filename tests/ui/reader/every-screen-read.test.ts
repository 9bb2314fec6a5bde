import { expect, test } from 'vitest'
import { type Reading, readingOf } from '../../../src/ui/reader/reading.ts'
import { wholeReading } from '../../../src/ui/reader/what-is-new.ts'
import { EVERY_SCREEN } from '../support/every-screen.ts'

test('every screen in every state is read in sentences, with nothing that is there for the eye alone', async () => {
  for (const { name, open } of EVERY_SCREEN) {
    const reading = readingOf(await open({ width: 1000, height: 100 }))
    const sentences = [...wholeReading(reading), ...allOf(reading)]
    expect(sentences.length, name).toBeGreaterThan(1)
    for (const sentence of sentences) {
      if (sentence === '') continue
      expect(sentence, name).toMatch(/[.!?:]["')]?$/)
      expect(sentence, name).not.toMatch(/ {2}|\p{Cc}|[\u2500-\u259f✓]| ·|, ,|^[a-z]/u)
    }
  }
})

function allOf({ choices, rows }: Reading): string[] {
  return [...choices, ...rows].flatMap(({ heading, sentences }) => [heading, ...sentences])
}
