import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { readArguments } from '../../src/cli/arguments.ts'
import { openDesk } from '../../src/cli/cli.ts'
import { errandsOf } from '../../src/cli/errands.ts'
import { contents } from '../storage/backup/support/kept-job.ts'
import { type Bench, bench, benchWithJob } from './support/bench.ts'

/** A job with one picture, and a folder beside the home that stands for a stick. */
function withStick() {
  const made = benchWithJob('begin valve cover off', 'off 8 M6x25 hex 10 valve cover bolts into new bag')
  const stick = join(dirname(made.home), 'stick')
  mkdirSync(stick)
  const job = made.shelf.chosen() as string
  addPicture(made, job, '20300101-081500.jpg')
  return { ...made, stick, job }
}

function addPicture(made: Bench, job: string, file: string) {
  const bytes = Buffer.from(`bytes of ${file}`)
  mkdirSync(join(job, 'photos'), { recursive: true })
  writeFileSync(join(job, 'photos', file), bytes)
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  const outcome = made
    .session()
    .send({ do: 'add-pictures', pictures: [{ file, sha256, taken: null, belongs: { container: 1 } }] })
  if (outcome.kind !== 'recorded') throw new Error(JSON.stringify(outcome))
}

/** What is told of a back-up lies in the folder that it names, and nowhere else. */
const filesOf = (folder: string) => readdirSync(folder).sort()

