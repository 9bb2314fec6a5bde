import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createCanvas, loadImage } from '@napi-rs/canvas'
import { beforeAll, describe, expect, test } from 'vitest'
import type { Entry } from '../../src/journal/entry.ts'
import { answerRows } from '../../src/ui/answer.ts'
import { Reader } from '../../src/ui/reader/reader.ts'
import { frameRows } from '../../src/ui/screens/frame.tsx'
import { textOf } from '../../src/ui/text/line.ts'
import { type Bench, bench } from '../cli/support/bench.ts'
import { readCaretCommands } from '../support/decode/caret-commands.ts'
import { readEscapeCommands } from '../support/decode/escape-commands.ts'
import { readPdf } from '../support/decode/pdf.ts'
import { emptyHome, screens, shelfIn } from '../ui/support/bench.ts'
import { demoEntries, smallerJobs } from './demo-entries.ts'
import { retold, writeRaw } from './hostile-record.ts'
import { HOSTILE_TEXTS } from './hostile-texts.ts'
import { readCsv } from './read-csv.ts'

// Every text of a record that came from elsewhere, against every way that it can get out. What steers:
// controls (Unicode Cc: C0, DEL and C1, as ECMA-48 has them), format characters (Cf: bidirectional and invisible), halves of
// characters, and the two separators that end a line in some programs.
const STEERS = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u

let half: readonly Entry[] = []
let early: readonly Entry[] = []
let whole: readonly Entry[] = []

beforeAll(() => {
  const [off = [], built = [], started = []] = demoEntries()
  early = off
  // Somebody by name wrote some of them.
  half = built.map((entry, index) => (index % 3 === 0 ? { ...entry, by: 'somebody' } : entry))
  whole = started
})

/** The texts in turn, each with its number, so that two names stay two. The last has room for the number. */
function hostile(texts = HOSTILE_TEXTS): (index: number) => string {
  return (index) => `${texts[index % texts.length]?.[1].slice(0, 240)}${index}`
}

/** Those that the fonts have all signs of: the others are refused by name, which the labels' own tests show. */
const DRAWABLE = HOSTILE_TEXTS.filter(
  ([, text]) => !/[\u0300-\u1fff\u{10000}-\u{10ffff}\uff00-\uffef]/u.test(text),
)

/** A command line in front of the demo, retold. */
function retoldBench(entries: readonly Entry[], text: (index: number) => string): Bench {
  const on = bench()
  const path = join(on.home, 'from-elsewhere')
  mkdirSync(path)
  writeRaw(path, retold(entries, text))
  return on
}

test('each text that a schema leaves free is told anew, and the record stays lawful', () => {
  const texts = retold(whole, (index) => `text ${index} of the record`)
  expect(JSON.stringify(texts).match(/text \d+ of the record/g)?.length).toBeGreaterThan(800)
  for (const entries of [whole, ...smallerJobs()]) {
    const { shelf, home } = retoldBench(entries, hostile())
    const session = shelf.open(join(home, 'from-elsewhere'))
    expect(session.problem).toBeNull()
    expect(session.entries()).toHaveLength(entries.length)
    expect(JSON.stringify(session.entries())).not.toMatch(
      /\\u00[01]|[\u007f-\u009f]|\\ud[89a-f]|[\p{Cf}\p{Zl}\p{Zp}]/u,
    )
  }
})

/** Milliseconds: a machine with much to do takes its time. */
const PATIENCE = 60_000

const QUESTIONS = [
  'card',
  'back',
  'left',
  'log',
  'where',
  'where p3',
  'next',
  'due',
  'finish',
  'checks',
  'to buy',
  'proposals',
  'photos',
  'record',
  'step 1',
  'step 3',
  'step 9',
  'scan 1',
  'qr 1',
  'label 1',
  'layout head bolts',
  'marker 1',
  'compare p1',
  'found M6x20',
  'shims',
  'labels stocks',
  'labels usual',
  'order',
  'where =1',
  'jobs',
  'help',
  'no line begins so',
  'off',
  'fit p1',
  'note',
  'undo',
  'redo',
  'open 99',
  'put p1 into 99',
  'use nobody',
  'rename step 1 \x1b[2J',
  'note: \x1b]52;c;ZXZpbA==\x07 \u202e said',
  'where \x9b31m',
  'photos import /no/\x1b[31m/folder',
  'labels all to /no/\x1b[31m/x.pdf',
  'labels 1 on \x1b[31m',
  'buy csv to /no/\x1b[31m/x.csv',
]

