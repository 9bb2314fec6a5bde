import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { readLine } from '../../../src/lines/read-line.ts'
import { told, topEnd } from '../told.ts'

// Pieces: p1 valve cover bolts, p9 to p12 cam caps I1 to I4, p13 to p16 shims E1 to E4.
const state = told(...topEnd)

function commands(line: string, on = state): Command[] {
  const reading = readLine(line, on)
  if (reading.kind !== 'commands') throw new Error(JSON.stringify(reading))
  return reading.commands
}

function id(words: string): string {
  const [command] = commands(`judge ${words} clean because dirty`)
  return command?.do === 'judge' ? command.pieces.join() : ''
}

const [i1, i2, i3, i4] = ['I1', 'I2', 'I3', 'I4'].map((at) => id(`cam cap ${at}`))
const head = id('cylinder head')

describe('what is to be checked', () => {
  test('each of a set gets each check', () => {
    const [command] = commands(
      'check cam caps: look for score, cracks and burrs; measure oil clearance; clean',
    )
    expect(command).toMatchObject({ do: 'ask-checks' })
    const checks = command?.do === 'ask-checks' ? command.checks : []
    expect(checks).toHaveLength(12)
    expect(checks.filter(({ piece }) => piece === i2)).toEqual([
      { piece: i2, kind: 'look', what: ['score', 'cracks', 'burrs'] },
      { piece: i2, kind: 'measure', what: ['oil clearance'] },
      { piece: i2, kind: 'clean', what: [] },
    ])
  })

  test.each([
    ['check cylinder head: cracks', { kind: 'look', what: ['cracks'] }],
    ['check cylinder head: look at it', { kind: 'look', what: ['it'] }],
    ['check cylinder head: look', { kind: 'look', what: [] }],
    ['check cylinder head: clean the joint face', { kind: 'clean', what: ['the joint face'] }],
    ['check cylinder head: compare with the new gasket', { kind: 'compare', what: ['the new gasket'] }],
    ['check cylinder head: measure', { kind: 'measure', what: [] }],
  ])('%s', (line, check) => {
    expect(commands(line)).toEqual([{ do: 'ask-checks', checks: [{ piece: head, ...check }] }])
  })

  test('one of the set, by its position', () => {
    expect(commands('check cam cap I3: look for score')).toEqual([
      { do: 'ask-checks', checks: [{ piece: i3, kind: 'look', what: ['score'] }] },
    ])
  })

  test('without words, what is usual for the kind of part', () => {
    const [command] = commands('check cylinder head')
    const checks = command?.do === 'ask-checks' ? command.checks : []
    expect(checks.map(({ kind }) => kind)).toEqual(['clean', 'look', 'measure'])
    expect(checks.find(({ kind }) => kind === 'measure')?.what).toContain('flatness')
  })

  test('a check valve comes off like any other part', () => {
    expect(readLine('off check valve into bench', state).kind).toBe('commands')
  })

  test.each([
    ['check', 'missing'],
    ['check gizmo: look for score', 'no-such-piece'],
  ])('%s is not understood', (line, code) => {
    expect(readLine(line, state)).toMatchObject({ kind: 'misread', misreading: { code } })
  })
})

