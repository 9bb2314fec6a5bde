import fc from 'fast-check'
import { expect, test } from 'vitest'
import { verbs } from '../../src/lines/verbs.ts'
import { emptyHome, screens, shelfIn } from './support/bench.ts'
import { doLesson, followLessons, isOver, lessonOn } from './support/learner.ts'

type Screens = ReturnType<typeof screens>

/** What somebody may do instead of what a lesson says. */
type Detour = { type: string } | { key: string } | { restart: true } | { lesson: true }

/** What leaves the practice job: no lesson can follow there. */
const LEAVES = new Set(['errand', 'leave', 'demo', 'practice', 'new-job', 'open-job'])

/** What the job takes at one moment or another, and no lesson asks for. */
const OFF_THE_PATH = [
  'off 3 M6x20 hex 8 lid bolts into new bag',
  'off handle into bench',
  'off cam caps I1, I2',
  'off rag > port',
  'off 2 rags > inlet ports 1,2',
  'off tool: magnet',
  'off oil out 0.5 L',
  'off hose: pump outlet > tank',
  'off 1 of 4 M5x12 hex 8 guard bolts',
  'begin lid off',
  'begin handle off',
  'end',
  'mark lid: arrow to the handle',
  'note: it was stiff',
  'caution: the spring is loaded',
  'move lid to bench',
  'move lid to new bin',
  'put 1 in new shelf',
  'void label 1 because it is torn',
  'take 1',
  'take 2',
  'look 1',
  'fit lid',
  'fit 3 lid bolts',
  'take out rag',
  'done',
  'tighten lid bolts: 4 Nm, 90 deg',
  'tighten lid bolts: 8 Nm, witness',
  'turn of t1',
  'ease lid bolts: 90 deg',
  'layout lid bolts: 2x2',
  'stop for the night',
  'reopen 1 because it leaks',
  'override start 1 because I know better',
  'override finish 1 because I know better',
  'judge lid replace because it is bent',
  'check lid: look for cracks',
  'lost 1 lid bolts because it rolled away',
  'broken 1 lid bolts',
  'buy 1 lid',
  'out lid to the shop for a new face',
  'step 1 critical',
  'step 1 does not hide',
  'step 1 hides no',
  'sealant 1: grey on the face, cures 24 h before start',
  'count 1',
  'rename lid to cover',
  'clear',
  'undo',
  'redo',
  'archive',
  'stuff and nonsense',
  '001000168',
  '001000169',
  '',
]
const KEYS = ['0', '1', '2', '3', '7', '9', '.', '.1', '.2', '.3', '.4', '.5', '.6', '?', 'jobs', 'new job']

const line = fc.oneof(
  { arbitrary: fc.constantFrom(...OFF_THE_PATH), weight: 5 },
  { arbitrary: fc.constantFrom(...verbs.flatMap(({ examples }) => examples)), weight: 2 },
  { arbitrary: fc.constantFrom(...KEYS), weight: 1 },
)
const detour: fc.Arbitrary<Detour> = fc.oneof(
  { arbitrary: line.map((type) => ({ type })), weight: 6 },
  { arbitrary: fc.constant({ lesson: true } as const), weight: 8 },
  { arbitrary: fc.constantFrom('\x7f', '\x1b', 'x', ' ', '*', '+').map((key) => ({ key })), weight: 1 },
  { arbitrary: fc.constant({ restart: true } as const), weight: 1 },
)

test('whatever was done before, the lessons are there and lead to the end', () => {
  fc.assert(
    fc.property(fc.array(detour, { minLength: 10, maxLength: 40, size: 'max' }), (detours) => {
      const shelf = shelfIn(emptyHome())
      let bench = screens(shelf)
      bench.enter('3')
      for (const each of detours) bench = wander(bench, each, () => screens(shelf))
      followLessons(bench, 40 + 2 * bench.entries())
      expect(bench.state().cleared).toBe(true)
    }),
    { numRuns: 8, seed: 20_261_130 },
  )
}, 60_000)

function wander(bench: Screens, detour: Detour, restarted: () => Screens): Screens {
  if ('restart' in detour) {
    // As if it had been killed: nothing is said to the record.
    bench.desk.close()
    return restarted()
  }
  if ('key' in detour) bench.type(detour.key)
  else if ('type' in detour) typeUnlessItLeaves(bench, detour.type)
  else if (!isOver(lessonOn(bench))) doLesson(bench)
  return bench
}

function typeUnlessItLeaves(bench: Screens, text: string): void {
  bench.type('\x1b')
  bench.type(text)
  const meaning = bench.desk.meaning()
  if (meaning.kind === 'act' && LEAVES.has(meaning.act.do)) bench.type('\x1b')
  else bench.enter('')
}
