import { createHash } from 'node:crypto'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { chunksOfFile, sha256Of } from '../../../src/storage/files/file-chunks.ts'
import { nodeFileSystem } from '../../../src/storage/files/file-system.ts'
import { readWhole } from '../../../src/storage/files/read-whole.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const bytes = Buffer.from(Array.from({ length: 700_001 }, (_, at) => (at * 31) % 251))

function file(): string {
  const path = join(temporaryFolder(), 'picture')
  writeFileSync(path, bytes)
  return path
}

test('a file is read whole up to its bound, and not at all where it is one byte longer', () => {
  const path = file()
  expect(readWhole(path, bytes.length, nodeFileSystem).bytes.equals(bytes)).toBe(true)
  expect(() => readWhole(path, bytes.length - 1, nodeFileSystem)).toThrow(
    expect.objectContaining({ code: 'EOVERFLOW', path }),
  )
})

describe('a file bit by bit', () => {
  test.each([undefined, 0, 1, 262_144, 262_145, 700_001, 900_000])('its first %s bytes', (most) => {
    const read = [...chunksOfFile(nodeFileSystem, file(), most)]
    expect(Buffer.concat(read).equals(bytes.subarray(0, most))).toBe(true)
    expect(read.every(({ length }) => length > 0 && length < 300_000)).toBe(true)
  })

  test('has the sum that it has as a whole', () => {
    expect(sha256Of(nodeFileSystem, file())).toBe(createHash('sha256').update(bytes).digest('hex'))
  })
})
