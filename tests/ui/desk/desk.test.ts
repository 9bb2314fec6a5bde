import { appendFileSync, mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { ENTRY_VERSION } from '../../../src/journal/entry.ts'
import { labelCode } from '../../../src/label/code.ts'
import { headRows } from '../../../src/ui/model/head.ts'
import { textOf } from '../../../src/ui/text/line.ts'
import { goOnAsNewer } from '../../support/newer.ts'
import { emptyHome, jobWith, say, screens, shelfIn } from '../support/bench.ts'

const strip = ['begin valve cover off', 'off 8 M6x25 hex 10 valve cover bolts into new bag']
const head = [
  'begin cylinder head off',
  'off cylinder head into bench',
  'off 4 M10x120 E14 head bolts @1..4 into new bag',
  'end',
  'tighten head bolts: 20 Nm, 90 deg',
]

describe('the first time', () => {
  test('says what this is and asks one question', () => {
    const { text, desk } = screens(shelfIn(emptyHome()))
    expect(desk.screen).toEqual({ at: 'jobs' })
    expect(text()).toContain('WHAT IS IT TO BE?')
  })

  test('Enter and two answers make a job, and the first thing can come off', () => {
    const { enter, desk, state } = screens(shelfIn(emptyHome()))
    enter('', 'blue twin top end', '')
    expect(desk.screen).toEqual({ at: 'off' })
    expect(state().job).toMatchObject({ name: 'blue twin top end', no: 1 })
    enter('8 M6x25 hex 10 valve cover bolts')
    expect(state().ledger.accounts.get('p1')).toMatchObject({ should: 8, piece: { size: 'M6x25 hex 10' } })
  })

  test('a name that is missing is asked for again, and Backspace goes back', () => {
    const { enter, type, desk, answer } = screens(shelfIn(emptyHome()))
    enter('1', '')
    expect(answer()).toContain('A job needs a name.')
    type('\x7f')
    expect(desk.screen).toEqual({ at: 'jobs' })
  })
})

describe('what the line is', () => {
  test.each([
    ['.1', { at: 'off' }],
    [',2', { at: 'lies', words: '' }],
    ['.3', { at: 'back' }],
    ['.4', { at: 'left' }],
    ['.5', { at: 'log' }],
    ['.', { at: 'now' }],
    ['?', { at: 'help', about: null, from: 'log' }],
    ['? fit', { at: 'help', about: 'fit', from: 'log' }],
    ['jobs', { at: 'jobs' }],
    ['back', { at: 'back' }],
    ['step 1', { at: 'step', step: 1 }],
    ['where bolts', { at: 'lies', words: 'bolts' }],
    ['qr 1', { at: 'qr', container: 1, invert: false }],
    ['scan 1', { at: 'scan', text: '1' }],
    ['proposals', { at: 'proposals' }],
  ])('%s', (line, screen) => {
    const { enter, desk } = jobWith(...strip)
    enter('.5', line)
    expect(desk.screen).toEqual(screen)
  })

  test('a number is a choice of the screen, a container where things lie', () => {
    const { enter, desk, answer } = jobWith(...strip)
    enter('.2', '1')
    expect(desk.screen).toEqual({ at: 'scan', text: '1' })
    enter('.2', '0001')
    expect(desk.screen).toEqual({ at: 'scan', text: '1' })
    enter('.5', '7')
    expect(answer()).toContain('Nothing has the number 7 here.')
  })

  test('words search where things lie, but a verb is a command there too', () => {
    const { enter, desk, rows } = jobWith(...strip, 'off thermostat into bench')
    enter('.2', 'cover bolts')
    expect(rows().slice(1)).toEqual([
      expect.stringMatching(/^ {4}1 {2}8 × valve cover bolts M6x25 hex 10 {2}in bag 1$/),
    ])
    enter('.3', '.2', 'left')
    expect(desk.screen).toEqual({ at: 'left' })
  })

  test('a bag line needs no verb on its screen, and elsewhere the way there is told', () => {
    const { enter, state, answer, line } = jobWith(...strip)
    enter('.1', '2 M8x30 hex 12 mount bolts')
    expect(state().ledger.accounts.size).toBe(2)
    enter('.3', '2 nuts')
    expect(answer()).toContain('"off 2 nuts"')
    expect(line()).toBe('2 nuts|')
    enter('.1')
  })

  test.each(['left coil', 'back plate', 'end cap', 'crank pulley'])(
    '%s comes off like any other part',
    (name) => {
      const { enter, answer } = jobWith(...strip)
      enter('.1', name)
      expect(answer()).toContain(`came off: 1 × ${name}`)
    },
  )
})

describe('a scan', () => {
  const code = labelCode(1, 1)

  test.each([
    ['typed or scanned in one chunk', `${code}\r`],
    ['with a line feed behind it', `${code}\r\n`],
    ['with a tab behind it', `${code}\t`],
    ['with the name of the symbol in front', `]Q3${code}\r`],
    ['in groups', `${code.slice(0, 3)} ${code.slice(3, 7)} ${code.slice(7)}\r`],
    [
      'in full-width digits',
      `${[...code].map((digit) => String.fromCodePoint(0xff10 + Number(digit))).join('')}\r`,
    ],
    ['pasted', `\x1b[200~${code}\r\x1b[201~`],
  ])('%s is answered', (_, chunk) => {
    const { type, desk, text, line } = jobWith(...strip)
    type(chunk)
    expect(desk.screen.at).toBe('scan')
    expect(text()).toContain('bag 1')
    expect(line()).toBe('|')
  })

  test('behind words leaves the words in the line', () => {
    const { type, desk, line } = jobWith(...strip)
    type(`\r4 M6x20 hex 10 pump cov${code}\r`)
    expect(desk.screen).toEqual({ at: 'scan', text: code })
    expect(line()).toBe('4 M6x20 hex 10 pump cov|')
  })

  test('in the middle of words leaves both ends', () => {
    const { type, line } = jobWith(...strip)
    type(`pump bolts\x1b[D\x1b[D\x1b[D\x1b[D\x1b[D${code}\r`)
    expect(line()).toBe('pump |bolts')
  })

  test('behind a digit that was typed first is still the scan', () => {
    const { type, desk, line } = jobWith(...strip)
    type(`8${code}\r`)
    expect(desk.screen).toEqual({ at: 'scan', text: code })
    expect(line()).toBe('8|')
  })

  test('interrupts a question, and is never its answer', () => {
    const { type, enter, desk, entries } = jobWith(...strip)
    enter('quit')
    const before = entries()
    type(`${code}\r`)
    expect(desk.screen.at).toBe('scan')
    expect(entries()).toBe(before)
    expect(desk.ended).toBeNull()
  })

  test('two in one chunk are both answered, the last stays on the screen', () => {
    const { type, desk } = jobWith(...strip, 'bag')
    type(`${labelCode(1, 1)}\r${labelCode(1, 2)}\r`)
    expect(desk.screen).toEqual({ at: 'scan', text: labelCode(1, 2) })
    type('\x7f')
    expect(desk.screen).toEqual({ at: 'scan', text: labelCode(1, 1) })
  })
})

describe('Enter on an empty line', () => {
  test('opens a bag where things come off, but not a second one while it is empty', () => {
    const { enter, state, answer } = jobWith(...strip)
    enter('.1', '')
    expect(state().containers.size).toBe(2)
    enter('')
    expect(state().containers.size).toBe(2)
    expect(answer()).toContain('bag 2 is in hand and empty')
  })

  test('never says that the last look was taken', () => {
    const { enter, answer, line, state } = jobWith(...head)
    for (let presses = 0; presses < 20; presses += 1) enter('')
    expect(state().steps.get(1)).toMatchObject({ looked: false, built: 'open' })
    expect(answer()).toContain('See and count what lies beneath')
    enter('1')
    expect(line()).toBe('look 1|')
    enter('')
    expect(state().steps.get(1)?.looked).toBe(true)
  })

  test('carries a whole step of the way back', () => {
    const { enter, desk, state } = jobWith(...head, 'look 1')
    const seen: string[] = []
    for (let presses = 0; presses < 40 && state().steps.get(1)?.built !== 'done'; presses += 1) {
      enter('')
      seen.push(desk.screen.at)
    }
    expect(state().steps.get(1)?.built).toBe('done')
    const bolt = state().tightenings.get('t1')
    expect(bolt?.done.map(({ size }) => size)).toEqual([4, 4])
    expect(seen).not.toContain('leave')
  })

  test('never answers for a bolt that may have been turned', () => {
    const { enter, desk, shelf, path } = jobWith(...head, 'look 1', 'take 1')
    enter('step 1')
    while (desk.session?.state.tightenings.get('t1')?.done[1]?.size !== 2) enter('')
    say(shelf.open(path), 'stop')
    const again = screens(shelf)
    again.enter('', '', '', '')
    expect(again.state().tightenings.get('t1')?.suspect).toEqual({ pass: 1, fastener: '3' })
    again.enter('2')
    expect(again.line()).toBe('turned t1 no because |')
    again.enter('the paint mark is in line')
    expect(again.state().tightenings.get('t1')?.suspect).toBeNull()
  })

  test('never opens a gate of the end', () => {
    const { enter, state } = jobWith(...head, 'look 1')
    for (let presses = 0; presses < 60; presses += 1) enter('')
    expect(state().cleared).toBe(false)
    enter('.4', '1')
    expect(state().cleared).toBe(true)
    // A finger that bounces on the same number opens no second gate.
    enter('', '', '.4', '', '1')
    expect(state().started).toBe(false)
    enter('.4', '2')
    expect(state().started).toBe(true)
  })
})

describe('what is refused or cannot be recorded', () => {
  test('says why and how to go on, and keeps the words to be mended', () => {
    const { enter, type, answer, line, state } = jobWith(...head)
    enter('take 1')
    expect(answer()).toMatch(/X REFUSED.*\n.*"look 1"/s)
    expect(line()).toBe('take 1|')
    type('\x15')
    enter('look 1', 'take 1')
    expect(state().build).toBe(1)
  })

  test('is said until something else is typed', () => {
    const { enter, type, answer, below } = jobWith(...head)
    enter('take 1')
    expect(below()).toContain('REFUSED')
    type('2')
    expect(answer()).toBe('')
    expect(below()).not.toContain('REFUSED')
  })

  test('is replaced by what is typed or scanned next, and mended behind a space', () => {
    const { enter, type, line, desk, state } = jobWith(...head)
    enter('take 1')
    type('l')
    expect(line()).toBe('l|')
    enter('ook 1')
    expect(state().steps.get(1)?.looked).toBe(true)
    enter('taek 1', labelCode(1, 1))
    expect(desk.screen).toEqual({ at: 'scan', text: labelCode(1, 1) })
    enter('layout head bolts: 3x1')
    type(' again')
    expect(line()).toBe('layout head bolts: 3x1 again|')
  })

  test('the rest of a line that was recorded in part is not lost by the next key', () => {
    const { enter, type, line } = jobWith(...strip, 'off cam caps I1..I2 into new bag')
    enter('.1', '2 nuts; cam caps I1; 3 washers')
    type('x')
    expect(line()).toBe('cam caps I1; 3 washersx|')
  })

  test('a record damaged behind our back', () => {
    const { enter, answer, line, desk } = jobWith(...strip)
    appendFileSync(desk.session?.store.path ?? '', 'garbage\n')
    enter('.1', '2 nuts')
    expect(answer()).toContain('NOT RECORDED')
    expect(line()).toBe('2 nuts|')
  })

  test('a record that is damaged opens, says so, and can be read', () => {
    const { shelf, desk } = jobWith(...strip)
    appendFileSync(desk.session?.store.path ?? '', 'garbage\n')
    const again = screens(shelf)
    expect(again.answer()).toContain('is damaged')
    const [top] = headRows(again.desk.scene(), again.desk.screen)
    expect(textOf(top)).toContain('ONLY TO READ')
    again.enter('.2')
    expect(again.text()).toContain('8 × valve cover bolts')
  })

  test('a record that a newer program goes on with behind our back: the words stay, every screen says it', () => {
    const { enter, answer, line, desk } = jobWith(...strip)
    const { session } = desk
    if (!session) throw new Error('no job is open')
    const before = session.entries().length
    expect(desk.above()).toEqual([])
    goOnAsNewer(dirname(session.store.path))
    enter('.1', '2 nuts')
    expect(answer()).toContain('NOT RECORDED')
    expect(answer()).toContain('a newer putback has written in this job')
    expect(line()).toBe('2 nuts|')
    expect(session.entries()).toHaveLength(before)
    for (const way of ['.', '.2', '.3', '.4', '.5', '.6', '?']) {
      desk.press({ key: 'clear' })
      enter(way)
      expect(desk.above().map(textOf).join(' '), way).toMatch(
        new RegExp(`OUT OF DATE .* before entry ${before + 1}[.]`),
      )
    }
  })

  test('a job of a newer program from its first entry on is listed with why, and opens no screen', () => {
    const { shelf, desk } = jobWith()
    const path = join(shelf.home, 'of-tomorrow')
    mkdirSync(path)
    goOnAsNewer(path)
    const again = screens(shelf)
    again.enter('jobs')
    const row = again
      .text()
      .split('\n')
      .findIndex((each) => each.includes('of-tomorrow'))
    expect(again.text().replace(/\s+/g, ' ')).toContain(
      `Entry 1 was written by a newer putback (version ${ENTRY_VERSION + 1} of the record, this program knows ${ENTRY_VERSION}): nothing of the job can be shown here.`,
    )
    expect(row).toBeGreaterThan(0)
    again.enter(/^\s*(\d+)/.exec(again.text().split('\n')[row] ?? '')?.[1] ?? '')
    expect(again.answer().replace(/\s+/g, ' ')).toContain('Nothing can be recorded here.')
    expect(again.desk.session?.store.path).toBe(desk.session?.store.path)
  })

  test('of several items the first are recorded and the rest stay in the line', () => {
    const { enter, line, state, answer } = jobWith(...strip, 'off cam caps I1..I2 into new bag')
    enter('.1', '2 nuts; cam caps I1; 3 washers')
    expect(answer()).toContain('REFUSED')
    expect(line()).toBe('cam caps I1; 3 washers|')
    expect([...state().ledger.accounts.values()].map(({ piece }) => piece.name)).toContain('nuts')
  })
})

describe('taking back', () => {
  test('0 takes back the last entry and says which', () => {
    const { enter, type, below, answer, state } = jobWith(...strip)
    enter('.1', '2 nuts')
    expect(answer()).toMatch(/✓ RECORDED.*nuts/)
    expect(answer()).toContain('0 takes entry 4 back.')
    type('0')
    expect(below()).toContain('take back entry 4: came off: 2 × nuts')
    enter('')
    expect(answer()).toMatch(/< TAKEN BACK.*nuts/)
    expect(state().ledger.accounts.size).toBe(1)
    enter('redo')
    expect(state().ledger.accounts.size).toBe(2)
  })

  test('what another has written since is not taken back', () => {
    const { enter, shelf, path, answer, state } = jobWith(...strip)
    enter('.1', '2 nuts')
    say(shelf.open(path), 'off 3 washers')
    // This terminal has not seen it yet, and asks for entry 4 by its number.
    enter('0')
    expect(answer()).toContain('REFUSED')
    expect(state().ledger.accounts.size).toBe(3)
  })
})

describe('two at one job', () => {
  test('what the other writes is seen, and what is being typed stays', () => {
    const { type, desk, shelf, path, text, line } = jobWith(...strip)
    type('.1\r4 M6x20 hex 10')
    say(shelf.open(path), 'off 3 washers')
    desk.session?.refresh()
    expect(text()).toContain('3 × washers')
    expect(line()).toBe('4 M6x20 hex 10|')
  })

  test('once the other has written, nobody is told that 0 takes their own entry back', () => {
    const { enter, desk, shelf, path, answer } = jobWith(...strip)
    enter('.1', '4 M6x20 hex 10 seat bolts')
    expect(answer()).toMatch(/0 takes entry \d+ back\./)
    say(shelf.open(path), 'off 3 washers')
    desk.session?.refresh()
    expect(answer()).not.toContain('0 takes entry')
    expect(answer()).toMatch(/Entry \d+ was recorded since, not here\./)
  })

  test('0 names what the other did last and leaves it; "undo" takes it back', () => {
    const { enter, type, below, desk, shelf, path, answer, state } = jobWith(...strip)
    enter('.1', '2 nuts')
    say(shelf.open(path), 'off 3 washers')
    desk.session?.refresh()
    type('0')
    expect(below()).toMatch(/Entry 5 was not recorded here: came off: 3 × washers/)
    enter('')
    expect(answer()).toContain('"undo" takes it back')
    expect(state().ledger.accounts.size).toBe(3)
    enter('undo')
    expect(answer()).toMatch(/TAKEN BACK.*washers/)
    enter('0')
    expect(answer()).toMatch(/TAKEN BACK.*nuts/)
  })
})

describe('leaving', () => {
  test('with a step under way asks for a note and leaves a card', () => {
    const { enter, desk, state } = jobWith(...strip)
    enter('quit')
    expect(desk.ended).toBeNull()
    enter('waiting for the gasket')
    expect(desk.ended).toBe(0)
    expect(state().card).toMatchObject({ step: 1, note: 'waiting for the gasket', abrupt: false })
  })

  test('with nothing under way is left at once, and nothing is written', () => {
    const { enter, desk, entries } = jobWith(...strip, 'end')
    const before = entries()
    enter('quit')
    expect(desk.ended).toBe(0)
    expect(entries()).toBe(before)
  })

  test('Backspace on the question stays', () => {
    const { enter, type, desk } = jobWith(...strip)
    enter('.1', 'quit')
    type('\x7f')
    expect(desk.ended).toBeNull()
    expect(desk.screen).toEqual({ at: 'off' })
  })

  test('Ctrl-C leaves at once and notes what was under way', () => {
    const { type, desk, state } = jobWith(...strip)
    type('half a wor\x03')
    expect(desk.ended).toBe(0)
    expect(state().card).toMatchObject({ step: 1, abrupt: true })
  })

  test('the next start opens on the card', () => {
    const { enter, shelf } = jobWith(...strip)
    enter('quit', 'waiting for the gasket')
    const again = screens(shelf)
    expect(again.desk.screen).toEqual({ at: 'now' })
    expect(again.text()).toMatch(/YOU WERE +stopped .*in step 1, valve cover off: waiting\s+for the gasket/)
  })
})

describe('several jobs', () => {
  test('are listed by number, and the one chosen last opens by itself', () => {
    const { enter, desk, shelf, path } = jobWith(...strip)
    shelf.create({ name: 'green mule', machine: '', units: 'metric' })
    const other = screens(shelf)
    expect(other.state().job.name).toBe('green mule')
    other.enter('jobs')
    const row = other.rows().findIndex((each) => each.includes('blue twin'))
    other.enter(String(row))
    expect(other.state().job.name).toBe('blue twin')
    expect(shelf.chosen()).toBe(path)
    enter('.')
    expect(desk.screen).toEqual({ at: 'now' })
  })

  test("another job's label says whose it is, and opens that job by number", () => {
    const { enter, shelf, text, state } = jobWith(...strip)
    shelf.create({ name: 'green mule', machine: '', units: 'metric' })
    enter('jobs', '.', labelCode(2, 1))
    expect(text()).toContain('X OTHER JOB')
    expect(text()).toContain('green mule')
    enter('1')
    expect(state().job.name).toBe('green mule')
  })
})

describe('a paste of several lines', () => {
  test('that comes before another was taken is shown and taken first', () => {
    const { enter, type, rows, entries, desk } = jobWith(...strip)
    const before = entries()
    enter('.1')
    type('\x1b[200~2 nuts\n3 washers\x1b[201~')
    type('\x1b[200~4 clips\n5 pins\x1b[201~')
    expect(rows()[0]).toContain('4 lines, none of them taken yet')
    enter('')
    expect(entries()).toBe(before + 4)
    expect(desk.screen.at).toBe('off')
  })

  test('is shown before it is taken, and stops at the first line that is not taken', () => {
    const { type, enter, desk, text, state, line, answer } = jobWith(...strip)
    type('.1\r\x1b[200~2 nuts\n3 washers\ntake 9\n4 clips\n\x1b[201~')
    expect(desk.screen.at).toBe('paste')
    expect(text()).toContain('none of them taken yet')
    expect(state().ledger.accounts.size).toBe(1)
    enter('')
    expect(state().ledger.accounts.size).toBe(3)
    expect(line()).toBe('take 9|')
    expect(answer()).toContain('2 of 4 lines were taken')
  })
})

describe('the bell', () => {
  test('rings once for what is recorded, twice to look, three times for what is refused', () => {
    const { enter, rings } = jobWith(...strip)
    enter('.1', '2 nuts')
    expect(rings).toEqual([1])
    enter('fit p1 at I9')
    expect(rings).toEqual([1, 3])
    enter('fit nothing like it')
    expect(rings).toEqual([1, 3, 2])
    enter('', '.2', '.3')
    expect(rings).toEqual([1, 3, 2])
  })

  test('says the verdict of a scanned label', () => {
    const { enter, rings } = jobWith(...strip)
    enter(labelCode(1, 99))
    expect(rings.at(-1)).toBe(3)
  })

  test('is silent when that is wanted, in every job of the home and after a restart', () => {
    const { enter, rings, answer, shelf } = jobWith(...strip)
    enter('sound off')
    expect(answer()).toContain('The bell is silent.')
    enter('.1', '2 nuts')
    expect(rings).toEqual([])
    const again = screens(shelf)
    again.enter('.1', '3 washers')
    expect(again.rings).toEqual([])
    again.enter('bell')
    expect(again.rings).toEqual([1])
  })

  test('is silent also where the home cannot keep that, and says which file', () => {
    const { enter, rings, answer, home } = jobWith(...strip)
    mkdirSync(join(home, '.settings.json'))
    enter('sound off', '.1', '2 nuts')
    expect(rings).toEqual([])
    enter('sound off')
    expect(answer()).toContain(`The file ${join(home, '.settings.json')} cannot be read or written`)
  })
})

test('large letters go on and off', () => {
  const { type, desk } = jobWith(...strip)
  type('*')
  expect(desk.isLarge).toBe(true)
  type('5*')
  expect(desk.isLarge).toBe(true)
})

test('a decimal number alone is the amount of the fluid that is to be filled next', () => {
  const { enter, type, below, state } = jobWith(
    'begin coolant out free, does not hide',
    'off coolant out 2.1 L',
    'end',
  )
  enter('take 1')
  type('2,0')
  expect(below()).toContain('fill 2.0 L of coolant')
  enter('')
  expect(state().fluids.get('f1')).toMatchObject({ filledLitres: 2 })
})

test('a bolt that turns up in an empty bag is known again by number, and what hides its home is said', () => {
  const { enter, text, state } = jobWith(
    'begin pump cover off',
    'off 4 M6x25 hex 8 pump cover bolts into new bag',
    'end',
    'look 1',
    'fit p1',
    'done 1',
  )
  enter('.2', '1', '2', '1')
  expect(text()).toContain('1  it is 1 × pump cover bolt M6x25 hex 8, recorded as fitted')
  enter('1')
  expect(state().ledger.accounts.get('p1')?.at).toEqual(
    new Map([
      ['machine', 3],
      ['c1', 1],
    ]),
  )
  enter('.4')
  expect(text()).toContain('First undo: step 1.')
})

test('one key says that nothing had to be off before, or what else; and the step shows what is not in the bag', () => {
  const { enter, text, state } = jobWith('begin fuel tank off', 'off fuel tank into bench')
  enter(
    '.1',
    'begin exhaust off',
    'rag > exhaust port',
    'mark: bracket leans left',
    'exhaust pipe into bench',
  )
  expect(text()).toContain('STEP SO FAR')
  expect(text()).toContain('1 × exhaust pipe, 1 × rag at exhaust port')
  expect(state().steps.get(2)?.after).toEqual([1])
  enter('5')
  expect(state().steps.get(2)?.after).toEqual([])
})

describe('a number that chooses nothing', () => {
  test.each(['77', '.9', '0'])(
    '%s is said and gone, so that the next one is not typed behind it',
    (typed) => {
      const { enter, line, answer, desk } = screens(shelfIn(emptyHome()))
      enter('', 'blue twin', '', typed)
      expect(answer()).not.toBe('')
      expect(line()).toBe('|')
      enter('.4')
      expect(desk.screen).toEqual({ at: 'left' })
    },
  )
})

describe('a choice that has to be completed', () => {
  test('asks in plain words, until they are typed', () => {
    const { enter, type, line, answer, state } = jobWith('begin valve cover off')
    enter('.1', '9')
    expect(line()).toBe('begin |')
    expect(answer()).toContain('Type what comes off next, as: valve cover off')
    type('sump off')
    expect(answer()).toBe('')
    enter('')
    expect(state().steps.get(2)?.title).toBe('sump off')
  })

  test('asks what shows whether a bolt was turned', () => {
    const { enter, answer, line } = jobWith(
      ...head,
      'look 1',
      'take 1',
      'fit cylinder head',
      'fit head bolts',
      'turn',
      'turn',
      'turn',
      'turn',
      'turn',
      'stop',
    )
    enter('step 1', '2')
    expect(line()).toBe('turned t1 no because |')
    expect(answer()).toContain('Type what shows it, as: the paint mark has not moved')
  })
})

test('from the last of several scans Enter leads back to the work, Backspace to the scan before', () => {
  const { enter, type, desk } = jobWith(...strip, 'bag', 'end')
  enter('.3', labelCode(1, 1), labelCode(1, 2))
  type('\x7f')
  expect(desk.screen).toEqual({ at: 'scan', text: labelCode(1, 1) })
  enter(labelCode(1, 2), '')
  expect(desk.screen).toEqual({ at: 'back' })
})

test('of several items of one line each is said, with the label to be written', () => {
  const { enter, answer } = jobWith('begin cover off')
  enter('.1', '8 M6x25 cover bolts into new bag', '2 dowels; rag > inlet port 1')
  expect(answer()).toContain('put in: 1 × rag at inlet port 1')
  expect(answer()).toContain('before it: came off: 2 × dowels, into bag 1')
  enter('3 M8 nuts; 2 washers into new bag')
  expect(answer()).toContain('write it on bag 2')
})

test('what redo brings back is said', () => {
  const { enter, answer } = jobWith(...strip)
  enter('0', 'redo')
  expect(answer()).toContain('brought back: entry 3, came off: 8 × valve cover bolts')
})

test('what is typed or scanned next replaces the words of a chosen piece that were refused', () => {
  const { desk, enter, type, answer } = jobWith(
    'strip caps',
    'off cam caps I1, I2 into bag',
    'off shims I1, I2 into bag',
  )
  enter('end')
  enter('fit I1 at I2')
  expect(desk.screen.at).toBe('which')
  enter('1')
  expect(answer()).toContain('REFUSED')
  expect(desk.typed().before).toMatch(/^fit p\d at I2$/)
  type('999000123')
  expect(desk.typed()).toEqual({ before: '999000123', after: '' })
})

test('Esc leaves the question which one is meant', () => {
  const { enter, type, desk } = jobWith(...strip, 'off 2 M6x40 valve cover bolts')
  enter('.3', 'move bolts to bench')
  expect(desk.screen.at).toBe('which')
  type('\x1b')
  expect(desk.screen).toEqual({ at: 'back' })
})

describe('a new job', () => {
  test('is not called by a sign alone', () => {
    const { enter, desk, answer } = screens(shelfIn(emptyHome()))
    enter('', '?')
    expect(desk.screen).toEqual({ at: 'new-job', name: null })
    expect(answer()).toContain('A job goes by a name with a letter or a number in it.')
  })

  test('is asked for from within another as on the command line', () => {
    const { enter, desk } = jobWith(...strip)
    enter('new job "pump twin"')
    expect(desk.screen).toEqual({ at: 'new-job', name: 'pump twin' })
  })
})

describe('Enter where a step waits', () => {
  const waiting = [
    'begin cover off',
    'off gasket, single-use into bench',
    'begin sump off',
    'off sump',
    'end',
  ]

  test('leads to the step that comes before', () => {
    const { enter, desk } = jobWith(...waiting)
    enter('step 1', '')
    expect(desk.screen).toEqual({ at: 'step', step: 2 })
  })

  test('records nothing and goes nowhere where only a statement helps', () => {
    const { enter, desk, entries, answer } = jobWith(...waiting, 'look 2', 'take 2', 'fit sump', 'done 2')
    enter('step 1')
    const before = entries()
    enter('', '')
    expect(desk.screen).toEqual({ at: 'step', step: 1 })
    expect(entries()).toBe(before)
    expect(answer()).toContain('A number puts the words that lift it into the line.')
  })
})

describe('what lies in more than one place', () => {
  test('is named with each of them, and look-alikes with their positions', () => {
    const { enter, text } = jobWith(
      'begin cover off',
      'off 7 of 8 M6x25 cover bolts into new bag',
      'off 3 M6x40 long bolts @1..3 into new bag',
      'new 1 p1',
      'end',
      'look 1',
      'take 1',
    )
    enter('step 1')
    expect(text()).toContain('fit 3 × long bolts M6x40 at 1, 2, 3, in bag 2')
    expect(text()).toContain('fit 8 × cover bolts M6x25, 1 on the bench and 7 in bag 1 (')
  })
})

test('what is left over and done with is put away by its number, and read before it is recorded', () => {
  const { enter, line, text, state } = jobWith(
    'begin cover off',
    'off gasket, single-use into new bag',
    'tool: magnet',
    'end',
    'new p1',
    'compare p3: alike keep old',
    'look 1',
    'take 1',
    'fit gasket',
    'done',
  )
  enter('.4')
  expect(text()).toContain('1 × magnet is not back in the toolbox, on the bench')
  enter('')
  expect(line()).toBe('scrap p1|')
  enter('')
  expect(state().ledger.accounts.get('p1')?.at.get('scrap')).toBe(1)
})

test('a step lists the containers to fetch, not those with what is replaced', () => {
  const { enter, text } = jobWith(
    'begin cover off',
    'off gasket, single-use into new bag',
    'off 2 dowels into new bag',
    'new p1',
    'end',
  )
  enter('step 1')
  expect(text()).toMatch(/LIES IN\n +bag 2\n/)
})

test('a check that failed says how to open what it looked at', () => {
  const { enter, text } = jobWith(
    'begin cover off, does not hide',
    'off cover into bench',
    'end',
    'add check does it turn freely after 1',
    'take 1',
    'fit cover',
    'done',
    'take 2',
    'fail 2: it binds',
  )
  enter('step 2')
  expect(text()).toContain('"reopen 1 because ..." when step 1 has to come apart again')
})

test('a job without a first entry is not opened: its line says why, and a new job can be made', () => {
  const home = emptyHome()
  mkdirSync(join(home, 'broken'))
  writeFileSync(join(home, 'broken', 'journal.log'), '')
  const { desk, enter, answer, state } = screens(shelfIn(home))
  expect(desk.session).toBeNull()
  enter('1')
  expect(desk.session).toBeNull()
  expect(answer()).toContain('journal.log')
  enter('2', 'blue twin', '')
  expect(state().job.name).toBe('blue twin')
})

test('words that name nothing are taken for a part that comes off only while something does', () => {
  const { enter, answer } = jobWith('begin cover off', 'off valve cover into bench')
  enter('.3', 'thermostat')
  expect(answer()).toContain('typed on the screen OFF')
  const later = jobWith('begin cover off', 'off valve cover into bench', 'end')
  later.enter('.3', 'thermostat')
  expect(later.answer()).not.toContain('screen OFF')
  later.type('\x1b')
  later.enter('8 M6x25 bolts')
  expect(later.answer()).toContain('typed on the screen OFF')
})

test('Enter alone claims nothing while the window is too small to see what it would be', () => {
  const { desk, enter, entries, answer } = jobWith('begin x off', 'off 4 nuts', 'end', 'take 1')
  enter('step 1')
  const before = entries()
  desk.resize({ width: 50, height: 12 })
  enter('')
  expect(entries()).toBe(before)
  desk.resize({ width: 80, height: 24 })
  expect(answer()).toContain('Enter did nothing while the window was too small.')
  enter('')
  expect(entries()).toBe(before + 1)
})
