import { describe, expect, test } from 'vitest'
import { verbs } from '../../../../src/lines/verbs.ts'
import { HELP_ITEMS } from '../../../../src/ui/model/help/help-items.ts'
import { lookUp } from '../../../../src/ui/model/help/look-up.ts'
import { SAID_FOR } from '../../../../src/ui/model/help/said-for.ts'

const hits = (words: string) => lookUp(words).hits.map((item) => item.words[0])

describe('the first that is found', () => {
  test.each(verbs.flatMap(({ words }) => words.map((word) => [word, words[0] ?? ''] as const)))(
    'by its own word: %s',
    (word, verb) => {
      expect(hits(word)[0]).toBe(verb)
    },
  )

  test.each(HELP_ITEMS.map(({ words: [word] }) => word))('by the name of a key or a screen: %s', (word) => {
    expect(hits(word)[0]).toBe(word)
  })

  test.each([
    ['tihgten', 'tighten'],
    ['tightn', 'tighten'],
    ['overide', 'override'],
    ['relable', 'relabel'],
    ['lables', 'labels'],
    ['reoepn', 'reopen'],
    ['slacekn', 'slacken'],
    ['sealent', 'sealant'],
    ['gaskte side', 'gasket side'],
    ['propsals', 'proposals'],
    ['coolent', 'coolant'],
    ['bakspace', 'Backspace'],
  ])('with a slip of the finger: %s', (slip, word) => {
    expect(hits(slip)[0]).toBe(word)
  })

  test.each(Object.entries(SAID_FOR).flatMap(([word, said]) => said.map((each) => [each, word])))(
    'by what people say: %s',
    (said, word) => {
      expect(hits(said)[0]).toBe(word)
    },
  )

  test.each([
    ['what is left', 'left'],
    ['How do I tighten', 'tighten'],
    ['snapped stud', 'settle'],
    ['machine shop', 'out'],
    ['page down', '+ and -'],
    ['print label', 'labels'],
    ['valves', 'shims'],
    ['torque wrench', 'wrench'],
  ])('by several words: %s', (words, word) => {
    expect(hits(words)[0]).toBe(word)
  })

  test.each([
    ['tig', 'tighten'],
    ['overr', 'override'],
    ['coo', 'coolant'],
    ['bell', 'sound'],
  ])('while it is still being typed: %s', (begun, word) => {
    expect(hits(begun)[0]).toBe(word)
  })
})

test('every word that people say belongs to something that there is', () => {
  expect(Object.keys(SAID_FOR).filter((word) => !HELP_ITEMS.some((item) => item.words[0] === word))).toEqual(
    [],
  )
})

test('what has no hit has what is near it, or nothing', () => {
  expect(lookUp('unod').hits).toEqual([])
  expect(lookUp('unod').near[0]?.words[0]).toBe('undo')
  expect(lookUp('xyzzy')).toEqual({ hits: [], near: [] })
})
