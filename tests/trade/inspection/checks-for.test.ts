import { expect, test } from 'vitest'
import { checksFor } from '../../../src/trade/inspection/checks-for.ts'
import { readSubject } from '../../../src/trade/measuring/reading/read-subject.ts'
import { namedKinds, otherThings } from './named-kinds.ts'

const neverChecked = new Set(['gasket', 'seal', 'o-ring', 'washer', 'filter'])
const names = namedKinds.map(([name]) => name)

// Each a check that the manual named beside it has, in its words or plainly meant by them.
test.each([
  ['cylinder head', 'measure', 'flatness', 'TM 9-2815-202-34, 3-2: flanges for warpage'],
  ['engine block', 'look', 'thread damage', 'TM 9-2815-202-34, 3-2: tapped openings'],
  ['exhaust valve', 'look', 'pitted face', 'TM 9-6115-604-34, 9-8'],
  ['exhaust valve', 'measure', 'diameter of the stem', 'TM 9-6115-604-34, 9-8'],
  ['valve spring', 'measure', 'free length', 'NAVEDTRA 14076, chapter 3'],
  ['valve spring', 'look', 'nicks', 'NAVEDTRA 14076, chapter 3'],
  ['camshaft', 'measure', 'run-out', 'TM 9-2815-202-34, 4-109'],
  ['crankshaft', 'measure', 'taper of the journals', 'TM 5-3805-262-34, 4-1'],
  ['crankshaft', 'measure', 'end float', 'TM 10-3930-653-14&P'],
  ['bearing shells', 'look', 'bright spots on the back', 'TM 5-3805-262-34, 4-1'],
  ['thrust washer', 'measure', 'thickness', 'TM 5-3805-262-34, 4-1'],
  ['piston', 'look', 'scuffed skirt', 'TM 5-3820-254-14&P'],
  ['cylinder liner', 'measure', 'out of round', 'TM 10-3930-243-34'],
  ['water pump', 'look', 'corroded or loose impeller', 'TM 9-2320-272-24-2, 4-204'],
  ['hose', 'look', 'kinks', 'TM 5-4210-233-14&P-1, 4-9.3'],
  ['third gear', 'look', 'pitting', 'TM 9-2320-387-24-1, 2-15'],
  ['ball bearing', 'look', 'rust', 'TM 9-2320-360-34-1, 2-10'],
  ['connector', 'look', 'corroded or bent pins', 'AC 43.13-1B, 6-77'],
  ['drain plug', 'look', 'metal on it', 'TM 9-2320-360-34-1, 2-10'],
  ['head bolt', 'look', 'necking along a straight-edge', 'service sheets'],
  // Common practice.
  ['piston ring', 'measure', 'ring gap in its cylinder', ''],
  ['cam chain', 'look', 'stretched links', ''],
  ['clutch basket', 'look', 'wear steps from the plate tabs', ''],
  ['spark plug', 'compare', 'colour of the tip with the other cylinders', ''],
])('%s: %s %s (%s)', (name, kind, what) => {
  expect(checksFor(name).find((check) => check.kind === kind)?.what).toContain(what)
})

test.each(namedKinds)('%s has checks, unless a %s is new each time', (name, kind) => {
  const checks = checksFor(name)
  if (neverChecked.has(kind)) expect(checks).toEqual([])
  else expect(checks.find((check) => check.kind === 'look')?.what.length).toBeGreaterThanOrEqual(2)
})

test.each(otherThings)('nothing is proposed for %j', (name) => {
  expect(checksFor(name)).toEqual([])
})

test('one is cleaned before it is looked at, and looked at before it is measured', () => {
  expect(checksFor('camshafts').map(({ kind }) => kind)).toEqual(['clean', 'look', 'measure'])
  expect(checksFor('exhaust valve').map(({ kind }) => kind)).toEqual(['clean', 'look', 'measure', 'compare'])
})

test('a bolt that is no stretch bolt is not measured', () => {
  expect(checksFor('valve cover bolt').map(({ kind }) => kind)).toEqual(['clean', 'look'])
})

test('two things in one name have the checks of both, each said once', () => {
  const both = checksFor('bucket and shim')
  const look = both.find(({ kind }) => kind === 'look')?.what ?? []
  for (const name of ['bucket', 'shim']) {
    for (const what of checksFor(name).find(({ kind }) => kind === 'look')?.what ?? [])
      expect(look).toContain(what)
  }
  expect(new Set(look).size).toBe(look.length)
})

test('what is checked can be told with commas between, and names no limit', () => {
  for (const { kind, what } of names.flatMap((name) => checksFor(name))) {
    for (const item of what) {
      expect.soft(item, kind).toMatch(/^[a-z][a-z' -]{2,49}$/)
    }
    expect.soft(new Set(what).size).toBe(what.length)
  }
})

test('what is to be measured can be typed as it stands', () => {
  for (const name of names) {
    for (const what of checksFor(name).find(({ kind }) => kind === 'measure')?.what ?? []) {
      expect.soft(readSubject(`${what} of ${name}`), `${what} of ${name}`).toMatchObject({ understood: true })
    }
  }
})

test('the answer is the caller’s own', () => {
  checksFor('head')[0]?.what.push('nonsense')
  expect(checksFor('head')[0]?.what).not.toContain('nonsense')
})
