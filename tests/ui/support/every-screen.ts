import { appendFileSync } from 'node:fs'
import { join } from 'node:path'
import { labelCode, MACHINE_NUMBER, stepNumber } from '../../../src/label/code.ts'
import { JOURNAL_NAME } from '../../../src/storage/journal/journal-file.ts'
import type { Desk } from '../../../src/ui/desk/desk.ts'
import type { Size } from '../../../src/ui/layout.ts'
import type { ScreenName } from '../../../src/ui/navigation.ts'
import { goOnAsNewer } from '../../support/newer.ts'
import { done, emptyHome, heldErrands, screens, shelfIn, shelfLater } from './bench.ts'
import type { ScreenJob } from './screen-jobs.ts'
import { homeWith } from './told-once.ts'

/** A screen of the program in one of its states. */
export interface StandingAt {
  name: string
  at: ScreenName
  /** The screens of a home of its own, standing there until the test is over. */
  open(size?: Size, colour?: boolean): Promise<Desk>
}

/** How a home of the test's own is shown, which has its name by chance. Nothing is looked for or written there. */
const SHOWN_HOME = '/nowhere/putback'

const RIGHT = '\x1b[C'

const SMALL: Size = { width: 80, height: 24 }

/** Every screen, in every state that looks different. */
export const EVERY_SCREEN: readonly StandingAt[] = [
  withoutJob('jobs, none yet', 'jobs'),
  withoutJob('new job, its name', 'new-job', '1'),
  withoutJob('new job, its machine', 'new-job', '1', 'red single'),
  severalJobs('jobs, several', 'jobs'),
  inPractice('practice, the first lesson', 'now'),
  inPractice('practice, the second lesson', 'off', 'begin lid off'),

  at('now, nothing recorded', 'now', 'new'),
  at('now, coming off', 'now', 'comingOff', '.'),
  at('now, waiting', 'now', 'waiting', '.'),
  at('now, going back', 'now', 'goingOn', 'take 2', 'applied s1', '.'),
  at('now, broken off', 'now', 'turning'),
  toBeRead('now, only to be read', 'now'),
  outOfDate('now, out of date', 'now', '.'),
  late('now, overdue', 'now', '.6', '1', '1', '.'),

  at('off, nothing yet', 'off', 'new', '.1'),
  at('off, a new bag', 'off', 'comingOff', '.1'),
  at('off, a full bag', 'off', 'comingOff', '.1', 'off 2 dowels'),
  at('off, easing', 'off', 'easing', '.1'),
  typing('off, words being typed', 'off', '8 M6x25 hex 10 guard screws', 'comingOff', '.1'),
  at('off, words not taken', 'off', 'comingOff', '.1', '4 M6x25 into bag 99'),

  at('lies, all of it', 'lies', 'comingOff', '.2'),
  at('lies, looked for', 'lies', 'comingOff', '.2', 'bolts'),
  at('lies, not found', 'lies', 'comingOff', '.2', 'turbine'),
  outOfDate('lies, out of date', 'lies', '.2'),

  at('back, blocked', 'back', 'waiting', '.3'),
  at('back, under way', 'back', 'turning', '.3'),
  at('proposals', 'proposals', 'allOff', 'proposals'),
  at('finish', 'finish', 'waiting', 'finish'),

  at('step, ready', 'step', 'goingOn', 'step 2'),
  at('step, fit', 'step', 'goingOn', 'step 2', ''),
  at('step, time runs', 'step', 'goingOn', 'step 2', '', ''),
  at('step, tighten', 'step', 'turning', 'turned t1 yes because the paint mark has moved', 'step 1'),
  at('step, in doubt', 'step', 'turning', 'step 1'),
  at('step, blocked', 'step', 'waiting', 'step 1'),
  at('step, a last look', 'step', 'covered', 'step 1'),
  at('step, a check', 'step', 'covered', 'step 3', ''),
  at('step, done', 'step', 'covered', 'step 2'),
  at('step, the last round', 'step', 'home', 'accept all', 'step 3', 'take 3', '1'),

  at('left, nothing recorded', 'left', 'new', '.4'),
  at('left, not clear', 'left', 'waiting', '.4'),
  at('left, clear', 'left', 'home', '.4'),
  at('left, started', 'left', 'home', '.4', '1', '2'),

  at('log', 'log', 'comingOff', 'undo', '.5'),
  at('log, looked for', 'log', 'comingOff', '.5', 'bolts'),
  at('found', 'found', 'allOff', 'found M6x20'),

  late('due', 'due', '.6'),
  late('judge, a piece', 'judge', '.6', '3'),
  late('judge, a set', 'judge', '.6', '4'),
  late('compare', 'compare', '.6', '5'),
  late('compare, something is wrong', 'compare', '.6', '5', '11'),
  late('buy', 'buy', '.6', '6'),
  late('arrivals', 'arrivals', '.6', '7'),
  late('order', 'order', '.6', '1'),
  late('outing', 'outing', '.6', '2'),

  at('scan, fits now', 'scan', 'allOff', labelCode(1, 6)),
  at('scan, not yet', 'scan', 'allOff', labelCode(1, 2)),
  at('scan, other step', 'scan', 'allOff', 'take 4', labelCode(1, 2)),
  at('scan, empty', 'scan', 'allOff', labelCode(1, 7)),
  at('scan, empty again', 'scan', 'home', labelCode(1, 1)),
  at('differences, one in an empty bag', 'differences', 'home', labelCode(1, 1), '1'),
  at('scan, not again', 'scan', 'allOff', labelCode(1, 4)),
  at('scan, not needed', 'scan', 'allOff', 'scan 5'),
  at('scan, not checked', 'scan', 'waiting', labelCode(1, 1)),
  at('scan, not good', 'scan', 'waiting', 'judge cam caps replace because of score', labelCode(1, 1)),
  at('scan, not compared', 'scan', 'waiting', 'move p9 to new bag', 'scan 3'),
  at('scan, while things come off', 'scan', 'comingOff', labelCode(1, 3)),
  at('scan, unused', 'scan', 'allOff', labelCode(1, 14)),
  at('scan, void', 'scan', 'allOff', labelCode(1, 8)),
  at('scan, misread', 'scan', 'allOff', misread(labelCode(1, 2))),
  at('scan, unknown', 'scan', 'allOff', labelCode(1, 77)),
  at('scan, other job', 'scan', 'allOff', labelCode(412, 3)),
  at('scan, a step', 'scan', 'allOff', labelCode(1, stepNumber(2))),
  at('scan, the machine', 'scan', 'allOff', labelCode(1, MACHINE_NUMBER)),

  at('qr, a bag', 'qr', 'comingOff', 'qr 3'),
  at('qr, unused', 'qr', 'allOff', 'qr 14'),
  at('count, the first', 'count', 'allOff', 'scan 2', '2'),
  at('count, the last', 'count', 'allOff', 'scan 2', '2', '1'),
  at('differences, none', 'differences', 'allOff', 'scan 6', '2', '6', '0'),
  at('differences, too few', 'differences', 'allOff', 'scan 6', '2', '5', '0'),

  at('which', 'which', 'allOff', 'move 1 bolts to bench'),
  typing('paste', 'paste', pasted('off 2 dowels', 'off 4 clips into new bag'), 'comingOff', '.1'),
  at('help', 'help', 'comingOff', '?'),
  at('help, about a word', 'help', 'comingOff', '? tighten'),
  at('help, looked for', 'help', 'comingOff', '? torque'),

  at('photos, none', 'photos', 'comingOff', 'photos'),
  at('photos', 'photos', 'allOff', 'photos'),
  at('sum', 'sum', 'new', 'setting 25 Nm handle 250 mm adapter 50 mm range 5..60 Nm'),
  at('draw, proposed', 'draw', 'comingOff', 'draw valve cover bolts'),
  at('draw', 'draw', 'comingOff', 'draw cam caps'),
  typing('draw, placing', 'draw', RIGHT + RIGHT, 'comingOff', 'draw valve cover bolts', '1', '', ''),

  at('leave', 'leave', 'comingOff', 'quit'),
  onErrand('told', 'told', 'told'),
  onErrand('wait, asked', 'wait', 'quit'),
  onErrand('wait, waiting', 'wait', 'quit', ''),
]

