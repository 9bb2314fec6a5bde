import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readArguments } from '../../src/cli/arguments.ts'
import { Desk } from '../../src/cli/desk.ts'
import { DiskShelf } from '../../src/cli/job-shelf.ts'
import { runFile } from '../../src/cli/run-file.ts'
import { sheetPages } from '../../src/label/sheet.ts'
import { labelsOnPage } from '../../src/label/stock.ts'
import { readFormat } from '../../src/photos/picture-format.ts'
import { readLabels, Undecodable } from '../../src/photos/read-labels.ts'
import { readPicture } from '../../src/photos/read-picture.ts'
import { findStocks } from '../../src/print/stocks.ts'
import { usualHow } from '../../src/print/usual.ts'
import { nodeFileSystem } from '../../src/storage/files/file-system.ts'
import { soundWanted } from '../../src/storage/sound-setting.ts'
import { badStockText, howText } from '../../src/words/printing.ts'
import { type Chance, chanceOf } from '../support/damage/chance.ts'
import { jpegOf, pngChunk, pngOf, withApp1 } from '../support/photos/encode.ts'
import { exifBlock } from '../support/photos/exif.ts'
import { drawScene } from '../support/photos/scene.ts'
import { type FuzzReport, faultOf, newReport, note, steers } from './fuzz-report.ts'
import { HOSTILE_TEXTS } from './hostile-texts.ts'
import { mutated, mutatedJson } from './mutated.ts'

/** Files that come from outside: each kind makes a damaged one and has the program read it. Answers what came. */
type Import = (chance: Chance, folder: string) => Promise<string> | string

const SHARES: readonly (readonly [name: string, share: number, take: Import])[] = [
  ['run file', 3, runFileByChance],
  ['stock', 6, stockByChance],
  ['settings', 5, settingsByChance],
  ['picture', 5, pictureByChance],
  ['decoded picture', 1, decodedByChance],
]