describe('backup', () => {
  test('puts the job into one file among the back-ups of the home, and reminds of the disk', async () => {
    const { home, send } = withStick()
    const { code, out } = await send('backup')
    const [file = ''] = filesOf(join(home, 'backups'))
    expect(file).toMatch(/^1-blue-twin-2030-01-01-\d{4}\.zip$/)
    expect(code).toBe(0)
    expect(out).toMatch(
      /^Backed up and read back whole: job 1, blue twin: 4 entries, 1 picture, \d+ (?:bytes|kB)\.\n/,
    )
    expect(out).toContain(`in ${join(home, 'backups', file)}\n`)
    expect(out).toContain('It lies on the same disk as the job, and goes with it: copy it to a stick')
    expect(out.split('\n').filter((line) => /NOT COMPLETE|HURT|not as/.test(line))).toEqual([])
  })

  test('goes into a folder or under a name that is said, and over nothing', async () => {
    const { stick, send } = withStick()
    expect((await send('backup', 'to', '../stick')).out).toContain(stick)
    const named = join(stick, 'my twin.zip')
    expect((await send('backup', 'to', `"${named}"`)).code).toBe(0)
    const before = contents(stick)
    const again = await send('backup', 'to', named)
    expect([again.code, again.out]).toEqual([1, ''])
    expect(again.err).toContain('my twin.zip is there already, and nothing is written over it.')
    expect(contents(stick)).toEqual(before)
    expect(filesOf(stick)).toHaveLength(2)
  })

  test('makes no folder behind an empty mount', async () => {
    const { home, send } = withStick()
    const nowhere = join(dirname(home), 'stik')
    for (const to of [nowhere, join(nowhere, 'twin.zip')]) {
      const { code, err } = await send('backup', 'to', to)
      expect([code, err]).toEqual([
        1,
        expect.stringContaining(`There is no folder ${nowhere}.\nPlug the stick in`),
      ])
    }
    expect(existsSync(nowhere)).toBe(false)
  })

  test('says what is not in it, and what is not as it was', async () => {
    const { job, stick, send, ...made } = withStick()
    addPicture(made as Bench, job, '20300101-081600.jpg')
    rmSync(join(job, 'photos', '20300101-081500.jpg'))
    writeFileSync(join(job, 'photos', '20300101-081600.jpg'), 'scratched')
    const { code, out } = await send('backup', 'to', stick)
    expect(code).toBe(0)
    expect(out).toContain(
      'NOT COMPLETE: 1 file of the job is not in it: photos/20300101-081500.jpg (not there).',
    )
    expect(out).toContain(
      '1 picture is not as the record says, and in it as found: photos/20300101-081600.jpg.',
    )
  })

  test('takes a hurt record as it is, even where not one entry is legible', async () => {
    const { job, stick, send, say } = withStick()
    const journal = join(job, 'journal.log')
    const lines = readFileSync(journal, 'utf8').split('\n')
    lines[2] = lines[2]?.replace('valve', 'value') ?? ''
    writeFileSync(journal, lines.join('\n'))
    expect((await send('backup', 'to', stick)).out).toContain(
      'THE RECORD IS HURT at line 3, and was put in as it is',
    )
    writeFileSync(journal, `x${lines.join('\n')}`)
    expect(say('card').code).toBe(3)
    const { code, out } = await send('backup', 'to', stick)
    expect(code).toBe(0)
    expect(out).toContain('the job in blue-twin: 0 entries')
    expect(out).toContain('THE RECORD IS HURT at line 1')
    expect(filesOf(stick)).toEqual([
      expect.stringMatching(/^1-blue/),
      expect.stringMatching(/^blue-twin-2030/),
    ])
  })

  test('all: one of each job, whichever is chosen, and those that cannot be are named', async () => {
    const { home, stick, say, send } = withStick()
    say('new', 'job', 'grey triple')
    say('new', 'job', 'red single')
    writeFileSync(join(home, '.chosen'), 'nothing')
    const { code, out } = await send('backup', 'all', 'to', stick)
    expect(code).toBe(0)
    expect(out.match(/Backed up and read back whole: job \d/g)).toHaveLength(3)
    expect(out.match(/same disk/g)).toHaveLength(1)
    expect(filesOf(stick).map((file) => file.replace(/-2030.*/, ''))).toEqual([
      '1-blue-twin',
      '2-grey-triple',
      '3-red-single',
    ])
    truncateSync(join(home, 'grey-triple', 'journal.log'), 129 * 1024 * 1024)
    const some = await send('backup', 'all', 'to', stick)
    expect(some.code).toBe(3)
    expect(some.out.match(/Backed up and read back whole: job [13]/g)).toHaveLength(2)
    expect(some.err).toContain('1 of 3 jobs is not backed up.\n  Grey-triple: The file ')
    expect(some.err).toContain('journal.log cannot be read or written: ')
  })

  test('all, where there is no job', async () => {
    const { home, send } = bench()
    expect(await send('backup', 'all')).toMatchObject({ code: 0, out: 'There is no job to back up.\n' })
    expect(filesOf(home)).toEqual([])
    expect((await send('backup')).code).toBe(4)
  })

  test('is one object with --json', async () => {
    const { stick, send } = withStick()
    const { out, err } = await send('--json', 'backup', 'to', stick)
    expect(err).toBe('')
    expect(JSON.parse(out)).toMatchObject({
      ok: true,
      answer: {
        backups: [{ job: { no: 1, entries: 4, hurt: null }, pictures: 1, missing: [], changed: [] }],
      },
    })
  })

  test('is an errand of the screens, and tells how far it is', async () => {
    const { home, stick, session } = withStick()
    const { options } = readArguments([]) as Extract<ReturnType<typeof readArguments>, { options: unknown }>
    const desk = openDesk(
      { words: [], options },
      { env: { PUTBACK_HOME: home }, cwd: home, colour: false, out() {}, error() {} },
    )
    const heard: string[] = []
    const outcome = await errandsOf(desk).run(
      { errand: 'backup', isAll: false, to: stick },
      session(),
      (text) => heard.push(text),
    )
    expect(outcome).toMatchObject({ ok: true, entries: [] })
    expect(heard).toEqual([
      'blue-twin: writing 1 of 2',
      'blue-twin: writing 2 of 2',
      'blue-twin: reading back 1 of 2',
      'blue-twin: reading back 2 of 2',
    ])
  })
})