/** In a job, after some lines were entered. */
function at(name: string, screen: ScreenName, job: ScreenJob, ...lines: string[]): StandingAt {
  return typing(name, screen, '', job, ...lines)
}

/** The same with words in the line that are not entered yet. */
function typing(
  name: string,
  screen: ScreenName,
  words: string,
  job: ScreenJob,
  ...lines: string[]
): StandingAt {
  return standing(name, screen, ({ size, colour }) => {
    const bench = screens(shelfIn(homeWith(job).home), size, undefined, colour)
    bench.enter(...lines)
    bench.type(words)
    return bench
  })
}

/** Six days later, when what was to come back is overdue. */
function late(name: string, screen: ScreenName, ...lines: string[]): StandingAt {
  return standing(name, screen, ({ size, colour }) => {
    const bench = screens(shelfLater(homeWith('waiting').home, 6), size, undefined, colour)
    bench.enter(...lines)
    return bench
  })
}

/** In a job whose record was damaged on the disk. */
function toBeRead(name: string, screen: ScreenName): StandingAt {
  return standing(name, screen, ({ size, colour }) => {
    const { home, path } = homeWith('comingOff')
    appendFileSync(join(path, JOURNAL_NAME), 'a line that nobody wrote\n')
    const bench = screens(shelfIn(home), size, undefined, colour)
    bench.enter('.')
    return bench
  })
}

