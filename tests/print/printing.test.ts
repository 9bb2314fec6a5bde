import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, describe, expect, onTestFinished, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { type Bench, bench, benchWithJob } from '../cli/support/bench.ts'
import { readCaretCommands } from '../support/decode/caret-commands.ts'
import { readEscapeCommands } from '../support/decode/escape-commands.ts'
import { pdfPicture, readPdf } from '../support/decode/pdf.ts'
import { cropped, pictureOfDots } from '../support/decode/picture.ts'
import { svgPicture } from '../support/decode/svg.ts'
import { jsqrCode, zxingSymbols } from '../support/decode/symbols.ts'

// From the line as typed to what a decoder that shares nothing with us reads off the paper.

describe('every container of the demo job', () => {
  test.each(['a4-24', 'letter-30', 'a4-65'])('is read off its label on %s', async (stock) => {
    const on = await demo()
    const codes = [...on.session().state.containers.keys()].map((no) => labelCode(1, no))
    const printed = await on.send('labels all', 'on', stock, 'to', 'all.pdf')
    expect(printed).toMatchObject({ code: 0, err: '' })
    expect(await codesOnPages(read(on, 'all.pdf'))).toEqual(new Set(codes))
  })

  test('says in words what its label says in dots', async () => {
    const on = await demo()
    await on.send('labels 8 to bag.pdf')
    const { pages } = await readPdf(read(on, 'bag.pdf'))
    const words = pages[0]?.texts.map(({ text }) => text).join(' ')
    expect(words).toContain('BAG 8')
    expect(words).toContain('8 × valve cover bolts')
    expect(words).toContain('valve cover, step 7')
    expect(words).toContain('001 0008 47')
  })
})

describe('one label', () => {
  test.each(['svg', 'png'])('as %s is read back', async (form) => {
    const on = await demo()
    await on.send(`labels 8 to bag.${form}`)
    const picture =
      form === 'svg'
        ? await svgPicture(new TextDecoder().decode(read(on, 'bag.svg')), 300)
        : await svgPicture(pngInSvg(read(on, 'bag.png')), 203)
    const found = await zxingSymbols(picture)
    expect(new Set(found.map(({ code }) => code))).toEqual(new Set([labelCode(1, 8)]))
  })

  test.each([203, 300])(
    'in the commands of both kinds of roll printer at %i dpi is read back',
    async (dpi) => {
      const on = await demo()
      const label = await on.send(`labels 8 as label-roll at ${dpi} 2 copies to -`)
      const [first, ...more] = readCaretCommands(label.bytes)
      expect(more).toEqual([])
      expect(first?.copies).toBe(2)
      const receipt = await on.send(`labels 8 as receipt-roll at ${dpi} to -`)
      const strips = readEscapeCommands(receipt.bytes)
      for (const bitmap of [first?.bitmap, ...strips]) {
        if (!bitmap) throw new Error('nothing printed')
        const picture = pictureOfDots(bitmap, 40)
        const found = await zxingSymbols(picture)
        expect(new Set(found.map(({ code }) => code))).toEqual(new Set([labelCode(1, 8)]))
        // jsQR looks for one symbol in a picture: each is shown to it by itself.
        const side = Math.round((20 * dpi) / 25.4)
        for (const { x, y } of found) {
          const alone = cropped(picture, Math.round(x - side / 2), Math.round(y - side / 2), side, side)
          expect(jsqrCode(alone)).toBe(labelCode(1, 8))
        }
      }
    },
  )

  test('is one: several do not go into one picture', async () => {
    const on = await demo()
    expect(await on.send('labels all to all.svg')).toMatchObject({ code: 1 })
    expect(readdirSync(on.home)).not.toContain('all.svg')
  })
})

