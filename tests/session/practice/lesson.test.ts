import { describe, expect, test } from 'vitest'
import { parseEntry } from '../../../src/journal/entry.ts'
import { LESSONS, type LessonPlace, lessonOf } from '../../../src/session/practice/lesson.ts'
import { emptyHome, say, shelfIn } from '../../ui/support/bench.ts'

const OFF: LessonPlace = { at: 'off' }
const STRIPPED = ['begin lid off', 'off 4 M6x20 hex 8 lid bolts', 'off lid', 'off rag > port', 'end']

function practice(...lines: string[]) {
  const shelf = shelfIn(emptyHome())
  const session = shelf.open(shelf.addPractice())
  say(session, ...lines)
  return session
}

describe('the lesson follows from the record and the screen', () => {
  test.each<[string, string[], LessonPlace, object]>([
    ['nothing is off', [], OFF, { do: 'begin', no: 1 }],
    ['a step comes off', STRIPPED.slice(0, 1), OFF, { do: 'bolts', no: 2 }],
    ['the same elsewhere', STRIPPED.slice(0, 1), { at: 'left' }, { do: 'go-off', no: 2 }],
    ['the bolts are off', STRIPPED.slice(0, 2), OFF, { do: 'lid', bag: 1, no: 3 }],
    ['the lid is off', STRIPPED.slice(0, 3), OFF, { do: 'aid', no: 4 }],
    ['a rag is in', STRIPPED.slice(0, 4), OFF, { do: 'end', byNumber: true, no: 5 }],
    ['the step is off', STRIPPED, OFF, { do: 'scan', bag: 1, code: '001000168', no: 6 }],
    ['the bag is scanned', STRIPPED, { at: 'scan', text: '1' }, { do: 'take-out', seen: true, no: 7 }],
    ['the rag is out', [...STRIPPED, 'take out rag'], OFF, { do: 'look', step: 1, no: 8 }],
    ['a question is asked', STRIPPED, { at: 'question' }, { do: 'leave-question', no: null }],
  ])('%s', (_, lines, place, lesson) => {
    expect(lessonOf(practice(...lines), place)).toMatchObject(lesson)
  })

  test('pieces that lie on the bench need no scan', () => {
    const session = practice(...STRIPPED.map((text) => text.replace(/bolts$|lid$/, '$& into bench')))
    expect(lessonOf(session, OFF)).toMatchObject({ do: 'take-out', seen: false })
  })

  test('the last lesson is the last of all', () => {
    const session = practice(...STRIPPED, 'take out rag', 'look 1', 'take 1', 'fit lid', 'fit lid bolts')
    expect(lessonOf(session, { at: 'step', step: 1 })).toMatchObject({ do: 'torque', called: 'lid bolts' })
    say(session, 'tighten lid bolts: 8 Nm', ...Array(4).fill('turn of t1'), 'done')
    expect(lessonOf(session, { at: 'left' })).toEqual({ do: 'clear', no: LESSONS })
  })
})

test('no other job has lessons, and an older first entry is read as before', () => {
  const shelf = shelfIn(emptyHome())
  const session = shelf.open(shelf.create({ name: 'mine', machine: '', units: 'metric' }))
  expect(lessonOf(session, OFF)).toBeNull()
  const [opened] = session.entries()
  expect(JSON.stringify(opened)).not.toContain('practice')
  expect(parseEntry(opened)).toEqual(opened)
})
