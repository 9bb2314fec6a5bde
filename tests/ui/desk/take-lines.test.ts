import { expect, test } from 'vitest'
import type { Act } from '../../../src/ui/act.ts'
import { takeLines } from '../../../src/ui/desk/take-lines.ts'
import { Talk } from '../../../src/ui/desk/talk.ts'
import { act, type Meaning, no } from '../../../src/ui/typed/meaning.ts'

const SEND: Act = { do: 'send', commands: [] }
const MEANINGS: Record<string, Meaning> = {
  taken: act(SEND, ''),
  refused: act(SEND, ''),
  where: act({ do: 'go', to: { at: 'lies', words: 'bolt' } }, ''),
  which: act({ do: 'go', to: { at: 'which', words: 'bolt', pieces: [], lines: [] } }, ''),
}

function taking(...lines: string[]) {
  const talk = new Talk()
  const done: string[] = []
  takeLines(lines, {
    meaningOf: ({ before }) => MEANINGS[before] ?? no('Not understood.', ''),
    send: (_, { before }) => before === 'taken',
    do: (what) => done.push(what.do === 'go' ? what.to.at : what.do),
    talk,
  })
  const told = talk.answer()?.told
  return { line: talk.text(), said: told && [told.what, ...told.lines].filter(Boolean).join(' '), done }
}

test('one after the other, and how many were', () => {
  expect(taking('taken', 'taken')).toEqual({ line: '', said: 'All 2 lines were taken.', done: [] })
  expect(taking('taken')).toEqual({ line: '', said: undefined, done: [] })
})

test('the first that is not taken stands in the line, and none after it is', () => {
  const { line, said } = taking('taken', 'refused', 'taken')
  expect(line).toBe('refused')
  expect(said).toBe('1 of 3 lines were taken; this one and those after it were not.')
  expect(taking('taken', 'what').said).toBe(
    'Not understood. 1 of 2 lines were taken; this one and those after it were not.',
  )
})

test('only the last may lead somewhere without being mended', () => {
  expect(taking('taken', 'where')).toEqual({ line: '', said: undefined, done: ['lies'] })
  expect(taking('where', 'taken')).toMatchObject({ line: 'where', done: ['lies'] })
  expect(taking('taken', 'which')).toMatchObject({ line: 'which', done: ['which'] })
})
