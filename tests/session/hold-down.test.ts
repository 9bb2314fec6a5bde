import { expect, test } from 'vitest'
import { jobWith } from '../ui/support/bench.ts'

/** What a step asks to be fitted, in its order, where its lines were written down in that order. */
function fitted(...lines: string[]): string[] {
  const { enter, rows } = jobWith(
    'begin x off, does not hide',
    ...lines.map((each) => `off ${each}`),
    'end',
    'take 1',
  )
  enter('step 1')
  return rows().flatMap((row) => /^ {1,2}\d+ {2}fit (?:\d+ × )?(.*?),? (?:in|on) /.exec(row)?.[1] ?? [])
}

test.each([
  ['the part written down first', ['lid into bench', '8 M6x20 lid bolts'], ['lid', 'lid bolts M6x20']],
  ['its bolts written down first', ['8 M6x20 lid bolts', 'lid into bench'], ['lid', 'lid bolts M6x20']],
  [
    'the noun of a longer name, and another part above',
    ['valve cover into bench', '4 M6x25 cover bolts', 'bracket into bench', '2 M8 bracket nuts'],
    ['bracket', 'bracket nuts M8', 'valve cover', 'cover bolts M6x25'],
  ],
  ['studs go on before', ['lid into bench', '2 M6x30 lid studs'], ['lid studs M6x30', 'lid']],
  ['a name that says nothing', ['lid into bench', '2 M6x20 long bolts'], ['long bolts M6x20', 'lid']],
])('%s', (_, lines, expected) => {
  expect(fitted(...lines)).toEqual(expected)
})
