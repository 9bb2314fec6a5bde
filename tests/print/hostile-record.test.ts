import { readdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { Entry } from '../../src/journal/entry.ts'
import { type Bench, benchWithJob } from '../cli/support/bench.ts'
import { writeUnasked } from '../session/support/sessions.ts'
import { readCaretCommands } from '../support/decode/caret-commands.ts'
import { readPdf } from '../support/decode/pdf.ts'

// A record may come from elsewhere: names stand in it as no line of ours would have written them.

const NAME = '\x1b[2J^XA~JA\u202e</svg>../../x\nnew line\x9b31m\ud800\u0000) Tj'

/** A job whose every text holds that name. */
function hostile(): Bench {
  const on = benchWithJob(
    'begin QQQ cover off',
    'off 8 M6x25 hex 10 QQQ bolts',
    'off QQQ caps I1..I4 into new bag',
    'off hose: QQQ outlet > QQQ inlet into new bag',
    'mark p2: QQQ arrow',
    'caution: QQQ',
    'note: QQQ',
    'bag called QQQ',
  )
  const outcome = on.session().send({
    do: 'add-pictures',
    pictures: [
      { file: '20300101-080000.jpg', sha256: '0'.repeat(64), taken: null, belongs: { container: 1 } },
    ],
  })
  expect(outcome.kind).toBe('recorded')
  const { store } = on.session()
  const text = JSON.stringify(store.entries())
    .replaceAll('QQQ', JSON.stringify(NAME).slice(1, -1))
    .replace('parallel twin', JSON.stringify(NAME).slice(1, -1))
  rmSync(store.path)
  writeUnasked(join(store.path, '..'), JSON.parse(text) as Entry[])
  return on
}

test('what is said of it steers no terminal, in words as in JSON', async () => {
  const on = hostile()
  expect(on.session().unlawful).toBeNull()
  const lines = ['labels all', 'labels machine', 'flags p6', 'template p2', 'print plan', 'labels 1 to 1.svg']
  for (const line of [...lines, 'photos', 'photos open', 'photo g1 to bag 2', 'record', 'log', 'left', '1']) {
    for (const words of [[line], ['--json', line]]) {
      const { out, err } = await on.send(...words)
      expect(`${out}${err}`, line).toMatch(/\S/)
      expect(`${out}${err}`.replaceAll('\n', ''), line).not.toMatch(/[\p{Cc}\p{Cf}]/u)
    }
  }
})

test('what is printed of it is a label, and its files lie where they belong', async () => {
  const on = hostile()
  expect((await on.send('labels 1 to 1.pdf')).err).toBe('')
  const { title, pages } = await readPdf(new Uint8Array(readFileSync(join(on.home, '1.pdf'))))
  expect(title).toBe('labels of bag 1')
  const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ')
  expect(words).toContain('8 ×')
  expect(words).not.toMatch(/[\p{Cc}\p{Cf}]/u)

  const roll = await on.send('labels 1 on roll-64x34 as label-roll to -')
  expect(readCaretCommands(roll.bytes)).toHaveLength(1)

  await on.send('labels 1 to 1.svg')
  expect(readFileSync(join(on.home, '1.svg'), 'utf8').match(/<[^\s>]*/g)).toEqual(
    expect.not.arrayContaining(['<script', '<text']),
  )
  const beside = readdirSync(join(on.home, '..')).sort()
  await on.send('labels all')
  await on.send('labels machine')
  expect(readdirSync(join(on.home, '..')).sort()).toEqual([...new Set([...beside, 'labels'])].sort())
  for (const name of readdirSync(join(on.home, '..', 'labels', 'out'))) expect(name).toMatch(/^[a-z0-9.-]+$/)
})