describe('checks that turned out well', () => {
  const checked = told(
    ...topEnd,
    'check cam caps: look for score; measure bore',
    'check cylinder head: clean',
  )

  test.each([
    ['ok k1', ['k1'], undefined],
    ['ok k1,k3', ['k1', 'k3'], undefined],
    ['ok k1 and k2: none at all', ['k1', 'k2'], 'none at all'],
    ['ok k2..k4: fine', ['k2', 'k3', 'k4'], 'fine'],
    ['ok K7', ['k7'], undefined],
    ['ok cylinder head', ['k9'], undefined],
    ['ok cam cap I2: bright', ['k3', 'k4'], 'bright'],
  ])('%s', (line, checks, says) => {
    expect(commands(line, checked)).toEqual([{ do: 'pass-checks', checks, says }])
  })

  test('all that is open on a whole set', () => {
    const [command] = commands('ok cam caps', checked)
    expect(command?.do === 'pass-checks' ? command.checks : []).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8].map((no) => `k${no}`),
    )
  })

  test.each(['ok', 'ok shims', 'ok k1..k9999'])('%s is not understood', (line) => {
    expect(readLine(line, checked).kind).toBe('misread')
  })

  test.each([
    ['drop k1 because new', { do: 'drop-check', check: 'k1', reason: 'new' }],
    ['drop h2 because another engine', { do: 'drop-trigger', trigger: 'h2', reason: 'another engine' }],
    [
      'drop s3 because a gasket is used',
      { do: 'drop-consumable', consumable: 's3', reason: 'a gasket is used' },
    ],
  ])('%s', (line, command) => {
    expect(commands(line)).toEqual([command])
  })

  test.each([
    ['drop k1', 'reason-missing'],
    ['drop p1 because old', 'missing'],
  ])('%s is not understood', (line, code) => {
    expect(readLine(line, state)).toMatchObject({ misreading: { code } })
  })
})

describe('a verdict', () => {
  test.each([
    ['judge cam caps fit again because no marks', [i1, i2, i3, i4], 'fit-again', 'no marks'],
    ['judge cam cap I2 replace because worn', [i2], 'replace', 'worn'],
    ['judge cam caps I1, I3 machine because tight', [i1, i3], 'machine', 'tight'],
    ['judge cam caps I1 and I3 machine because tight', [i1, i3], 'machine', 'tight'],
    ['judge cam caps I1..I3 clean because varnish', [i1, i2, i3], 'clean', 'varnish'],
    ['judge cylinder head, cam cap I4 replace because cracked', [head, i4], 'replace', 'cracked'],
    ['judge cylinder head good because flat', [head], 'fit-again', 'flat'],
    ['judge p1 clean because dirty', ['p1'], 'clean', 'dirty'],
  ])('%s', (line, pieces, verdict, reason) => {
    expect(commands(line)).toEqual([
      { do: 'judge', pieces, count: undefined, verdict, reason, picture: undefined },
    ])
  })

  test('so many of a lot', () => {
    expect(commands('judge 2 valve cover bolts replace because bent')).toMatchObject([
      { do: 'judge', pieces: ['p1'], count: 2, verdict: 'replace' },
    ])
  })

  test.each([
    'judge cylinder head replace picture g3 because cracked',
    'judge cylinder head replace because cracked picture g3',
  ])('%s', (line) => {
    expect(commands(line)).toMatchObject([{ pieces: [head], verdict: 'replace', picture: 'g3' }])
  })

  test.each([
    ['judge cylinder head replace', 'reason-missing'],
    ['judge cylinder head because cracked', 'missing'],
    ['judge cylinder head bad because cracked', 'not-understood'],
    ['judge replace because cracked', 'missing'],
    ['judge gizmo replace because cracked', 'no-such-piece'],
  ])('%s is not understood', (line, code) => {
    expect(readLine(line, state)).toMatchObject({ kind: 'misread', misreading: { code } })
  })

  test('words that name several things are asked about', () => {
    expect(readLine('judge bolts replace because old', state)).toMatchObject({ kind: 'which-piece' })
  })
})

describe('what belongs together', () => {
  test('a part and a set', () => {
    expect(commands('together cylinder head, cam caps because bored as one')).toEqual([
      { do: 'bind', pieces: [head, i1, i2, i3, i4], reason: 'bored as one' },
    ])
  })

  test('no reason is needed', () => {
    expect(commands('together cylinder head and cam cap I1')).toEqual([
      { do: 'bind', pieces: [head, i1], reason: undefined },
    ])
  })
})

test('checks shows them', () => {
  expect(readLine('checks', state)).toEqual({ kind: 'ask', ask: { ask: 'checks' } })
})

