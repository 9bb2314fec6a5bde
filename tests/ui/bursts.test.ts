import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest'
import { labelCode, MACHINE_NUMBER, readCode, stepNumber } from '../../src/label/code.ts'
import type { Desk } from '../../src/ui/desk/desk.ts'
import { hearInput } from '../../src/ui/hooks/hear-input.ts'
import { type Chance, chanceOf } from '../support/damage/chance.ts'
import { emptyHome, jobWith, say, screens, shelfIn } from './support/bench.ts'
import { EVERY_SCREEN } from './support/every-screen.ts'

/** What arrives, each chunk so many milliseconds after the one before. */
type Burst = [after: number, chunk: string][]

/** How a scanner's keystrokes may arrive, wherever they come from. */
const SHAPES: Record<string, (text: string, chance: Chance) => Burst> = {
  'in one chunk': (text) => [[0, text]],
  'one character a millisecond': (text) => [...text].map((character) => [1, character]),
  'split in the middle': (text, chance) => {
    const at = chance.whole(1, text.length - 1)
    return [
      [0, text.slice(0, at)],
      [chance.whole(0, 400), text.slice(at)],
    ]
  },
  'in pieces with pauses': (text, chance) => cutAnywhere(text, chance, 60),
  'as a bracketed paste': (text, chance) => cutAnywhere(`\x1b[200~${text}\x1b[201~`, chance, 20),
  'between what a terminal reports, cut anywhere': (text, chance) => {
    const at = chance.whole(0, text.length)
    const report = oneOf(REPORTS, chance)
    return cutAnywhere(`${text.slice(0, at)}${report}${text.slice(at)}`, chance, 20)
  },
  'after Escape': (text) => [
    [0, '\x1b'],
    [1, text],
  ],
}

/** The window has the focus, lost it; a key of its own, an answer about the colours, Shift with an arrow. */
const REPORTS = ['\x1b[I', '\x1b[O', '\x1b[15~', '\x1bOP', '\x1b]11;rgb:00/00/00\x07', '\x1b[1;2A', '\x1b[B']

const SUFFIXES = ['\r', '\r', '\r', '\n', '\r\n', '\t']

/** What scanners put before a code: nothing, what kind of symbol it was (ISO/IEC 15424), a separator. */
const PREFIXES = ['', '', '', ']Q1', ']C1', ']Q3', ']d2', '\x1d']

/** What somebody may be typing just then, and how far the cursor stands before its end. */
const WORDS = [
  '',
  '',
  'half a li',
  '8 M6x25 hex 10 valve co',
  '12',
  '0',
  '.',
  '1 ',
  '? tor',
  'note: the pump ',
  'bolts',
  'Größe 漢字',
]

const WRITTEN = WORDS.filter((words) => /\p{L}/u.test(words))

const MANY = 1000
/** Of all screens, on which no job is open: nothing is scanned there. */
const WITHOUT_JOB = 8
/** So many on each screen; more of two at once, for some jobs have too few labels for that. */
const EACH = Math.ceil(MANY / (EVERY_SCREEN.length - WITHOUT_JOB))
const EACH_OF_TWO = EACH + 2

/** How many scans came in each way, and were answered as they had to be. */
const answered = new Map<string, number>()
const count = (way: string) => answered.set(way, (answered.get(way) ?? 0) + 1)

beforeEach(() => {
  onTestFinished(() => {
    vi.useRealTimers()
  })
})

describe('a scan is answered once, for the right label, and nothing comes of it where it came', () => {
  test.each(EVERY_SCREEN.map((standing, index) => ({ ...standing, index })))(
    '$name',
    async ({ open, index }) => {
      const keyboard = keyboardOf(await open())
      const { desk } = keyboard
      if (!desk.session) return
      if (index % 2 === 1) keyboard.hear([[0, '\x15*']])
      const chance = chanceOf(index)
      for (const [name, shape] of Object.entries(SHAPES))
        for (let nth = 0; nth < EACH; nth += 1) {
          scanAndReturn(keyboard, shape, chance)
          count(name)
        }
      for (let nth = 0; nth < EACH_OF_TWO; nth += 1)
        if (scanTwoAndReturn(keyboard, chance)) count('two in one chunk')
    },
  )

  test('a thousand in each way', () => {
    expect([...answered.keys()]).toEqual([...Object.keys(SHAPES), 'two in one chunk'])
    for (const [way, times] of answered) expect(times, way).toBeGreaterThanOrEqual(MANY)
  })
})

