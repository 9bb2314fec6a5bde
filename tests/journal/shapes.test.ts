import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ENTRY_VERSION, entrySchemas, parseEntry } from '../../src/journal/entry.ts'
import { anyOfShape } from '../support/any-of-shape.ts'
import { readableJson, type Shape, shapesOf } from '../support/entry-shapes.ts'

/** The description of each version that was ever released, by its SHA-256: what is released is never changed. */
const RELEASED: Readonly<Record<number, string>> = {
  1: '7f4742d8d478e0fb989b87c2eea7ddca9cc5a664e06c3f08ad56a20cf2583683',
  2: '6a1a34e69a8854839dfbefa03561e90524fcdb5898c7cb6a0789f7213a61cb51',
}

const fileOf = (version: number) => join(import.meta.dirname, 'older', `shapes-${version}.json`)

const HOW = `The shapes of entries are not those of version ${ENTRY_VERSION} as described in tests/journal/older/shapes-${ENTRY_VERSION}.json.
- Has version ${ENTRY_VERSION} been released (it has a sum in tests/journal/shapes.test.ts)? Then journals of it are about: leave its
  description alone, and make version ${ENTRY_VERSION + 1} by an upgrade at the end of the table in src/journal/upgrades.ts.
- Else, and if the change is meant: "npx vitest run tests/journal/shapes.test.ts --update", and read the difference.`

describe('the shapes of entries', () => {
  test('are those described for this version', async () => {
    const now = `${readableJson(shapesOf(entrySchemas))}\n`
    await expect(now)
      .toMatchFileSnapshot(fileOf(ENTRY_VERSION))
      .catch((difference: unknown) => {
        throw new Error(HOW, { cause: difference })
      })
  })

  test('of every version before are described, as they were released', () => {
    for (let version = 1; version < ENTRY_VERSION; version += 1) expect(RELEASED).toHaveProperty([version])
    for (const [version, sum] of Object.entries(RELEASED)) {
      const described = readFileSync(fileOf(Number(version)))
      expect(createHash('sha256').update(described).digest('hex'), `version ${version}`).toBe(sum)
    }
  })
})

describe.each(Object.keys(RELEASED).map(Number))('whatever version %i could say', (version) => {
  const shapes = JSON.parse(readFileSync(fileOf(version), 'utf8')) as Record<string, Shape>

  test.each(Object.entries(shapes))('is read: %s', (type, shape) => {
    fc.assert(
      fc.property(anyOfShape(shape), (entry) => {
        // As it stands on a line.
        const raw: unknown = JSON.parse(JSON.stringify(entry))
        expect(parseEntry(raw)).toMatchObject({ v: ENTRY_VERSION, type })
      }),
      { numRuns: 20 },
    )
  })
})