describe('lists that a finding opens', () => {
  test('what is to be replaced and what is to be checked', () => {
    expect(
      commands(
        'when metal in the oil: replace cam cap I1; check cylinder head: look for score; measure flatness',
      ),
    ).toEqual([
      {
        do: 'set-trigger',
        when: 'metal in the oil',
        items: [
          { do: 'replace', piece: i1 },
          { do: 'check', piece: head, kind: 'look', what: ['score'] },
          { do: 'check', piece: head, kind: 'measure', what: ['flatness'] },
        ],
      },
    ])
  })

  test('a whole set', () => {
    expect(commands('when a cap is scored: replace cam caps')).toMatchObject([
      { items: [{ piece: i1 }, { piece: i2 }, { piece: i3 }, { piece: i4 }] },
    ])
  })

  test.each(['when', 'when metal', 'when metal:', 'when metal: paint it', 'when metal: look for score'])(
    '%s is not understood',
    (line) => {
      expect(readLine(line, state).kind).toBe('misread')
    },
  )

  const listed = told(
    ...topEnd,
    'when metal in the oil: replace cam cap I1',
    'when scored caps: check cylinder head: look for score',
  )

  test.each([
    ['finding metal in the oil', ['h1'], undefined],
    ['finding oil with fine metal in it', ['h1'], undefined],
    ['finding score on the caps', [], undefined],
    ['finding cap I3 scored at cam cap I3', ['h2'], i3],
    ['finding a crack at the cylinder head', [], head],
    ['finding a smell at night', [], undefined],
  ])('%s', (line, triggers, piece) => {
    const [command] = commands(line, listed)
    expect(command).toMatchObject({ do: 'find', triggers })
    expect(command?.do === 'find' ? command.piece : null).toBe(piece)
  })
})

describe('accepting what is proposed', () => {
  const stripped = told(
    'begin engine off',
    'off cylinder head into bench',
    'off cam caps I1..I3 into new tray 4 slots',
    'end',
  )

  test('steps are counted first, then checks: one number a set, a check for each of its pieces', () => {
    const all = commands('accept all', stripped)
    expect(all.every(({ do: what }) => what === 'add-step')).toBe(true)
    const [caps] = commands(`accept ${all.length + 2}`, stripped)
    const checks = caps?.do === 'ask-checks' ? caps.checks : []
    expect(new Set(checks.map(({ piece }) => piece)).size).toBe(3)
    expect(checks).toContainEqual(
      expect.objectContaining({ kind: 'measure', what: ['bore', 'oil clearance'] }),
    )
  })

  test('all checks, by that word', () => {
    const taken = commands('accept checks', stripped)
    expect(taken.map(({ do: what }) => what)).toEqual(['ask-checks', 'ask-checks'])
  })

  test('a number too many tells how many there are', () => {
    const count = commands('accept all', stripped).length + 2
    expect(readLine(`accept ${count + 1}`, stripped)).toMatchObject({
      misreading: { code: 'no-such-proposal', count },
    })
  })
})

test('a drop link comes off like any other part, and so does what has "and" in its name', () => {
  const off = told('begin arm off', 'off drop link into bench', 'off bucket and shim into bench', 'end')
  expect(commands('judge drop link replace because loose', off)).toMatchObject([{ pieces: ['p1'] }])
  expect(commands('judge bucket and shim clean because gummed', off)).toMatchObject([{ pieces: ['p2'] }])
})

test('a measurement by the number of a piece, or by its position, is of that piece', () => {
  expect(commands(`measure bore of ${i3}: 28.01`)).toMatchObject([{ do: 'measure', piece: i3 }])
  expect(commands('measure bore of cam cap I3: 28.01')).toMatchObject([{ do: 'measure', piece: i3 }])
  expect(commands('measure bore of p999: 28.01')).toMatchObject([{ do: 'measure', name: 'bore of p999' }])
})
