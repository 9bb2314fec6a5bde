import { appendFileSync, cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { ENTRY_VERSION } from '../../src/journal/entry.ts'
import { labelCode } from '../../src/label/code.ts'
import { openJournal } from '../../src/storage/journal/open-journal.ts'
import { withLock } from '../../src/storage/lock/lock.ts'
import { goOnAsNewer } from '../support/newer.ts'
import { bench, benchWithJob } from './support/bench.ts'

const coverOff = [
  'begin valve cover off',
  'off 8 M6x1x25 hex 10 valve cover bolts into new bag',
  'off valve cover into bench',
  'end',
]

describe('a job', () => {
  test('is made under the next free number, and chosen', () => {
    const { say, shelf, session } = bench()
    expect(say('new', 'job', 'Blue', 'twin', '--machine', 'parallel twin').out).toContain(
      'job 1 made: Blue twin',
    )
    expect(say('new', 'job', 'Red single', '--units', 'us').out).toContain('job 2 made')
    expect(session().state.job).toMatchObject({ no: 2, name: 'Red single', units: 'us' })
    expect(shelf.list().map(({ no, name, machine, phase }) => [no, name, machine, phase])).toEqual([
      [1, 'Blue twin', 'parallel twin', 'strip-down'],
      [2, 'Red single', '', 'strip-down'],
    ])
  })

  test('needs a name and known units', () => {
    const { say, shelf } = bench()
    expect(say('new', 'job')).toMatchObject({ code: 2, err: expect.stringContaining('no name') })
    expect(say('new', 'job', 'Twin', '--units', 'furlongs')).toMatchObject({ code: 2 })
    expect(shelf.list()).toEqual([])
  })

  test('is the one named, else the one chosen last, else the only one', () => {
    const { say } = bench()
    expect(say('card')).toMatchObject({ code: 4, err: expect.stringContaining('no job yet') })
    say('new', 'job', 'Blue twin')
    say('new', 'job', 'Red single')
    expect(say('card').out).toContain('Red single (job 2)')
    for (const name of ['1', '001', 'blue twin', 'Blue', 'blue-twin']) {
      expect(say('--job', name, 'card').out).toContain('Blue twin (job 1)')
    }
    expect(say('use', '1').out).toContain('job 1 chosen')
    expect(say('card').out).toContain('Blue twin (job 1)')
    expect(say('--job', '3', 'card')).toMatchObject({ code: 4, err: expect.stringContaining("no job '3'") })
    expect(say('use', 'green')).toMatchObject({ code: 4 })
  })

  test('is named by its path as well', () => {
    const { say, home } = benchWithJob()
    expect(say('--job', join(home, 'blue-twin'), 'card').code).toBe(0)
    expect(say('--job', './blue-twin', 'card').code).toBe(0)
    expect(say('--job', './nothing', 'card').code).toBe(4)
  })

  test('goes by its present name once renamed', () => {
    const { say } = benchWithJob()
    expect(say('rename', 'blue twin', 'Green', 'twin').code).toBe(0)
    expect(say('--job', 'green twin', 'rename job Black twin').code).toBe(0)
    expect(say('use', 'black twin').code).toBe(0)
  })

  test('a piece is renamed by the same word, where no job is called so', () => {
    const { say, session } = benchWithJob('begin cover off', 'off 2 drain bolts')
    expect(say('rename', 'drain', 'bolts', 'to', 'drain', 'plugs')).toMatchObject({ code: 0 })
    expect(session().state.ledger.accounts.get('p1')?.piece.name).toBe('drain plugs')
    expect(say('rename', 'blue twin', 'Back', 'to', 'life').code).toBe(0)
    expect(session().state.job.name).toBe('Back to life')
    expect(say('rename', 'nothing', 'to', 'something').err).toContain("No piece is called 'nothing'")
  })

  test('leaves the list when it is archived, and is still there', () => {
    const { say } = benchWithJob()
    say('new', 'job', 'Red single')
    expect(say('archive', '1').code).toBe(0)
    expect(say('archive', '1')).toMatchObject({ code: 1 })
    expect(say('jobs').out).not.toContain('blue twin')
    expect(say('jobs').out).toContain('1 archived')
    expect(say('jobs', '--all').out).toContain('blue twin')
    expect(say('unarchive', 'blue twin').code).toBe(0)
    expect(say('jobs').out).toContain('blue twin')
  })

  test('two of one name are told apart by their numbers', () => {
    const { say } = bench()
    say('new', 'job', 'twin')
    say('new', 'job', 'twin')
    expect(say('use', 'twin')).toMatchObject({ code: 4, err: expect.stringContaining('Several jobs') })
    expect(say('use', '1').code).toBe(0)
  })
})

test('a copy beside its job is told apart by its path', () => {
  const { say, home } = benchWithJob()
  cpSync(join(home, 'blue-twin'), join(home, 'copy'), { recursive: true })
  for (const asked of ['1', 'blue twin']) {
    const { code, err } = say('use', asked)
    expect([code, err]).toEqual([4, expect.stringContaining(`Several jobs answer to '${asked}'`)])
    expect(err).toContain(`${join(home, 'copy')}: job 1, blue twin`)
    expect(err).toContain('Say its path')
  }
  expect(say('use', join(home, 'copy')).code).toBe(0)
  expect(say('jobs').out).toContain(
    `in ${join(home, 'copy')}\n        blue-twin is a copy of it: "merge blue-twin"`,
  )
})

describe('a command says in one line what was recorded, and what follows', () => {
  test('the code to write on a bag that was opened', () => {
    const { say } = benchWithJob('begin valve cover off')
    const { out } = say('off 8 M6x1x25 hex 10 valve cover bolts into new bag')
    expect(out).toContain('3  came off: 8 × valve cover bolts M6x1x25 hex 10, into bag 1')
    expect(out).toContain(`write on bag 1: 001 0001 ${labelCode(1, 1).slice(7)}`)
  })

  test('what a bag line left open', () => {
    const { say } = benchWithJob('begin valve cover off')
    expect(say('off 8 M6x25 valve cover bolts').out).toContain(
      'No pitch was written: M6 is taken with its coarse pitch',
    )
    expect(say('off head gasket').out).toContain('usually not fitted again')
  })

  test('what an undo took back', () => {
    const { say } = benchWithJob(...coverOff)
    expect(say('undo').out).toContain('taken back: all off in step 1')
    expect(say('redo').out).toContain('in force again: all off in step 1')
  })

  test('what is left in the bags of a step that is closed', () => {
    const { say } = benchWithJob(
      ...coverOff,
      'new 2 valve cover bolts into bag 1',
      'look 1',
      'take 1',
      'fit valve cover',
      'fit valve cover bolts',
    )
    expect(say('done').out).toContain('still holds 2 × valve cover bolts')
  })

  test('how to explain a count that does not agree', () => {
    const { say } = benchWithJob(...coverOff)
    expect(say('count 1 = 7').out).toMatch(/7 of 8 .*1 short \(d1\)\n.*explain d1/)
  })

  test('of several items, what was recorded before one was refused', () => {
    const { say } = benchWithJob('begin valve cover off', 'bag')
    const said = say('off 8 M6x1x25 cover bolts; 1 cam cap I1; 1 cam cap I1')
    expect(said.code).toBe(1)
    expect(said.out.match(/came off/g)).toHaveLength(2)
    expect(said.err).toContain('I1')
  })
})

describe('the exit code says what kind of no it is', () => {
  test('0 done', () => {
    expect(benchWithJob().say('begin valve cover off').code).toBe(0)
  })

  test('1 refused', () => {
    const said = benchWithJob(...coverOff).say('fit valve cover')
    expect(said).toMatchObject({ code: 1, out: '' })
    expect(said.err).toContain('look 1')
  })

  test('2 not understood, with the nearest', () => {
    const { say } = benchWithJob(...coverOff)
    expect(say('tkae 1')).toMatchObject({ code: 2, err: expect.stringContaining('Perhaps "take"') })
    expect(say('jbos')).toMatchObject({ code: 2, err: expect.stringContaining('"jobs"') })
    expect(say('new', 'Red single')).toMatchObject({
      code: 2,
      err: expect.stringContaining('putback new job Red single'),
    })
    expect(say('fit cover')).toMatchObject({
      code: 2,
      err: expect.stringMatching(/2 pieces answer to 'cover'/),
    })
  })

  test('3 not recorded: the lock is held', () => {
    const { say, home } = benchWithJob()
    withLock(join(home, 'blue-twin', 'journal.lock'), {}, () => {
      expect(say('begin valve cover off')).toMatchObject({
        code: 3,
        err: expect.stringContaining('ot recorded'),
      })
      expect(say('card').code).toBe(0)
    })
    expect(say('begin valve cover off').code).toBe(0)
  })

  test('3 not recorded: the record is damaged; it can be read, and says so', () => {
    const { say, home } = benchWithJob(...coverOff)
    const journal = join(home, 'blue-twin', 'journal.log')
    const lines = readFileSync(journal, 'utf8').split('\n')
    writeFileSync(
      journal,
      [...lines.slice(0, 3), lines[3]?.replace('valve', 'vulve'), ...lines.slice(4)].join('\n'),
    )
    const read = say('card')
    expect(read).toMatchObject({ code: 0, err: expect.stringMatching(/Line 4 of .*journal\.log is damaged/) })
    expect(read.out).toContain('blue twin')
    expect(say('end')).toMatchObject({ code: 3 })
    expect(say('jobs').out).toContain('is damaged')
  })

  test('3 not recorded: an entry that cannot be, though its checksum agrees', () => {
    const { say, home } = benchWithJob()
    const journal = openJournal<{ n: number; id: string }>(join(home, 'blue-twin'), {
      parse: (raw) => raw as { n: number; id: string },
    })
    const moves = [{ piece: 'p9', count: 1, from: 'bench', to: 'machine' }]
    journal.append(() => [
      { v: 1, n: 2, at: '2030-01-01T08:00:00.000Z', id: 'x', type: 'moved', moves } as never,
    ])
    expect(say('card')).toMatchObject({ code: 0, err: expect.stringMatching(/Line 2 of .*journal\.log/) })
    expect(say('begin valve cover off')).toMatchObject({ code: 3 })
    expect(say('jobs').out).toContain('Line 2')
  })

  test('a torn last line is set aside, and said', () => {
    const { say, home } = benchWithJob(...coverOff)
    appendFileSync(join(home, 'blue-twin', 'journal.log'), '12345678 {"v":1,"n"')
    expect(say('card')).toMatchObject({ code: 0, err: expect.stringContaining('set aside') })
    expect(readdirSync(join(home, 'blue-twin'))).toContain('journal.torn-1')
    expect(say('card').err).toBe('')
  })

  test('3 not recorded: an entry of a newer version; what is before it can be read', () => {
    const { say, ask, home } = benchWithJob()
    goOnAsNewer(join(home, 'blue-twin'))
    const before = readFileSync(join(home, 'blue-twin', 'journal.log'), 'utf8')
    const versions = `version ${ENTRY_VERSION + 1} of the record, this program knows ${ENTRY_VERSION}`
    const says = `Entry 2 was written by a newer putback (${versions}): the job is shown as it stood before that entry.`
    expect(say('card')).toMatchObject({ code: 0, err: expect.stringContaining(says) })
    expect(say('note: here')).toMatchObject({
      code: 3,
      err: expect.stringContaining('Get the newest putback'),
    })
    expect(ask('note: here').json).toMatchObject({ code: 'newer' })
    expect(say('jobs').out).toContain(says)
    expect(readFileSync(join(home, 'blue-twin', 'journal.log'), 'utf8')).toBe(before)
  })

  test('3 not recorded: a job of which not even the first entry is there', () => {
    const { say, ask, home } = benchWithJob()
    mkdirSync(join(home, 'never'))
    writeFileSync(join(home, 'never', 'journal.log'), '')
    for (const line of ['card', 'note: here'])
      expect(say('--job', 'never', line)).toMatchObject({
        code: 3,
        out: '',
        err: expect.stringContaining('has no entry in it'),
      })
    writeFileSync(join(home, 'never', 'journal.log'), 'a shopping list\n')
    expect(ask('--job', 'never', 'card')).toMatchObject({ code: 3, json: { ok: false, code: 'damaged' } })
    expect(say('jobs').out).toMatch(/Line 1 of .*never.journal\.log is damaged/)
  })

  test('4 no such job', () => {
    expect(bench().say('card').code).toBe(4)
  })
})

describe('questions', () => {
  const strip = [...coverOff, 'begin camshafts off', 'off cam caps I1..I4 into new tray 8 slots', 'end']

  test('the card counts what is off, one as one', () => {
    expect(benchWithJob(...coverOff).say('card').out).toContain('9 pieces are off the machine.')
    expect(benchWithJob('begin lid off', 'off lid into bench').say('card').out).toContain(
      '1 piece is off the machine.',
    )
  })

  test('a scan says whether it fits now, by code and by number', () => {
    const { say } = benchWithJob(...strip)
    expect(say('scan', labelCode(1, 2)).out).toContain('FITS NOW, for step 2')
    expect(say('2').out).toContain('FITS NOW, for step 2')
    expect(say('scan 1').out).toMatch(/NOT YET, for step 1, valve cover:\n.*step 2/is)
    for (const line of ['take 2', 'fit I1 at I1', 'fit I2 at I2', 'fit I3 at I3', 'fit I4 at I4', 'done'])
      say(line)
    for (const line of ['count 2 = 1', 'explain d1 cam cap I1 from machine because it lies there']) say(line)
    expect(say('scan 2').out).toContain(
      'NOT YET, for step 2, camshafts, which is closed:\n  "reopen 2 because ..." opens step 2.',
    )
    expect(say('scan 9').out).toContain('No container 9')
    const code = labelCode(1, 2)
    const slip = `${code.slice(0, 3)}${code.slice(4, 5)}${code.slice(3, 4)}${code.slice(5, 7)}${(Number(code.slice(7)) + 1) % 97}`
    expect(say('scan', slip.padEnd(9, '0')).out).toContain('check digits do not agree')
  })

  test('a scan of another job says whose it is', () => {
    const { say } = benchWithJob(...strip)
    say('new', 'job', 'Red single')
    say('--job', '1', 'rename job Old twin')
    expect(say('scan', labelCode(1, 1)).out).toContain('container 1 of job 1, Old twin. Here is job 2')
    expect(say('scan', labelCode(44, 1)).out).toContain('job 44, which is not in this home')
  })

  test.each([
    'card',
    'back',
    'step 1',
    'where',
    'where cam cap',
    'left',
    'log',
    'qr 1',
    'proposals',
    'help',
    'help fit',
    'help tightening',
  ])('%s is answered, in words and as facts', (line) => {
    const { say, ask } = benchWithJob(...strip)
    const { code, out, err } = say(line)
    expect([code, err]).toEqual([0, ''])
    expect(out.length).toBeGreaterThan(20)
    expect(ask(line)).toMatchObject({ code: 0, json: { ok: true, answer: expect.anything() } })
  })

  test('a question writes nothing', () => {
    const { say, home } = benchWithJob(...strip)
    const journal = () => readFileSync(join(home, 'blue-twin', 'journal.log'), 'utf8')
    const before = journal()
    for (const line of [
      'card',
      'scan 1',
      'back',
      'step 1',
      'where',
      'left',
      'log',
      'qr 1',
      'proposals',
      'help',
    ])
      say(line)
    expect(journal()).toBe(before)
  })

  test('help needs no job', () => {
    const { say } = bench()
    expect(say('help')).toMatchObject({ code: 0, err: '' })
    expect(say('help', 'take', 'out').out).toContain('take out [COUNT] AID')
    // Its own words alone: what it takes behind them is asked for only on a line.
    expect(say('help', 'check').out).toContain('check PIECE')
    expect(say('help', 'fti')).toMatchObject({ code: 2, err: expect.stringContaining('"help fit"') })
  })

  test('there is no answer about what is not there', () => {
    const { say } = benchWithJob(...strip)
    expect(say('step 9').code).toBe(1)
    expect(say('qr 9').code).toBe(1)
    expect(say('help abracadabra').code).toBe(2)
    expect(say('where rotor').out).toContain('No piece is called')
  })
})

describe('--json gives exactly one object', () => {
  test('for what was recorded', () => {
    const { ask } = benchWithJob()
    expect(ask('begin valve cover off')).toMatchObject({
      code: 0,
      json: { ok: true, entry: { n: 2, type: 'strip-began' }, text: expect.stringContaining('step 1 begun') },
    })
    expect(ask('off 8 M6x1x25 cover bolts; head gasket, new')).toMatchObject({
      json: { entries: [{ type: 'came-off' }, { type: 'came-off' }], entry: { n: 4 } },
    })
  })

  test('for refusals, misreadings, and no job', () => {
    const { ask } = benchWithJob(...coverOff)
    expect(ask('fit', 'valve', 'cover')).toMatchObject({
      code: 1,
      json: { ok: false, code: 'step-blocked', refusal: { code: 'step-blocked', step: 1, gate: 'start' } },
    })
    expect(ask('tkae', '1')).toMatchObject({ code: 2, json: { ok: false, misreading: { nearest: 'take' } } })
    expect(ask('fit cover')).toMatchObject({ code: 2, json: { ok: false, which: { pieces: ['p1', 'p2'] } } })
    expect(bench().ask('card')).toMatchObject({ code: 4, json: { ok: false, code: 'no-job' } })
  })

  test('for a broken law, under the name of the law', () => {
    const { ask } = benchWithJob('begin caps off', 'off cam caps I1..I4 into new bag', 'end')
    expect(ask('fit cam cap I1 at I2')).toMatchObject({
      code: 1,
      json: { code: 'not-its-position', refusal: { code: 'law', violation: { own: 'I1', tried: 'I2' } } },
    })
  })

  test('never with a cure that is what was said', () => {
    const { say } = benchWithJob()
    expect(say('help nonsense').err).toContain('"help" shows what can be written')
    expect(say('describe').err).toContain('"describe machine TEXT"')
  })

  test('with maps and sets as plain JSON', () => {
    const { ask } = benchWithJob(...coverOff, 'tighten valve cover bolts: 10 Nm')
    const { json } = ask('step 1')
    expect(json).toMatchObject({ answer: { pieces: [{ at: { c1: 8 } }, { at: { bench: 1 } }] } })
  })
})

describe('what is said', () => {
  test('is kept with the name of who said it', () => {
    const { say, session } = benchWithJob()
    say('--by', 'Ann', 'begin valve cover off')
    expect(session().entries().at(-1)).toMatchObject({ by: 'Ann' })
    expect(say('log').out).toContain('[Ann]')
  })

  test('cannot steer the terminal, whoever wrote the record', () => {
    const { say } = benchWithJob('begin valve \u001b[31mcover\u202e off')
    const { out } = say('log')
    expect(out).toContain('valve cover off')
    for (const steering of ['\u001b', '\u202e']) expect(out).not.toContain(steering)
    // An eight-bit control sequence introducer, and a mark that turns the text around.
    const json = say('--json', '--job', 'a\u009bb\u202ec', 'card').out
    expect(json).toContain('a\\u009bb\\u202ec')
    expect(JSON.parse(json)).toMatchObject({ code: 'no-such-job', text: expect.stringContaining('\u202e') })
  })

  test('is drawn for either theme', () => {
    const { say } = benchWithJob('bag')
    expect(say('qr 1').out).toContain('Drawn for a dark terminal')
    expect(say('qr 1', '--invert').out).toContain('Drawn for a light terminal')
    expect(say('qr 1').out.split('\n')[0]).not.toBe(say('qr 1', '--invert').out.split('\n')[0])
  })
})

test('the demo is a job to play with, and whole it is a closed one', () => {
  const { say, session } = bench()
  expect(say('demo')).toMatchObject({ code: 0, err: '' })
  const { state } = session()
  expect(state.job.name).toBe('The blue twin')
  expect([...state.steps.values()].some(({ built }) => built === 'underway')).toBe(true)
  expect(say('left').out).toMatch(/\d+ left over/)
  expect(say('demo', '--whole').out).toContain('closed')
  expect(session().state).toMatchObject({ closed: true, job: { no: 2 } })
})

test('a home that is a file is a trouble with the disk, in one line', () => {
  const { say, home } = bench()
  mkdirSync(join(home, 'x'))
  writeFileSync(join(home, 'x', 'file'), '')
  expect(say('--home', join(home, 'x', 'file'), 'jobs').code).toBe(3)
})
