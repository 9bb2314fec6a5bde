import { expect, test } from 'vitest'
import type { Belongs, PictureId } from '../../src/journal/entry.ts'
import type { State } from '../../src/journal/state.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { told, topEnd } from './told.ts'

const pictures: PictureId[] = ['g1', 'g3', 'g5', 'g8']
const state: State = {
  ...told(...topEnd),
  pictures: new Map(
    pictures.map((id) => [id, { id, file: `${id}.jpg`, taken: null, belongs: null, pieces: [] }] as never),
  ),
}

test.each<[string, PictureId[], Belongs | 'none']>([
  ['photo g3..g5 to bag 1', ['g3', 'g5'], { container: 1 }],
  ['photo g3-5 of bag 1', ['g3', 'g5'], { container: 1 }],
  ['photo G5, g3 .. g5, g1 in step 3', ['g5', 'g3', 'g1'], { step: 3 }],
  ['photo g1 and g8 to the job', ['g1', 'g8'], 'none'],
  // A range is what there is in it; when there is nothing, the refusal names its first.
  ['photo g2..g4 to bag 1', ['g3'], { container: 1 }],
  ['photo g20..g30 to bag 1', ['g20'], { container: 1 }],
])('%s', (line, meant, belongs) => {
  const commands = meant.map((picture) => ({ do: 'sort-picture', picture, belongs }))
  expect(readLine(line, state)).toEqual({ kind: 'commands', commands, bag: null })
})