describe('a thousand scans', () => {
  const job = [
    'begin cover off',
    'off 8 M6x25 bolts into new bag',
    'off 2 dowels into new bag',
    'off 4 M6x40 bolts into new bag',
  ]
  const shapes = Object.values(SHAPES)

  test.each([
    ['a text is asked for', ['new job', 'new job red single', 'quit', 'scan 1\r2']],
    ['a list is narrowed', ['.2', '.2\rbolts', '.5', '?']],
  ])('while %s', (_, ways) => {
    const chance = chanceOf(ways.length)
    for (const way of ways) {
      const keyboard = keyboardOf(jobWith(...job).desk)
      keyboard.hear([[0, `${way}\r`]])
      for (let nth = 0; nth < MANY / ways.length; nth += 1) {
        // There is always something in the line, so that a text is begun and a list is narrowed.
        scanAndReturn(keyboard, oneOf(shapes, chance), chance, WRITTEN)
      }
    }
  })
})

describe('a scan while a text is asked for', () => {
  const job = ['begin cover off', 'off 8 M6x25 bolts into new bag', 'off 2 dowels into new bag']
  const one = labelCode(1, 1)

  test.each([
    ['the name of a new job', 'new job\r'],
    ['its machine', 'new job red single\r'],
    ['a note for who goes on', 'quit\r'],
    ['a reason', 'judge bolts replace because it is '],
  ])('is no part of %s', (_, way) => {
    const { desk, entries } = jobWith(...job)
    const { hear } = keyboardOf(desk)
    const before = entries()
    hear([[0, way]])
    hear([[0, 'red tw']])
    const typed = lineOf(desk)
    const origin = originOf(desk)
    hear([[0, `${one}\r`]])
    expect(scanned(desk)).toBe(one)
    expect(lineOf(desk)).toBe(typed)
    goBack({ desk, hear })
    expect(originOf(desk)).toEqual(origin)
    expect(entries()).toBe(before)
  })

  test('while no job is open, opens its job when it is alone', () => {
    const home = emptyHome()
    const shelf = shelfIn(home)
    say(shelf.open(shelf.create({ name: 'blue twin', machine: '', units: 'metric' })), ...job)
    shelf.create({ name: 'red single', machine: '', units: 'metric' })
    rmSync(join(home, '.chosen'))
    const { desk } = screens(shelf)
    const { hear } = keyboardOf(desk)
    expect(desk.session).toBeNull()
    hear([[0, '3\r']])
    expect(desk.screen).toEqual({ at: 'new-job', name: null })
    hear([[0, `red tw${one}\r`]])
    expect(desk.screen).toEqual({ at: 'new-job', name: null })
    expect(lineOf(desk)).toBe('red tw|')
    hear([[0, `\x15${one}\r`]])
    expect(desk.session?.state.job.name).toBe('blue twin')
    expect(scanned(desk)).toBe(one)
  })

  test('and no job is in the home, becomes no name', () => {
    const { desk } = screens(shelfIn(emptyHome()))
    const { hear } = keyboardOf(desk)
    hear([[0, `1\r${one}\r`]])
    expect(desk.screen).toEqual({ at: 'new-job', name: null })
    expect(lineOf(desk)).toBe('|')
  })
})

test('a scan takes the place of a line that was not taken', () => {
  const { desk, answer } = jobWith('begin cover off', 'off 8 M6x25 bolts into new bag')
  const { hear } = keyboardOf(desk)
  hear([[0, '.1\r4 M6x25 into bag 99\r']])
  expect(answer()).toContain('99')
  hear([[0, `${labelCode(1, 1)}\r`]])
  expect(scanned(desk)).toBe(labelCode(1, 1))
  expect(lineOf(desk)).toBe('|')
})

test('words typed on while a scan behind words is answered are not lost', () => {
  const { desk } = jobWith('begin cover off', 'off 8 M6x25 bolts into new bag')
  const { hear } = keyboardOf(desk)
  hear([[0, `8 M6x25 val${labelCode(1, 1)}\rve cover`]])
  expect(scanned(desk)).toBe(labelCode(1, 1))
  expect(lineOf(desk)).toBe('8 M6x25 valve cover|')
})

