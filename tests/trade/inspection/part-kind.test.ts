import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type NameEnds, nameEnds, otherEnds, type PartKind } from '../../../src/trade/inspection/name-ends.ts'
import { partKinds } from '../../../src/trade/inspection/part-kind.ts'
import { namedKinds, otherThings } from './named-kinds.ts'

const kinds: Record<string, NameEnds> = nameEnds

test.each(namedKinds)('%s is of the kind %s', (name, kind) => {
  expect(partKinds(name)).toEqual([kind])
})

test.each(otherThings)('%j is none of them', (name) => {
  expect(partKinds(name)).toEqual([])
})

test.each<[string, PartKind[]]>([
  ['bucket and shim', ['follower', 'shim']],
  ['nut and bolt', ['nut', 'bolt']],
  ['valve spring + retainers', ['valve spring']],
  ['intake and exhaust valve', ['valve']],
  ['intake/exhaust camshaft', ['camshaft']],
  ['inner and outer valve springs', ['valve spring']],
  ['con rod & con rod cap', ['connecting rod', 'bearing cap']],
])('%s is more than one thing', (name, kinds) => {
  expect(partKinds(name)).toEqual(kinds)
})

test('every kind is reached by a natural name', () => {
  const reached = new Set(namedKinds.map(([, kind]) => kind))
  expect(Object.keys(nameEnds).filter((kind) => !reached.has(kind as PartKind))).toEqual([])
})

test('every end leads to its own kind, alone, in the plural and behind another word', () => {
  for (const [kind, table] of Object.entries(kinds)) {
    for (const end of table.ends ?? []) {
      expect.soft(partKinds(end), end).toEqual([kind])
      const plural = `${end}${/(?:ss|sh|ch|x)$/.test(end) ? 'es' : 's'}`
      expect.soft(partKinds(plural), plural).toEqual([kind])
      expect.soft(partKinds(`zzz ${end}`), `zzz ${end}`).toEqual([kind])
    }
    for (const name of table.alone ?? []) {
      expect.soft(partKinds(`upper ${name}`), name).toEqual([kind])
      expect.soft(partKinds(`zzz ${name}`), `zzz ${name}`).not.toEqual([kind])
    }
  }
  for (const end of otherEnds) expect.soft(partKinds(end), end).toEqual([])
})

test('no end stands for two kinds', () => {
  const all = Object.values(kinds).flatMap(({ ends = [], alone = [] }) => [...ends, ...alone])
  expect([...all, ...otherEnds].toSorted()).toEqual([...new Set([...all, ...otherEnds])].toSorted())
})

test('any text has an answer, and capitals and hyphens make no other', () => {
  const word = fc.constantFrom(
    ...namedKinds.flatMap(([name]) => name.split(' ')),
    'of',
    'and',
    ',',
    '-',
    'M8',
    '7',
  )
  const text = fc.oneof(
    fc.string({ maxLength: 60 }),
    fc.array(word, { maxLength: 6 }).map((words) => words.join(' ')),
  )
  fc.assert(
    fc.property(text, (name) => {
      const kinds = partKinds(name)
      for (const kind of kinds) expect(Object.keys(nameEnds)).toContain(kind)
      expect(partKinds(name.replace(/[a-z]/g, (letter) => letter.toUpperCase()))).toEqual(kinds)
    }),
    { seed: 20261130 },
  )
  for (const [name, kind] of namedKinds) {
    if (!/[,\d]| (?:with|for|from|of|under|and) /.test(name))
      expect.soft(partKinds(name.replaceAll(' ', '-')), name).toEqual([kind])
  }
})