/** So many damaged files, each read as the program reads it. */
export async function fuzzImports(count: number, seed: number): Promise<FuzzReport> {
  const chance = chanceOf(seed)
  const report = newReport()
  const folder = mkdtempSync(join(tmpdir(), 'putback-hostile-'))
  try {
    const turns = SHARES.flatMap(([name, share, take]) =>
      Array.from({ length: share }, () => ({ name, take })),
    )
    for (let index = 0; index < count; index += 1) {
      const { name, take } = turns[index % turns.length] as (typeof turns)[number]
      const from = performance.now()
      const came = await outcomeOf(take, chance, folder)
      note(
        report,
        `${name} ${index} of seed ${seed}`,
        came.startsWith('fault') ? came : `${name}: ${came}`,
        performance.now() - from,
      )
    }
    if (Object.getOwnPropertyNames(Object.prototype).some((name) => !PROTOTYPE.has(name)))
      report.faults.push('every object has something new')
    return report
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

const PROTOTYPE = new Set(Object.getOwnPropertyNames(Object.prototype))

async function outcomeOf(take: Import, chance: Chance, folder: string): Promise<string> {
  try {
    return await take(chance, folder)
  } catch (error) {
    return faultOf(error)
  }
}

const DEMO = readFileSync('jobs/demo/blue-twin.txt')
/** Where the first line after that which makes the job begins. */
const JOB_MADE = DEMO.indexOf('\n', DEMO.indexOf('new job')) + 1
const OPTIONS = (readArguments([]) as { options: Desk['options'] }).options

/** Some lines of the demo and their damage, told to a job of their own on a disk that waits for nothing. */
function runFileByChance(chance: Chance, folder: string): string {
  const home = mkdtempSync(join(folder, 'home-'))
  const fs = { ...nodeFileSystem, fsyncSync: () => {}, fdatasyncSync: () => {} }
  const shelf = new DiskShelf(home, { now: () => new Date(Date.UTC(2030, 0, 15, 8)), fs })
  const desk = new Desk(shelf, { options: OPTIONS, cwd: home, colour: false })
  const hostile = HOSTILE_TEXTS[chance.whole(0, HOSTILE_TEXTS.length - 1)]?.[1] ?? ''
  const lines = mutated(
    DEMO.subarray(JOB_MADE, JOB_MADE + chance.whole(100, 1500)),
    Buffer.from(hostile),
    chance,
  )
  const said: string[] = []
  const each = (result: { text?: string[] | undefined }) => said.push(...(result.text ?? []))
  const text = `new job "${hostile.replaceAll('"', '')}x"\n${Buffer.from(lines).toString('utf8')}`
  const { failure } = runFile(desk, text, { name: 'a file', each })
  rmSync(home, { recursive: true, force: true })
  if (said.some(steers)) return `fault: said ${JSON.stringify(said.find(steers)?.slice(0, 200))}`
  if (failure && failure.told.what === '') return 'fault: nothing was said'
  return failure ? 'stopped' : 'done'
}

const STOCKS = readdirSync('labels').filter((name) => name.endsWith('.json'))
const STOCK_FILES = STOCKS.map((name) => readFileSync(join('labels', name)))

function stockByChance(chance: Chance, folder: string): string {
  const labels = join(folder, 'labels')
  mkdirSync(labels, { recursive: true })
  const file = STOCK_FILES[chance.whole(0, STOCK_FILES.length - 1)] ?? Buffer.alloc(0)
  const isBytes = chance.whole(0, 2) === 0
  const bytes = isBytes
    ? mutated(file, DEMO, chance)
    : Buffer.from(mutatedJson(JSON.parse(file.toString()), chance))
  writeFileSync(join(labels, 'mine.json'), bytes)
  const { stocks, bad } = findStocks(folder)
  const said = bad.map(({ why }) => badStockText('mine.json', why))
  if (said.some((text) => text === '')) return 'fault: nothing was said'
  for (const stock of stocks.values()) {
    const drawing = { ...stock.label, shapes: [] }
    const placed = sheetPages(stock, [drawing, drawing], { from: labelsOnPage(stock), shift: { x: 0, y: 0 } })
    if (!placed.ok || placed.pages.length !== 2) return 'fault: no place for a label'
  }
  return bad.length > 0 ? 'refused' : 'taken'
}

const SETTINGS = {
  stock: 'roll-64x34',
  dpi: 203,
  shift: { x: 1, y: -0.5 },
  form: 'label-roll',
  to: { target: 'tcp', host: '192.0.2.20', port: 9100 },
  sound: false,
}

function settingsByChance(chance: Chance, folder: string): string {
  const json = Buffer.from(JSON.stringify(SETTINGS))
  const bytes =
    chance.whole(0, 2) === 0 ? mutated(json, DEMO, chance) : Buffer.from(mutatedJson(SETTINGS, chance))
  for (const name of ['.printing.json', '.settings.json']) writeFileSync(join(folder, name), bytes)
  const how = usualHow(folder)
  howText(how)
  return `${Object.keys(how).length === 0 ? 'nothing' : 'something'} set, sound ${soundWanted(folder)}`
}

const SCENE = drawScene({ width: 60, height: 40, seed: 3, labels: [] })
const EXIF = {
  orientation: 6,
  make: 'a camera',
  dateTimeOriginal: '2026:11:25 10:11:12',
  offsetTimeOriginal: '+02:00',
  subSecTimeOriginal: '123',
}
const JPEG = jpegOf(SCENE)
const PNG = pngOf(SCENE)
const PICTURES = [jpegOf(SCENE, EXIF), JPEG, pngOf(SCENE, EXIF), PNG]
const BLOCKS = [exifBlock(EXIF), exifBlock({ ...EXIF, bigEndian: true })]

function damagedPicture(chance: Chance): Uint8Array {
  if (chance.whole(0, 1) === 0) return withDamagedExif(chance)
  const [picture, other] = [0, 0].map(
    () => PICTURES[chance.whole(0, PICTURES.length - 1)] ?? new Uint8Array(),
  )
  return mutated(picture ?? new Uint8Array(), other ?? new Uint8Array(), chance)
}

/** A whole picture whose camera wrote nonsense: its checksums and lengths are right. */
function withDamagedExif(chance: Chance): Uint8Array {
  const block = mutated(BLOCKS[chance.whole(0, 1)] ?? JPEG, JPEG, chance).subarray(0, 60_000)
  if (chance.whole(0, 1) === 0) return withApp1(JPEG, block)
  const afterHeader = 8 + 25
  return Buffer.concat([PNG.subarray(0, afterHeader), pngChunk('eXIf', block), PNG.subarray(afterHeader)])
}

async function pictureByChance(chance: Chance): Promise<string> {
  const reading = await readPicture(damagedPicture(chance))
  if (reading.kind !== 'picture') return reading.kind
  const { taken } = reading
  const facts = taken === null ? [] : [taken.local, taken.fraction, taken.offset ?? '']
  if (facts.some((text) => !/^[-0-9:T+]*$/.test(text))) return `fault: taken ${JSON.stringify(taken)}`
  return taken === null ? 'picture' : 'picture with its time'
}

async function decodedByChance(chance: Chance): Promise<string> {
  const bytes = damagedPicture(chance)
  if (readFormat(bytes).kind !== 'picture') return 'not decoded'
  try {
    const { codes } = await readLabels(bytes)
    return codes.length === 0 ? 'no label' : 'fault: a label where there is none'
  } catch (error) {
    if (error instanceof Undecodable) return 'undecodable'
    throw error
  }
}
