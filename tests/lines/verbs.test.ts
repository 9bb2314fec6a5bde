import { describe, expect, test } from 'vitest'
import { findVerb, readLine } from '../../src/lines/read-line.ts'
import { TOPICS } from '../../src/lines/verb.ts'
import { verbs } from '../../src/lines/verbs.ts'
import { told, topEnd } from './told.ts'

const state = told(
  ...topEnd,
  'tighten valve cover bolts: 10 Nm',
  'off 6 M6x20 pump cover bolts into bench',
  'buy 8 head bolts',
)

const examples = verbs.flatMap((verb) => verb.examples.map((example) => ({ verb, example })))

test.each(examples)('the example "$example" is a command, a question or an errand', ({ verb, example }) => {
  const reading = readLine(example, state)
  expect(reading.kind === 'misread' ? reading : reading.kind).toMatch(/^(commands|ask|errand)$/)
  if (!/^\d+$/.test(example)) expect(findVerb(example)?.verb).toBe(verb)
})

test.each(verbs)(
  '$words.0 has a form that begins with it, and says what it does',
  ({ words, forms, says, topic }) => {
    expect(forms.some((form) => form.toLowerCase().startsWith(words[0] ?? ''))).toBe(true)
    expect(says).toMatch(/^[A-Z].*[.]$/)
    expect(TOPICS).toContain(topic)
  },
)

describe('no word', () => {
  test('stands for two verbs', () => {
    const words = verbs.flatMap((verb) => verb.words)
    expect(new Set(words).size).toBe(words.length)
  })
})

test('the longer of two verbs that begin alike is meant', () => {
  expect(findVerb('take out rag')?.word).toBe('take out')
  expect(findVerb('take 3')?.word).toBe('take')
  expect(findVerb('turned t1 yes because so')?.word).toBe('turned')
  expect(findVerb('note: so')?.word).toBe('note')
  expect(findVerb('notepad')).toBeNull()
})
