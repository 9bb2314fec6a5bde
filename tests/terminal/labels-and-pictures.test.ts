import { mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import qrcode from 'qrcode'
import { beforeAll, describe, expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { buildOnce, homeForTest, onFirstJob, PutbackTerminal } from './support/putback-terminal.ts'

beforeAll(buildOnce)

/** On a first job, with one bag that holds the bolts of a cover. */
async function withOneBag() {
  // What is printed goes beside the jobs.
  const home = join(homeForTest(), 'jobs')
  mkdirSync(home)
  const { terminal } = await onFirstJob({}, home)
  terminal.write('8 M6x25 hex 10 valve cover bolts into new bag\r')
  await terminal.sees('into bag 1 (new)')
  return { terminal, home }
}

/** A folder of a phone: a symbol in each file, of the label or of nothing that this program knows. */
async function phoneWith(home: string, shots: Record<string, string>): Promise<string> {
  const folder = join(home, 'phone')
  mkdirSync(folder)
  for (const [name, code] of Object.entries(shots)) {
    const options = { errorCorrectionLevel: 'H', scale: 8 } as const
    await qrcode.toFile(join(folder, name), [{ data: code, mode: 'numeric' }], options)
  }
  return folder
}

describe('a label', () => {
  test('is printed to a file from the screens, and not twice over it', async () => {
    const { terminal, home } = await withOneBag()
    terminal.write('label 1\r')
    await terminal.sees('WRITE ON IT')
    const text = await terminal.sees('8 VALVE COVER BOLTS M6x25')
    expect(text).toContain('001 0001 68')
    terminal.write('labels 1 to x.pdf\r')
    await terminal.sees('✓ DONE  drawn: labels of bag 1, 1 label as pdf')
    expect(readFileSync(join(home, 'x.pdf')).subarray(0, 5).toString('latin1')).toBe('%PDF-')
    terminal.write('labels 1 to x.pdf\r')
    await terminal.sees('NOT DONE')
    await terminal.sees(' > labels 1 to x.pdf')
  })

  test('is printed by number to the folder of what is printed', async () => {
    const { terminal, home } = await withOneBag()
    terminal.write('8\r')
    await terminal.sees('WRITE ON IT')
    terminal.write('1\r')
    await terminal.sees('✓ DONE  drawn: labels of bag 1')
    expect(readdirSync(join(home, '..', 'labels', 'out'))).toEqual(['001-1.pdf'])
  })
})

describe('pictures', () => {
  test('are imported while the screens stay usable, seen, and sorted by number and scan', async () => {
    const { terminal, home } = await withOneBag()
    const folder = await phoneWith(home, { 'a.png': labelCode(1, 1), 'b.png': '123456789012' })
    terminal.write(`photos import ${folder}\r.2\r`)
    await terminal.sees('[.2 LIES]')
    await terminal.sees('✓ DONE  2 new pictures')
    terminal.write('.\r')
    await terminal.sees('6  2 pictures not sorted yet')
    terminal.write('6\r')
    await terminal.sees('PICTURES  2 in this job, 2 not sorted yet')
    terminal.write('2\r')
    await terminal.sees(' > photo g2 to')
    terminal.write(`${labelCode(1, 1)}\r`)
    await terminal.sees('✓ RECORDED  sorted: picture g2')
    await terminal.sees('PICTURES  2 in this job, 1 not sorted yet')
    terminal.write(`${labelCode(1, 1)}\r`)
    await terminal.sees('[.2 LIES]')
    // What came of the import stands under the line and takes the room of the last choices.
    terminal.write('+')
    await terminal.sees('6  1 picture')
  })

  test('leaving in the middle of an import gives the terminal back', async () => {
    const { terminal, home } = await withOneBag()
    const shots = Array.from({ length: 40 }, (_, n) => [`${n}.png`, `1234567890${10 + n}`])
    const folder = await phoneWith(home, Object.fromEntries(shots))
    terminal.write('end\r')
    await terminal.sees('0 takes entry 3 back.')
    terminal.write(`photos import ${folder}\r\x03`)
    await terminal.sees('left with 0')
    const again = new PutbackTerminal(home)
    await again.sees('[. NOW]')
    // Enter settles that it is waited for, before it can be done.
    again.write(`photos import ${folder}\rquit\r\r`)
    await again.sees('left with 0')
    expect(again.raw).toContain('40 new pictures')
    const listed = new PutbackTerminal(home)
    await listed.sees('6  40 pictures not sorted yet')
  })
})
