import { spawn } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { MOST_RUN_BYTES, readRunFile } from '../../src/cli/read-run-file.ts'
import { buildProgram, type ChildProgram } from '../helpers/child-program.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'

let program: ChildProgram
beforeAll(async () => {
  program = await buildProgram(join(import.meta.dirname, 'programs/read-standard-input.ts'))
})
afterAll(() => program.remove())

test('a file is read whole, up to the most that is read', () => {
  const path = join(temporaryFolder(), 'run.txt')
  writeFileSync(path, `note: ${'é'.repeat(100_000)}\n`)
  expect(readRunFile(path)).toBe(`note: ${'é'.repeat(100_000)}\n`)
  writeFileSync(path, Buffer.alloc(MOST_RUN_BYTES, 0x20))
  expect(readRunFile(path)).toHaveLength(MOST_RUN_BYTES)
  writeFileSync(path, ' ', { flag: 'a' })
  expect(() => readRunFile(path)).toThrow(expect.objectContaining({ code: 'EOVERFLOW' }))
  expect(() => readRunFile(`${path}.not`)).toThrow(expect.objectContaining({ code: 'ENOENT' }))
})

test('a pipe is read to its end, however slowly it is written', async () => {
  const child = spawn(process.execPath, [program.path], { stdio: ['pipe', 'pipe', 'inherit'] })
  let said = ''
  const begun = new Promise<void>((resolve) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said += text
      resolve()
    })
  })
  const ended = new Promise((resolve) => child.on('close', resolve))
  // It reads already, and there is nothing yet.
  await begun
  for (let part = 0; part < 5; part += 1)
    await new Promise((resolve) => child.stdin.write('x'.repeat(100_000), resolve))
  child.stdin.end()
  await ended
  expect(said).toBe('begun\n500000\n')
})
