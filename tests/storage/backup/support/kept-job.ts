import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Command } from '../../../../src/journal/command.ts'
import { writeLine } from '../../../../src/storage/journal/line.ts'
import { chanceOf } from '../../../support/damage/chance.ts'
import { openJob, record } from '../../../support/record.ts'

/** What the pictures of the job are made of: bytes that nothing packs. */
export const PICTURES: Readonly<Record<string, Buffer>> = {
  '20300101-081500.jpg': noise(3000, 1),
  '20300101-081500-2.jpg': noise(5, 2),
  '20300101-081600.png': noise(700, 3),
}

/** A job folder in a home: three pictures, and the entries that name them. */
export function keepJob(home: string, { folder = 'blue-twin', pictures = PICTURES }: KeepOptions = {}) {
  const path = join(home, folder)
  mkdirSync(join(path, 'photos'), { recursive: true })
  writeFileSync(join(path, 'journal.log'), journalOf(pictures))
  for (const [name, bytes] of Object.entries(pictures)) writeFileSync(join(path, 'photos', name), bytes)
  return path
}

interface KeepOptions {
  folder?: string
  pictures?: Readonly<Record<string, Buffer>>
}

/** The bytes of a journal that names the pictures. */
export function journalOf(pictures = PICTURES): string {
  const named = Object.entries(pictures).map(([file, bytes]) => ({
    file,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    taken: null,
    belongs: null,
  }))
  const add: Command[] = named.length === 0 ? [] : [{ do: 'add-pictures', pictures: named }]
  const { entries } = record([openJob, ...add])
  let crc = '00000000'
  let text = ''
  for (const entry of entries) {
    const line = writeLine(crc, entry)
    text += line.text
    crc = line.crc
  }
  return text
}

/** Everything in a folder by its path, the bytes of files as text: two folders that hold the same are alike. */
export function contents(folder: string): Record<string, string> {
  const found = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .sort()
    .map((name): [string, string] => {
      const path = join(folder, name)
      return [name, statSync(path).isDirectory() ? 'a folder' : readFileSync(path, 'latin1')]
    })
  return Object.fromEntries(found)
}

function noise(length: number, seed: number): Buffer {
  const chance = chanceOf(seed)
  return Buffer.from(Array.from({ length }, () => chance.whole(0, 255)))
}
