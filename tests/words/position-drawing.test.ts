import { expect, test } from 'vitest'
import { layoutView } from '../../src/session/layout-view.ts'
import { patternName } from '../../src/words/position-drawing.ts'
import { benchWithJob } from '../cli/support/bench.ts'

test.each<[string, string[], string]>([
  ['one lot', ['off 6 M8x35 pump bolts'], '6 pump bolts'],
  ['as many as a line may say', ['off 9999 M8x35 pump bolts'], '9999 pump bolts'],
  ['two lots', ['off 1 M6x110 pump bolt @1', 'off 2 M6x25 pump bolts @2,3'], '3 pump bolts'],
])('a drawing of %s goes by the name that most of them have', (_, lines, name) => {
  const { state } = benchWithJob('begin pump off', ...lines).session()
  const view = layoutView(state, 'p1')
  expect(view && patternName(state, view)).toContain(name)
})