describe('a record with every text hostile', () => {
  test(
    'says nothing on the command line that steers',
    async () => {
      const on = retoldBench(half, hostile())
      for (const line of QUESTIONS) {
        const { out, err } = await on.send(line)
        expect(`${out}${err}`, line).toMatch(/\S/)
        expect(`${out}${err}`.replaceAll('\n', ''), line).not.toMatch(STEERS)
      }
    },
    PATIENCE,
  )

  test(
    'says nothing in JSON that steers',
    async () => {
      const on = retoldBench(early, hostile())
      for (const line of QUESTIONS) {
        const told = await on.send('--json', line)
        expect(told.err, line).toBe('')
        expect(told.out.replaceAll('\n', ''), line).not.toMatch(STEERS)
        expect(() => JSON.parse(told.out), line).not.toThrow()
      }
    },
    PATIENCE,
  )

  test('shows nothing on the screens that steers, to the eye or to the ear', () => {
    const home = emptyHome()
    mkdirSync(join(home, 'from-elsewhere'))
    writeRaw(join(home, 'from-elsewhere'), retold(half, hostile()))
    const { desk, type } = screens(shelfIn(home))
    const reader = new Reader(desk)
    const seen = new Set<string>()
    const ways = [
      '',
      '1\r',
      '.1\r',
      '.2\r',
      '.3\r',
      '.4\r',
      '.5\r',
      '.6\r',
      'step 1\r',
      'step 9\r',
      'photos\r',
      'buy\r',
      'finish\r',
    ]
    for (const keys of [
      ...ways,
      'proposals\r',
      '?\r',
      '1\r',
      '2\r',
      'jobs\r',
      'p1\r',
      'where p3\r',
      '\x1b[20',
    ]) {
      type(keys)
      const answer = desk.answer()
      const rows = [...frameRows(desk, desk.size).rows, ...(answer ? answerRows(answer, 200) : [])].map(
        textOf,
      )
      const spoken = reader.said.flatMap(({ sentences }) => sentences)
      seen.add(desk.screen.at)
      for (const row of [...rows, ...spoken]) expect(row, `${keys} on ${desk.screen.at}`).not.toMatch(STEERS)
    }
    expect(seen.size).toBeGreaterThan(8)
  })

  test(
    'is printed as labels and sheets, and files lie where they belong',
    async () => {
      const on = retoldBench(half, hostile(DRAWABLE))
      const beside = readdirSync(join(on.home, '..'))
      const printed = async (line: string, name: string) => {
        const { err } = await on.send(`${line} to ${name}`)
        return err === '' ? readFileSync(join(on.home, name)) : null
      }
      const pattern = half.flatMap((entry) => (entry.type === 'laid-out' ? entry.of : []))[0]
      let pages = 0
      for (const line of ['labels machine', 'labels 3', `template ${pattern}`, 'print plan']) {
        const pdf = await printed(line, `${line.replaceAll(' ', '-')}.pdf`)
        expect(pdf, line).not.toBeNull()
        if (!pdf) continue
        const read = await readPdf(new Uint8Array(pdf))
        pages += read.pages.length
        expect(
          `${read.title}${read.pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join('')}`,
        ).not.toMatch(STEERS)
        // What is not packed shows its parts: nothing acts, nothing is fetched, nothing is attached.
        expect(pdf.toString('latin1').replace(/stream\r?\n.*?endstream/gs, '')).not.toMatch(
          /\/(?:JS|JavaScript|OpenAction|AA|Launch|URI|EmbeddedFile|RichMedia|GoToR)\b/,
        )
      }
      expect(pages).toBeGreaterThan(3)

      const svg = (await printed('labels machine', 'machine.svg'))?.toString() ?? ''
      expect(new Set(svg.match(/<[^\s>]*/g))).toEqual(new Set(['<svg', '<rect', '<path', '</svg']))
      expect(svg).not.toMatch(/(?:href|style|class|on\w+)=|&|<!/)
      const canvas = createCanvas(10, 10)
      canvas.getContext('2d').drawImage(await loadImage(Buffer.from(svg)), 0, 0)

      const png = (await printed('labels machine', 'machine.png')) ?? Buffer.alloc(0)
      expect(chunksOf(png)).toEqual(['IHDR', 'pHYs', 'IDAT', 'IEND'])

      const roll = await on.send('labels machine on roll-64x34 as label-roll to -')
      expect(readCaretCommands(roll.bytes)).toHaveLength(1)
      expect(Buffer.from(roll.bytes).toString('latin1')).toMatch(
        /^\^XA\n\^PW\d+\n\^LL\d+\n\^LH0,0\n\^FO0,0\^GFA,\d+,\d+,\d+,[0-9A-F]+\^FS\n\^PQ\d+\n\^XZ\n$/,
      )
      const receipt = await on.send('labels machine on receipt-80 as receipt-roll to -')
      expect(readEscapeCommands(receipt.bytes).length).toBeGreaterThan(0)

      await on.send('labels machine')
      await on.send('print plan')
      expect(readdirSync(join(on.home, '..')).sort()).toEqual([...beside, 'labels'].sort())
      for (const name of readdirSync(join(on.home, '..', 'labels', 'out')))
        expect(name).toMatch(/^[a-z0-9.-]+$/)
    },
    PATIENCE,
  )

  test('is written as a table whose cells are no formulas', async () => {
    const on = retoldBench(half, hostile())
    on.told('want 2 =cmd|x', 'want 3 @SUM of -2')
    const { err } = await on.send('buy csv list.csv')
    expect(err).toBe('')
    const text = readFileSync(join(on.home, 'list.csv'), 'utf8')
    const rows = readCsv(text)
    const width = rows[0]?.length
    expect(rows.length).toBeGreaterThan(3)
    for (const row of rows) {
      expect(row).toHaveLength(width ?? 0)
      for (const cell of row) {
        expect(cell).not.toMatch(/^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]/u)
        expect(cell).not.toMatch(STEERS)
      }
    }
  })
})