describe('unused labels', () => {
  test('of two runs printed before either is used have no number twice, and none of a container', async () => {
    const on = benchWithJob('begin cover off', 'off 8 M6x25 hex 10 bolts')
    await on.send('labels blank 5 to one.pdf')
    await on.send('labels blank 5 to two.pdf')
    const one = await codesOnPages(read(on, 'one.pdf'))
    const two = await codesOnPages(read(on, 'two.pdf'))
    expect([...one, ...two].sort()).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11].map((no) => labelCode(1, no)))
    on.told('off valve cover into new tag')
    expect([...on.session().state.containers.keys()]).toEqual([1, 12])
  })

  test('fill what is left of a sheet', async () => {
    const on = benchWithJob()
    await on.send('labels blank sheet on a4-24 from 20 to rest.pdf')
    expect((await codesOnPages(read(on, 'rest.pdf'))).size).toBe(5)
  })

  test('are a page of 65, read 65 of 65', async () => {
    const on = benchWithJob()
    await on.send('labels blank sheet on a4-65 to page.pdf')
    const codes = Array.from({ length: 65 }, (_, index) => labelCode(1, index + 1))
    expect([...(await codesOnPages(read(on, 'page.pdf')))].sort()).toEqual(codes)
  })

  test('deal nothing when they cannot be drawn', async () => {
    const on = benchWithJob()
    writeFileSync(join(labelsOf(on), 'tiny.json'), JSON.stringify(TINY))
    for (const line of [
      'labels blank 5 on nothing',
      'labels blank 5 on a4-24 from 25',
      'labels blank 5 on a4-24 shift 40 0',
      'labels blank 5 to five.svg',
      'labels blank 1 copies 2 to two.png',
      'labels blank 1001',
      'labels blank 5 on tiny',
    ]) {
      expect(await on.send(line), line).toMatchObject({ code: 1 })
    }
    expect(on.session().state.dealt.container).toBe(0)
  })

  test('that did not reach the printer are named, and can be printed again', async () => {
    const on = benchWithJob()
    const { code, err, out } = await on.send('labels blank 5 to tcp 127.0.0.1:1')
    expect(code).toBe(3)
    expect(out).toContain('labels 1 to 5')
    expect(err).toContain('"labels blank again 1..5"')
    on.told('begin cover off', 'off cover into tag 2', 'void 3 because torn')
    const again = await on.send('labels blank again 1..5 to again.pdf')
    expect(again.out).toContain('2 of 1 to 5 are in use, void or were never dealt')
    expect(await codesOnPages(read(on, 'again.pdf'))).toEqual(
      new Set([1, 4, 5].map((no) => labelCode(1, no))),
    )
  })
})

describe('a connection', () => {
  test('gets a flag for each end, and hangs on a tag from then on', async () => {
    const on = benchWithJob('begin hoses off', 'off hose: pump outlet > radiator top')
    const { code, out } = await on.send('flags hose to flags.pdf')
    expect(code).toBe(0)
    expect(out).toContain('tag 1')
    const { pages } = await readPdf(read(on, 'flags.pdf'))
    const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ')
    for (const part of ['A', 'B', 'pump outlet', 'radiator top']) expect(words).toContain(part)
    expect(await codesOnPages(read(on, 'flags.pdf'))).toEqual(new Set([labelCode(1, 1)]))
    expect([...on.session().state.ledger.accounts.values()].map(({ at }) => [...at])).toEqual([
      [['c1', 1]],
      [['c1', 1]],
    ])
  })

  test('that stands on the machine again, or is none, gets none', async () => {
    const on = benchWithJob('begin hoses off', 'off hose: pump outlet > radiator top', 'off cover into bench')
    expect(await on.send('flags cover')).toMatchObject({ code: 1 })
    on.told('end', 'take 1', 'fit p1 at pump outlet', 'fit p2 at radiator top')
    expect(await on.send('flags hose')).toMatchObject({ code: 1 })
    expect(on.session().state.containers.size).toBe(0)
  })
})

test('the tag of the machine says why it must not be started, and its code is the job', async () => {
  const on = benchWithJob('begin cover off', 'off 8 M6x25 hex 10 bolts', 'off rag > inlet port 1')
  await on.send('labels machine to tag.pdf')
  const { pages } = await readPdf(read(on, 'tag.pdf'))
  const words = pages[0]?.texts.map(({ text }) => text).join(' ')
  expect(words).toContain('NOT READY TO START')
  expect(words).toContain('8 pieces off')
  expect(words).toContain('1 rag in it')
  expect(await codesOnPages(read(on, 'tag.pdf'))).toEqual(new Set([labelCode(1, 9000)]))
})

test('the plan and a template are whole sheets, with a symbol for each step and for the tray', async () => {
  const on = await demo()
  await on.send('print plan to plan.pdf')
  const codes = await codesOnPages(read(on, 'plan.pdf'))
  for (const step of on.session().state.steps.keys()) expect(codes).toContain(labelCode(1, 9000 + step))
  await on.send('template cam caps laid out 2x4 arrow left on letter to caps.pdf')
  const { pages } = await readPdf(read(on, 'caps.pdf'))
  expect(pages).toHaveLength(1)
  expect(await codesOnPages(read(on, 'caps.pdf'))).toEqual(new Set([labelCode(1, 12)]))
  expect(await on.send('print plan to tcp 127.0.0.1:1 as label-roll')).toMatchObject({ code: 1 })
})

