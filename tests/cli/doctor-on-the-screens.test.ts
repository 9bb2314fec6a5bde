import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { readArguments } from '../../src/cli/arguments.ts'
import { Desk } from '../../src/cli/desk.ts'
import { errandsOf } from '../../src/cli/errands.ts'
import { headRows } from '../../src/ui/model/head.ts'
import { textOf } from '../../src/ui/text/line.ts'
import { linesOf } from '../storage/support/journal-bytes.ts'
import { jobWith, screens } from '../ui/support/bench.ts'

test('a damaged job says what to type, is mended, and takes what is said next', async () => {
  const made = damaged((bytes) => {
    const at = bytes.indexOf('cover bolts')
    bytes[at] = (bytes[at] as number) ^ 4
    return bytes
  })
  expect(made.answer()).toContain('"doctor"')
  expect(made.head()).toContain('ONLY TO READ')
  await made.send('doctor')
  expect(made.below()).toContain('"doctor mend"')
  expect(made.below()).toContain('NOT WHOLE')
  expect(made.below()).not.toContain('DONE')
  expect(made.rings.at(-1)).toBe(3)
  await made.send('doctor mend')
  expect(made.below()).toContain('put right')
  expect(made.head()).not.toContain('ONLY TO READ')
  expect(made.entries()).toBe(made.before)
  made.enter('.1', '2 M8 side nuts')
  expect(made.answer()).toContain('RECORDED')
  expect(made.answer()).not.toContain('NOT RECORDED')
  expect(made.entries()).toBe(made.before + 1)
})

test('words that a damaged job does not take give way to the doctor and come back when it is mended', async () => {
  const made = damaged((bytes) => Buffer.concat(linesOf(bytes).toSpliced(2, 0, Buffer.from('scribble\n'))))
  made.enter('off 2 M8 side nuts')
  expect(made.answer()).toContain('NOT RECORDED')
  expect(made.desk.standing()).toBe('kept')
  await made.send('doctor')
  expect(made.line()).toBe('off 2 M8 side nuts|')
  await made.send('doctor from no-such-copy')
  expect([made.line(), made.desk.standing()]).toEqual(['doctor from no-such-copy|', 'kept'])
  await made.send('doctor mend')
  expect(made.answer()).toContain('put right')
  expect([made.line(), made.entries()]).toEqual(['off 2 M8 side nuts|', made.before])
  made.enter('')
  expect(made.answer()).toContain('RECORDED  came off: 2 × side nuts')
  expect([made.line(), made.entries()]).toEqual(['|', made.before + 1])
})

test('what is not certain is cut when that is asked for, and the job goes on from there', async () => {
  const made = damaged((bytes) => Buffer.concat(linesOf(bytes).toSpliced(-2, 1)))
  const stands = made.before - 2
  expect(made.entries()).toBe(stands)
  await made.send('doctor mend')
  expect(made.below()).toContain('nothing was changed')
  // What to do stands above all that was found; what was refused is typed over.
  made.enter('told')
  expect(made.rows().findIndex((row) => row.includes('"doctor cut"'))).toBeLessThan(
    made.rows().findIndex((row) => row.includes('before line')),
  )
  await made.send('doctor cut')
  expect(made.head()).not.toContain('ONLY TO READ')
  made.enter('.1', '2 M8 side nuts')
  expect(made.entries()).toBe(stands + 1)
})

test('a job that is as it should be', async () => {
  const made = damaged((bytes) => bytes)
  await made.send('doctor')
  expect(made.below()).toContain('the record is whole')
  expect(made.below()).toContain('DONE')
})

/** A job of some entries whose journal was changed on the disk, opened in the screens with the errands of the program. */
function damaged(change: (bytes: Buffer) => Buffer) {
  const { shelf, path, home, desk } = jobWith(
    'begin cover off',
    'off 8 M6x25 cover bolts into new bag',
    'off 1 cover',
    'note: the gasket is torn',
  )
  const before = desk.session?.entries().length ?? 0
  desk.close()
  const journal = join(path, 'journal.log')
  writeFileSync(journal, change(readFileSync(journal)))
  const { options } = readArguments([]) as { options: Desk['options'] }
  const errands = errandsOf(new Desk(shelf, { options, cwd: home, colour: false }))
  const made = screens(shelf, undefined, errands)
  return {
    ...made,
    before,
    head: () => headRows(made.desk.scene(), made.desk.screen).map(textOf).join('\n'),
    /** An errand, and what it brought. */
    send: async (line: string) => {
      made.enter(line)
      await vi.waitFor(() => expect(made.desk.progress()).toBeNull(), { timeout: 15_000 })
    },
  }
}