function outOfDate(name: string, screen: ScreenName, ...lines: string[]): StandingAt {
  return standing(name, screen, ({ size, colour }) => {
    const { home, path } = homeWith('comingOff')
    goOnAsNewer(path)
    const bench = screens(shelfIn(home), size, undefined, colour)
    bench.enter(...lines)
    return bench
  })
}

function withoutJob(name: string, screen: ScreenName, ...lines: string[]): StandingAt {
  return standing(name, screen, ({ size, colour }) => {
    const bench = screens(shownElsewhere(shelfIn(emptyHome())), size, undefined, colour)
    bench.enter(...lines)
    return bench
  })
}

function shownElsewhere(shelf: ReturnType<typeof shelfIn>): typeof shelf {
  return new Proxy(shelf, {
    get(real, key) {
      if (key === 'home') return SHOWN_HOME
      const value: unknown = Reflect.get(real, key)
      return typeof value === 'function' ? value.bind(real) : value
    },
  })
}

function severalJobs(name: string, screen: ScreenName): StandingAt {
  return standing(name, screen, ({ size, colour }) => {
    const shelf = shelfIn(homeWith('waiting').home)
    shelf.create({ name: 'red single', machine: 'invented single', units: 'metric' })
    const bench = screens(shelf, size, undefined, colour)
    bench.enter('jobs')
    return bench
  })
}

function inPractice(name: string, screen: ScreenName, ...lines: string[]): StandingAt {
  return standing(name, screen, ({ size, colour }) => {
    const shelf = shelfIn(emptyHome())
    shelf.addPractice()
    const bench = screens(shelf, size, undefined, colour)
    bench.enter(...lines)
    return bench
  })
}

/** While an errand is out, or after it for the page that tells of it. */
function onErrand(name: string, screen: ScreenName, ...lines: string[]): StandingAt {
  return standing(name, screen, async ({ size, colour }) => {
    const { errands, end, tell } = heldErrands()
    const bench = screens(shelfIn(homeWith('allOff').home), size, errands, colour)
    bench.enter('photos import /media/phone')
    tell('3 of 40: cover.jpg')
    if (screen === 'told')
      await end(done('5 pictures taken over.', 'bag 1: cover.jpg, bolts.jpg', 'not sorted: 2'))
    bench.enter(...lines)
    return bench
  })
}

type Bench = ReturnType<typeof screens>

function standing(
  name: string,
  at: ScreenName,
  come: (on: { size: Size; colour: boolean }) => Bench | Promise<Bench>,
): StandingAt {
  return { name, at, open: async (size = SMALL, colour = false) => (await come({ size, colour })).desk }
}

/** The code with its last digit but two mistyped. */
function misread(code: string): string {
  return `${code.slice(0, 6)}${(Number(code[6]) + 1) % 10}${code.slice(7)}`
}

/** As a terminal hands over what is pasted. */
function pasted(...lines: string[]): string {
  return `\x1b[200~${lines.join('\n')}\x1b[201~`
}