describe('a printer in the network', () => {
  test('gets the labels that go to it by default once that is usual, and nothing before', async () => {
    const on = await demo()
    const { port, received } = await printer()
    await on.send(`labels usual on roll-64x34 to tcp 127.0.0.1:${port}`)
    const { out } = await on.send('labels 8')
    expect(out).toContain(`127.0.0.1:${port}`)
    const [label] = readCaretCommands(await received)
    if (!label) throw new Error('nothing printed')
    const found = await zxingSymbols(pictureOfDots(label.bitmap, 40))
    expect(found[0]?.code).toBe(labelCode(1, 8))
    expect((await on.send('labels usual none')).out).toContain('nothing is usual')
  })

  test('is not sent a form that it does not take', async () => {
    const on = await demo()
    await on.send('labels usual on roll-64x34 to tcp 127.0.0.1:1')
    for (const form of ['pdf', 'png', 'svg']) {
      const { code, out } = await on.send(`labels 8 as ${form}`)
      expect(code, form).toBe(0)
      expect(out).toContain(`001-8.${form}`)
    }
    expect((await on.send('labels 8 as label-roll')).code).toBe(3)
  })

  test('is not sent the sheets of another stock', async () => {
    const on = await demo()
    await on.send('labels usual on roll-64x34 to tcp 127.0.0.1:1')
    expect(await on.send('labels usual on a4-24')).toMatchObject({ out: 'usual: on a4-24\n' })
    await on.send('labels usual on roll-64x34 to tcp 127.0.0.1:1')
    expect((await on.send('labels 8 on a4-24')).code).toBe(0)
    expect((await on.send('print plan')).code).toBe(0)
  })
})

test.each(['labels 99', 'labels 2', 'labels 3', 'labels step 9', 'labels all'])(
  '%s: nothing to print',
  async (line) => {
    const on = benchWithJob('begin cover off', 'bag', 'void 1 because torn')
    await on.send('labels blank 2 to blank.pdf')
    const { code, err } = await on.send(line)
    expect(code).toBe(1)
    expect(err).toMatch(/\n.*"/)
  },
)

test('all labels that cannot be drawn are named at once, and with another name they can', async () => {
  const on = benchWithJob()
  on.say('begin cover off')
  on.say('off 3 🔩 bolts M6x20 into new bag')
  on.say('off مسمار into new bag')
  const refused = await on.send('labels all')
  expect(refused.code).toBe(1)
  expect(refused.err).toContain('2 labels cannot be drawn.')
  expect(refused.err).toContain("Bag 1 cannot be drawn: the fonts have no '🔩' (U+1F529).")
  expect(refused.err).toContain('Bag 2 cannot be drawn')
  on.say('rename p1 to golden bolts')
  on.say('rename p2 to nail')
  expect(await on.send('labels all to all.pdf')).toMatchObject({ code: 0 })
  expect(await on.send('print plan to plan.pdf')).toMatchObject({ code: 0 })
})

/** Told once, for it takes many lines; each test has a copy of its own. */
async function demo(): Promise<Bench> {
  const made = bench()
  if (toldDemo === null) {
    made.say('demo')
    toldDemo = mkdtempSync(join(tmpdir(), 'putback-demo-'))
    cpSync(made.home, toldDemo, { recursive: true })
  } else {
    cpSync(toldDemo, made.home, { recursive: true })
  }
  return made
}

let toldDemo: string | null = null
afterAll(() => {
  if (toldDemo !== null) rmSync(toldDemo, { recursive: true, force: true })
})

/** The folder of a user's own stocks. */
function labelsOf({ home }: Bench): string {
  const path = join(dirname(home), 'labels')
  mkdirSync(path, { recursive: true })
  return path
}

function read({ home }: Bench, name: string): Uint8Array {
  return new Uint8Array(readFileSync(join(home, name)))
}

async function codesOnPages(pdf: Uint8Array): Promise<Set<string>> {
  const codes = new Set<string>()
  const { pages } = await readPdf(pdf.slice())
  for (const index of pages.keys()) {
    for (const { code } of await zxingSymbols(await pdfPicture(pdf.slice(), 200, index + 1))) codes.add(code)
  }
  return codes
}

/** A PNG as the only picture of an SVG of its own size, so that Skia reads it. */
function pngInSvg(png: Uint8Array): string {
  const view = new DataView(png.buffer, png.byteOffset)
  const [width, height] = [view.getUint32(16), view.getUint32(20)]
  const data = Buffer.from(png).toString('base64')
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${(width / 203) * 25.4}mm" height="${(height / 203) * 25.4}mm" viewBox="0 0 ${width} ${height}"><image width="${width}" height="${height}" xlink:href="data:image/png;base64,${data}"/></svg>`
}

async function printer(): Promise<{ port: number; received: Promise<Uint8Array> }> {
  const server = createServer()
  const received = new Promise<Uint8Array>((resolve) => {
    server.on('connection', (socket) => {
      const parts: Buffer[] = []
      socket.on('data', (part) => parts.push(part))
      socket.on('end', () => resolve(new Uint8Array(Buffer.concat(parts))))
    })
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => void server.close())
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('no port')
  return { port: address.port, received }
}

const TINY = {
  name: 'tiny',
  says: 'too small for any symbol',
  page: { width: 12, height: 12 },
  columns: 1,
  rows: 1,
  label: { width: 10, height: 10 },
  margin: { left: 1, top: 1 },
  gap: { x: 0, y: 0 },
  corner: 0,
  dpi: 203,
  kind: 'roll',
}