describe('restore', () => {
  async function backedUp() {
    const made = withStick()
    await made.send('backup', 'to', made.stick)
    const [file = ''] = filesOf(made.stick)
    return { ...made, file: join(made.stick, file) }
  }

  test('makes the job again, and chooses it', async () => {
    const { file, home, job, say, send } = await backedUp()
    const [before, where] = [contents(job), say('where').out]
    rmSync(job, { recursive: true })
    const { code, out } = await send('restore', file)
    expect(code).toBe(0)
    expect(out).toBe(
      `Restored, every byte as it was put in: job 1, blue twin: 4 entries, 1 picture.\n    in ${join(home, 'blue-twin')}\n`,
    )
    expect(contents(job)).toEqual(before)
    expect(say('where').out).toBe(where)
    expect(say('where').code).toBe(0)
  })

  test('never goes over the job that is there, and says what brings both together', async () => {
    const { file, home, job, send } = await backedUp()
    const before = contents(home)
    const { code, err } = await send('restore', file)
    expect(code).toBe(1)
    expect(err).toContain(`The job of this back-up is here already: job 1, blue twin, in ${job}.`)
    expect(err).toContain(`"merge ${file}"`)
    expect(contents(home)).toEqual(before)
  })

  test('leaves no two jobs with one number on their labels', async () => {
    const { file, home, job, say, send } = await backedUp()
    rmSync(job, { recursive: true })
    say('new', 'job', 'grey triple')
    const before = contents(home)
    const { code, err } = await send('restore', file)
    expect(code).toBe(1)
    expect(err).toContain('Another job here has the number of the one in this back-up: job 1, grey triple')
    expect(err).toContain(`"putback --home DIR restore ${file}"`)
    expect(contents(home)).toEqual(before)
    const other = join(dirname(home), 'other')
    expect((await send('--home', other, 'restore', file)).code).toBe(0)
    expect(filesOf(other).filter((name) => !name.startsWith('.'))).toEqual(['blue-twin'])
  })

  test('takes nothing of what is no back-up', async () => {
    const { file, home, job, stick, send } = await backedUp()
    rmSync(job, { recursive: true })
    const bytes = readFileSync(file)
    const cut = join(stick, 'cut.zip')
    writeFileSync(cut, bytes.subarray(0, -30))
    const flipped = join(stick, 'flipped.zip')
    const at = bytes.indexOf('bytes of 2030')
    writeFileSync(flipped, Buffer.concat([bytes.subarray(0, at), Buffer.from('X'), bytes.subarray(at + 1)]))
    const before = contents(home)
    const told = async (path: string) => {
      const { code, err } = await send('restore', path)
      expect(code).toBe(3)
      expect(contents(home)).toEqual(before)
      return err
    }
    expect(await told(cut)).toContain(`${cut} is no back-up: it is no ZIP file, or one that was cut short.`)
    expect(await told(flipped)).toContain(
      `${flipped} is damaged: 'photos/20300101-081500.jpg' in it is not what was put in.`,
    )
  })

  test('says of a folder which back-ups are in it, and of a name that is not there that it is not', async () => {
    const { stick, send } = withStick()
    const nothing = await send('restore', stick)
    expect([nothing.code, nothing.err]).toEqual([
      1,
      expect.stringContaining(`${stick} is a folder, and there is no back-up in it.`),
    ])
    await send('backup', 'to', stick)
    const [file] = filesOf(stick)
    expect((await send('restore', stick)).err).toContain(
      `one file is restored.\nName the one in it: ${file}.`,
    )
    const gone = join(stick, 'gone.zip')
    expect(await send('restore', gone)).toMatchObject({
      code: 1,
      err: `There is no file ${gone}.\n  Nothing was restored.\nPlug the stick in, or look how the file is called, then say it again.\n`,
    })
  })

  test('wants a file, and stands in no file of commands', async () => {
    const { file, home, say, send } = await backedUp()
    expect(await send('restore')).toMatchObject({
      code: 2,
      err: expect.stringContaining('"putback restore FILE"'),
    })
    writeFileSync(join(home, 'lines.txt'), `restore ${file}\n`)
    expect((await send('run', join(home, 'lines.txt'))).err).toContain(
      "'restore' cannot stand in a file of commands",
    )
    expect(say('help', 'restore').out).toContain('restore FILE')
  })

  test('takes a file through a link that was named', async () => {
    const { file, home, job, stick, send } = await backedUp()
    rmSync(job, { recursive: true })
    symlinkSync(file, join(stick, 'link to it.zip'))
    expect((await send('restore', join(stick, 'link'), 'to', 'it.zip')).code).toBe(0)
    expect(existsSync(join(home, 'blue-twin', 'journal.log'))).toBe(true)
  })
})

test('a line of backup that is not understood is said so', () => {
  const { say } = benchWithJob()
  for (const line of ['backup to', 'backup everything', 'backup all from here'])
    expect(say(line), line).toMatchObject({ code: 2, out: '' })
})