/** One scan, with words in the line or without, and back to where one was. */
function scanAndReturn(
  keyboard: Keyboard,
  shape: (text: string, chance: Chance) => Burst,
  chance: Chance,
  words = WORDS,
) {
  const { desk, hear } = keyboard
  const origin = originOf(desk)
  const [code = ''] = codesFor(desk, chance)
  const line = typeWords(keyboard, chance, words)
  const burst = shape(`${oneOf(PREFIXES, chance)}${code}${oneOf(SUFFIXES, chance)}`, chance)
  const story = JSON.stringify({ line, burst })
  hear(burst)
  expect(scanned(desk), story).toBe(code)
  expect(lineOf(desk), story).toBe(line)
  goBack(keyboard)
  expect(originOf(desk), story).toEqual(origin)
}

/** Two in one chunk: the last is shown, the first is one step back. Answers whether there are two labels. */
function scanTwoAndReturn(keyboard: Keyboard, chance: Chance): boolean {
  const { desk, hear } = keyboard
  const origin = originOf(desk)
  const [first = '', second] = codesFor(desk, chance)
  if (second === undefined) return false
  const line = typeWords(keyboard, chance)
  const chunk = [first, second].map((code) => `${oneOf(PREFIXES, chance)}${code}${oneOf(SUFFIXES, chance)}`)
  const story = JSON.stringify({ line, chunk })
  hear([[0, chunk.join('')]])
  expect(scanned(desk), story).toBe(second)
  expect(lineOf(desk), story).toBe(line)
  goBack(keyboard)
  expect(scanned(desk), story).toBe(first)
  goBack(keyboard)
  expect(originOf(desk), story).toEqual(origin)
  return true
}

type Keyboard = ReturnType<typeof keyboardOf>

/** A keyboard and a scanner at the screens, where time passes when the test says so. */
function keyboardOf(desk: Desk) {
  vi.useFakeTimers()
  let listener: (chunk: string) => void = () => {}
  onTestFinished(
    hearInput(desk, {
      subscribe: (each) => {
        listener = each
        return () => {}
      },
    }),
  )
  return {
    desk,
    /** All of it, and then some time without anything. */
    hear: (burst: Burst) => {
      for (const [after, chunk] of burst) {
        if (after > 0) vi.advanceTimersByTime(after)
        listener(chunk)
      }
      vi.advanceTimersByTime(2000)
    },
  }
}

/** Words in the line, the cursor somewhere in them. Answers the line. */
function typeWords({ desk, hear }: Keyboard, chance: Chance, all = WORDS): string {
  const words = oneOf(all, chance)
  const back = chance.whole(0, 2) === 0 ? chance.whole(0, words.length) : 0
  hear([
    [0, '\x15'],
    [0, words],
    [0, '\x1b[D'.repeat(words === '' ? 0 : back)],
  ])
  return lineOf(desk)
}

/** Out of the words, and one screen back. */
function goBack({ hear }: Keyboard) {
  hear([[0, '\x15\x7f']])
}

/** Where one is, and what is recorded. A count that is left begins anew. */
function originOf({ screen, session, ended }: Desk) {
  return {
    screen: screen.at === 'count' ? { ...screen, given: [] } : screen,
    entries: session?.entries().length,
    name: session?.state.job.name,
    ended,
  }
}

function scanned({ screen }: Desk): string {
  const reading = screen.at === 'scan' ? readCode(screen.text) : null
  return reading?.kind === 'code' ? reading.code : `not a scan: ${JSON.stringify(screen)}`
}

function lineOf(desk: Desk): string {
  const { before, after } = desk.typed()
  return `${before}|${after}`
}

/** The labels of the open job in some order, but for the one that is shown. */
function codesFor(desk: Desk, chance: Chance): string[] {
  const { session } = desk
  if (!session) return []
  const { job, containers, steps } = session.state
  const numbers = [MACHINE_NUMBER, ...containers.keys(), ...[...steps.keys()].map(stepNumber)]
  const shown = scanned(desk)
  const codes = numbers.map((no) => labelCode(job.no, no)).filter((code) => code !== shown)
  const from = chance.whole(0, codes.length - 1)
  return [...codes.slice(from), ...codes.slice(0, from)]
}

/** In up to five pieces, each up to `pause` milliseconds after the one before. */
function cutAnywhere(text: string, chance: Chance, pause: number): Burst {
  const places = Array.from({ length: chance.whole(0, 4) }, () => chance.whole(0, text.length))
  const cuts = [0, ...places.sort((a, b) => a - b), text.length]
  return cuts.slice(1).map((end, index) => [chance.whole(0, pause), text.slice(cuts[index], end)])
}

function oneOf<Thing>(things: readonly Thing[], chance: Chance): Thing {
  return things[chance.whole(0, things.length - 1)] as Thing
}