describe.skipIf(process.platform === 'win32')('names on the disk that steer', () => {
  test('of a job, of the home, of a label stock, are said without it', async () => {
    const on = bench()
    const [home, folder] = [join(on.home, 'h\x1b[31m'), 'j\x1b]0;x\x07\u202e']
    mkdirSync(join(home, folder), { recursive: true })
    writeFileSync(join(home, folder, 'journal.log'), 'no line\x1b[2J\n')
    mkdirSync(join(home, 'labels'))
    writeFileSync(join(home, 'labels', 's\x1b[2J.json'), '{"\x1b[2J":1}')
    on.say('--home', home, 'new', 'job', 'plain')
    for (const line of [
      'jobs',
      'labels stocks',
      'card',
      'use x',
      `use ${folder}`,
      `use ${join(home, folder)}`,
      'photos import .',
    ]) {
      for (const words of [[line], ['--json', line]]) {
        const { out, err } = await on.send('--home', home, ...words)
        expect(`${out}${err}`.replaceAll('\n', ''), line).not.toMatch(STEERS)
      }
    }
  })
})

/** The chunks of a PNG by their types (PNG third edition, 5.3); several of image data count as one. */
function chunksOf(png: Buffer): string[] {
  const types: string[] = []
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    const type = png.toString('latin1', at + 4, at + 8)
    if (types.at(-1) !== type) types.push(type)
  }
  return types
}
