import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { workshop } from './workshop.ts'

interface FoundAnswer {
  homes: { piece: string; standing: string; undo: number[] }[]
}

test('each time something turns up, its home is the first or the second that is named', () => {
  const name = 'a-bolt-under-the-bench.txt'
  const told: [string, [string, string, number[]][]][] = []
  const run = workshop().run(readFileSync(join(import.meta.dirname, name), 'utf8'), name, (result, line) => {
    if (!result.ok || !line.startsWith('found ')) return
    const { homes } = result.answer as FoundAnswer
    told.push([line, homes.slice(0, 2).map(({ piece, standing, undo }) => [piece, standing, undo])])
  })
  expect(run.failure).toBeNull()
  // p1 end cover bolts, p3 gear bolts, p6 plate screws, p7 plate bolts.
  expect(told).toEqual([
    [
      'found M6x25',
      [
        ['p6', 'missing', []],
        ['p1', 'lying', []],
      ],
    ],
    [
      'found M8x30 hex 13 bolt',
      [
        ['p3', 'lying', []],
        ['p7', 'lying', []],
      ],
    ],
    [
      'found M6x25 T30 screw',
      [
        ['p6', 'missing', []],
        ['p1', 'lying', []],
      ],
    ],
    // Nobody wrote how large the clip is.
    ['found M10x60', [['p5', 'lying', []]]],
    [
      'found M8x30 hex 13 bolt under the bench',
      [
        ['p3', 'on-machine', [1, 2]],
        ['p7', 'on-machine', [1, 2, 3]],
      ],
    ],
    [
      'found M6x25 hex 10',
      [
        ['p1', 'missing', []],
        ['p6', 'on-machine', [1, 2, 3]],
      ],
    ],
    [
      'found M6x25 hex 10 bolt',
      [
        ['p1', 'on-machine', [1]],
        ['p6', 'on-machine', [1, 2, 3]],
      ],
    ],
  ])
})
