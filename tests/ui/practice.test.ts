import { describe, expect, test } from 'vitest'
import { textOf, widthOf } from '../../src/ui/text/line.ts'
import { emptyHome, jobWith, say, screens, shelfIn } from './support/bench.ts'
import { doLesson, followLessons, lessonOn } from './support/learner.ts'

/** Enough for the whole path with a detour. */
const MANY = 60

function practice(size = { width: 80, height: 24 }) {
  const shelf = shelfIn(emptyHome())
  const bench = screens(shelf, size)
  bench.enter('3')
  return { ...bench, shelf }
}

/** As many lessons done as it takes until one says something. */
function until(bench: ReturnType<typeof practice>, words: string): void {
  for (let read = 0; read < MANY && !lessonOn(bench).includes(words); read += 1) doLesson(bench)
  expect(lessonOn(bench)).toContain(words)
}

describe('whoever does what the lessons say', () => {
  test('strips three pieces, scans one, is stopped once, and ends with nothing left over', () => {
    const bench = practice()
    const read = followLessons(bench, MANY)
    const state = bench.state()
    expect(state.cleared).toBe(true)
    expect([...state.ledger.accounts.values()].map(({ piece }) => piece.name)).toEqual([
      'lid bolts',
      'lid',
      'rag',
    ])
    expect(read.filter((lesson) => lesson.includes('STOPPED'))).toHaveLength(1)
    const numbers = read.map((lesson) => Number(/^PRACTICE (\d+)\/12/.exec(lesson)?.[1] ?? 13))
    expect([...new Set(numbers)]).toEqual(Array.from({ length: 13 }, (_, index) => index + 1))
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b))
  })

  test('reads two rows or three, none wider than the screen', () => {
    for (const [width, height, most] of [
      [80, 24, 2],
      [64, 18, 3],
    ] as const) {
      const bench = practice({ width, height })
      for (let read = 0; read < MANY && !bench.state().cleared; read += 1) {
        const rows = bench.desk.above()
        expect(rows.length, lessonOn(bench)).toBeLessThanOrEqual(most)
        for (const row of rows) expect(widthOf(row), textOf(row)).toBeLessThanOrEqual(width)
        doLesson(bench)
      }
      expect(bench.desk.above().length).toBeLessThanOrEqual(most)
    }
  })
})

describe('a detour', () => {
  test('undo goes back a lesson', () => {
    const bench = practice()
    until(bench, 'type "lid"')
    bench.enter('0')
    expect(lessonOn(bench)).toContain('type "4 M6x20 hex 8 lid bolts"')
  })

  test('on another screen the lesson first leads back', () => {
    const bench = practice()
    until(bench, 'type "lid"')
    bench.enter('.5')
    expect(lessonOn(bench)).toContain('Type ".1"')
    until(bench, 'press Enter with nothing typed')
    bench.enter('.2')
    expect(lessonOn(bench)).toContain('Type "step 1"')
    for (const screen of ['new job', '?']) {
      bench.enter('.', screen)
      expect(lessonOn(bench)).toContain('Type "."')
    }
    followLessons(bench, MANY)
  })

  test('the rag that was taken out first is not asked for again', () => {
    const bench = practice()
    until(bench, 'Scan it')
    bench.enter('take out rag')
    expect(lessonOn(bench)).toContain('Type "look 1"')
    followLessons(bench, MANY)
  })

  test.each([
    ['a fluid goes in again', ['off oil out 0.5 L'], '"fill f1 0.5 L"'],
    ['a tool is put away before the end', ['off tool: magnet'], '"take out p4"'],
    ['a step of the way back alone is taken back', ['add measure end float'], 'Type "0" and press Enter'],
    ['a second look is more than this teaches', ['step 1 critical'], 'Type "0" and press Enter'],
    [
      'a verdict leads too far, and is taken back',
      ['judge lid replace because it is bent'],
      'Type "0" and press Enter',
    ],
  ])('%s', (_, lines, words) => {
    const bench = practice()
    until(bench, 'End the step')
    if (bench.desk.session) say(bench.desk.session, ...lines)
    until(bench, words)
    followLessons(bench, MANY)
    expect(bench.state().cleared).toBe(true)
  })

  test.each(['begin handle off', 'ease lid bolts: 90 deg', 'off handle into bench'])(
    'what comes off in the middle of the way back is taken back: %s',
    (line) => {
      const bench = practice()
      until(bench, 'Put on 4')
      if (bench.desk.session) say(bench.desk.session, line)
      expect(lessonOn(bench)).toContain('Type "0" and press Enter')
      doLesson(bench)
      expect(lessonOn(bench)).toContain('Put on 4')
    },
  )

  test('killed in the middle of an angle, the doubt is answered first', () => {
    const bench = practice()
    until(bench, 'type "tighten')
    bench.enter('tighten lid bolts: 4 Nm, 90 deg')
    for (let turned = 0; turned < 6; turned += 1) doLesson(bench)
    bench.desk.close()
    const again = { ...screens(bench.shelf), shelf: bench.shelf }
    expect(lessonOn(again)).toContain('"turned t1 no because its mark has not moved"')
    followLessons(again, MANY)
    expect(again.state().cleared).toBe(true)
  })
})

describe('the practice job', () => {
  test('is a job of its own, with a number and labels; no other job has lessons', () => {
    const bench = practice()
    expect(bench.state().job).toMatchObject({ no: 1, name: 'practice pump', practice: true })
    expect(jobWith().desk.above()).toEqual([])
  })

  test('is begun from the list of jobs too, under the next number', () => {
    const bench = jobWith()
    bench.enter('jobs', '4')
    expect(bench.state().job).toMatchObject({ no: 2, practice: true })
    expect(lessonOn(bench)).toContain('PRACTICE 1/12')
  })

  test('can be put away at the end', () => {
    const bench = practice()
    followLessons(bench, MANY)
    bench.enter('archive')
    expect(bench.state().job.archived).toBe(true)
    expect(lessonOn(bench)).not.toContain('archive')
  })
})
