import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import type { Bitmap } from '../../src/label/render/bitmap.ts'
import { type Bench, benchWithJob } from '../cli/support/bench.ts'
import { readCaretCommands } from '../support/decode/caret-commands.ts'
import { readPdf } from '../support/decode/pdf.ts'
import { pictureOfDots } from '../support/decode/picture.ts'
import { zxingSymbols } from '../support/decode/symbols.ts'

// What a person says of a print is done or refused, and never left out in silence.

const bolts = () => benchWithJob('begin cover off', 'off 8 M6x25 hex 10 cover bolts')
const read = ({ home }: Bench, name: string) => new Uint8Array(readFileSync(join(home, name)))

describe('a shift', () => {
  test.each([
    [203, 16, -8],
    [300, 24, -12],
  ])('moves a label of a roll by whole dots at %i dpi, and its symbol is read', async (dpi, right, down) => {
    const on = bolts()
    const asPrinted = async (clause: string) => {
      const { bytes } = await on.send(`labels 1 on roll-64x34 as label-roll at ${dpi} ${clause} to -`)
      const [label] = readCaretCommands(bytes)
      if (!label) throw new Error('nothing printed')
      return label.bitmap
    }
    const still = await asPrinted('')
    const moved = await asPrinted('shift 2 -1')
    expect(cornerOf(moved)).toEqual({ x: cornerOf(still).x + right, y: cornerOf(still).y + down })
    const symbols = await zxingSymbols(pictureOfDots(moved, 40))
    expect(new Set(symbols.map(({ code }) => code))).toEqual(new Set([labelCode(1, 1)]))
  })

  test.each(['print plan', 'template cam caps'])('or a first label means nothing to %s', async (what) => {
    const on = benchWithJob('begin cam out', 'off cam caps I1..I4')
    for (const clause of ['shift 1 0', 'from 3']) {
      const { code, err } = await on.send(`${what} ${clause}`)
      expect(code, clause).toBe(1)
      expect(err).toContain('on whole pages')
    }
    expect((await on.send('labels calibration on a4-24 from 3')).code).toBe(1)
    expect((await on.send('labels calibration on a4-24 shift 1 0')).code).toBe(0)
  })
})

test('copies of a plan are whole sets, one after the other', async () => {
  const on = bolts()
  await on.send('print plan to once.pdf')
  await on.send('print plan copies 3 to thrice.pdf')
  const [once, thrice] = [await readPdf(read(on, 'once.pdf')), await readPdf(read(on, 'thrice.pdf'))]
  const words = (pages: typeof once.pages) =>
    pages.map(({ texts }) => texts.map(({ text }) => text).join(' '))
  expect(words(thrice.pages)).toEqual([...words(once.pages), ...words(once.pages), ...words(once.pages)])
})

test('one picture holds no copies', async () => {
  const on = bolts()
  expect(await on.send('labels 1 copies 2 to bag.png')).toMatchObject({ code: 1 })
  expect(existsSync(join(on.home, 'bag.png'))).toBe(false)
})

test('a label of more dots than can be drawn is refused, before a number is dealt to it', async () => {
  const on = bolts()
  mkdirSync(join(on.home, '..', 'labels'))
  const page = { width: 210, height: 900 }
  const poster = { name: 'poster', says: 'a poster', page, columns: 1, rows: 1, label: page }
  const rest = { margin: { left: 0, top: 0 }, gap: { x: 0, y: 0 }, corner: 0, dpi: 2400, kind: 'roll' }
  writeFileSync(join(on.home, '..', 'labels', 'poster.json'), JSON.stringify({ ...poster, ...rest }))
  for (const line of ['labels 1 on poster to big.png', 'labels blank 2 on poster as label-roll to big.txt']) {
    const { code, err } = await on.send(line)
    expect(code).toBe(1)
    expect(err).toContain('19843 x 85039 dots')
  }
  expect(on.session().state.dealt.container).toBe(1)
  expect((await on.send('labels 1 on poster to big.pdf')).code).toBe(0)
})

describe('standard output', () => {
  test('takes the file alone, and with --json the answer stands on standard error', async () => {
    const on = bolts()
    const { bytes, out, err } = await on.send('--json', 'labels', '1', 'to', '-')
    expect(new TextDecoder().decode(bytes.slice(0, 5))).toBe('%PDF-')
    expect(out).toBe('')
    expect(JSON.parse(err)).toMatchObject({ ok: true, answer: { count: 1, where: 'standard output' } })
  })

  test('of a file of commands is full of words: no label goes there, and none is dealt', async () => {
    const on = bolts()
    writeFileSync(join(on.home, 'work.txt'), 'labels blank 3 to -\n')
    const { code, err } = await on.send('run', join(on.home, 'work.txt'))
    expect(code).toBe(1)
    expect(err).toContain('standard output')
    expect(on.session().state.dealt.container).toBe(1)
  })
})

test('one unused label is called one', async () => {
  const on = benchWithJob()
  const { out } = await on.send('labels blank 1')
  expect(out).toContain('drawn: unused label 1, 1 label')
  expect(readdirSync(join(on.home, '..', 'labels', 'out'))).toEqual(['001-unused-1.pdf'])
})

/** The topmost and leftmost dark dots. */
function cornerOf({ width, height, rowBytes, dots }: Bitmap): { x: number; y: number } {
  const isDark = (x: number, y: number) => ((dots[y * rowBytes + (x >> 3)] ?? 0) & (0x80 >> (x & 7))) !== 0
  const columns = Array.from({ length: width }, (_, x) => x)
  const rows = Array.from({ length: height }, (_, y) => y)
  return {
    x: columns.findIndex((x) => rows.some((y) => isDark(x, y))),
    y: rows.findIndex((y) => columns.some((x) => isDark(x, y))),
  }
}
