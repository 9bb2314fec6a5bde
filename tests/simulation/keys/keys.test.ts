import { expect, test } from 'vitest'
import { countKeys } from './count-keys.ts'
import { countMistakes } from './count-mistakes.ts'
import { allKeys } from './kinds.ts'
import { smallMachine } from './small-machine.ts'
import { Typist } from './typist.ts'

const SEED = 4

// A change of the screens that costs keys, or saves some, is seen here: `--update` writes the new count.
test('a whole clean job at the screens comes to the same record as by lines, and takes so many keys', () => {
  const count = countKeys(SEED, smallMachine(SEED))
  expect(count.otherwise).toEqual([])
  expect(count.isWhole).toBe(true)
  const { keys, scans, pieces, tool, phases } = count
  expect({ pieces, scans, keys, tool, build: phases['build-up'] }).toMatchInlineSnapshot(`
    {
      "build": {
        "names": 141,
        "numbers": 109,
        "words": 8,
      },
      "keys": {
        "names": 752,
        "numbers": 262,
        "words": 149,
      },
      "pieces": 41,
      "scans": 6,
      "tool": {
        "confirmations": 158,
        "overrides": 0,
      },
    }
  `)
  expect(Object.values(phases).reduce((sum, phase) => sum + allKeys(phase), 0)).toBe(allKeys(keys))
  expect(Object.values(count.doings).reduce((sum, each) => sum + each, 0)).toBe(allKeys(keys))
})

test('a job with mistakes comes to the same refusals at the screens, and what is named is put right in a few keys', () => {
  const { otherwise, refusals } = countMistakes(SEED, 6, smallMachine(SEED))
  expect(otherwise).toEqual([])
  expect(refusals.map(({ code }) => code)).toContain('step-blocked')
  expect(Math.max(...refusals.map(({ cure }) => cure))).toBeLessThanOrEqual(4)
})

test('Enter is taken only for what it does: anything else is typed', () => {
  const typist = new Typist(smallMachine(SEED))
  for (const line of [
    'begin camshaft off',
    'tray 2 slots',
    'off cam caps I1..I2 into tray 1',
    'end',
    'take 1',
  ])
    expect(typist.do(line)).toMatchObject({ line, isTaken: true })
  expect(typist.do('001000168')).toMatchObject({ how: 'scan', pressed: '', isTaken: false })
  expect(typist.do('fit cam cap I1 at I1')).toMatchObject({ how: 'enter', pressed: '\r', isTaken: true })
  expect(typist.do('fit cam cap I2 at I1')).toMatchObject({
    how: 'words',
    pressed: 'fit cam cap I2 at I1\r',
    isTaken: false,
  })
  // What was not taken stands in the line: an Enter of its own clears it.
  expect(typist.do('fit cam cap I2 at I2')).toMatchObject({ how: 'enter', pressed: '\r\r', isTaken: true })
})
