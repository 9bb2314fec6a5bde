import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import {
  aidIn,
  at,
  bag,
  begin,
  done,
  drain,
  endStrip,
  fill,
  hand,
  mark,
  matchedOff,
  newBag,
  off,
  putOn,
  slot,
  strip,
  toolOut,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const tray: Command = { do: 'open-container', kind: 'tray', slots: 8 }
const where = (job: ReturnType<typeof given>) =>
  [...job.state.ledger.accounts.keys()].flatMap((id) =>
    placesOf(job.state.ledger, id).map(({ piece, place, count }) => `${piece} ${place} ${count}`),
  )

describe('what comes off goes at once to where it is put', () => {
  test.each<[string, Command[], string[]]>([
    ['6 bolts into a new bag', [off(6, 'bolts')], ['p1 c1 6']],
    [
      '6 bolts into what is in hand, and there is nothing: a bag is opened',
      [off(6, 'bolts', { into: hand })],
      ['p1 c1 6'],
    ],
    [
      'two lots into the one in hand',
      [off(6, 'bolts', { into: hand }), off(2, 'nuts', { into: hand })],
      ['p1 c1 6', 'p2 c1 2'],
    ],
    ['caps into one bag', [matchedOff(['I1', 'I2'], 'cap')], ['p1 c1 1', 'p2 c1 1']],
    [
      'caps into a tray: a slot each, bolts share the next',
      [tray, matchedOff(['I1', 'I2'], 'cap', { into: hand }), off(6, 'bolts', { into: hand })],
      ['p1 c1/1 1', 'p2 c1/2 1', 'p3 c1/3 6'],
    ],
    [
      'a cap into the slot that was named',
      [tray, matchedOff(['I1'], 'cap', { into: slot(1, 7) })],
      ['p1 c1/7 1'],
    ],
    ['loose onto the bench', [off(1, 'cover', { into: at('bench') })], ['p1 bench 1']],
    ['noted, and left where it is', [off(1, 'hose', { into: at('machine') })], ['p1 machine 1']],
    ['5 of 6: one was missing already', [off(6, 'bolts', { found: 5 })], ['p1 c1 5']],
    ['none of 2 was there', [off(2, 'dowels', { found: 0 })], []],
    ['the long bolt was not there', [matchedOff(['4'], 'long bolt', { found: 0 })], []],
    [
      '6 of 6, one broken: it can never go back',
      [off(6, 'bolts', { broken: { kind: 'broken', count: 1 } })],
      ['p1 c1 5', 'p1 scrap 1'],
    ],
    [
      'all broken: no bag is opened',
      [off(2, 'clips', { broken: { kind: 'broken', count: 2 } })],
      ['p1 scrap 2'],
    ],
    [
      'of three caps, I2 was missing and I3 cracked',
      [
        matchedOff(['I1', 'I2', 'I3'], 'cap', {
          found: 2,
          missingAt: ['I2'],
          brokenAt: ['I3'],
          broken: { kind: 'cracked', count: 1 },
        }),
      ],
      ['p1 c1 1', 'p3 scrap 1'],
    ],
  ])('%s', (_, commands, places) => {
    expect(where(given(...commands))).toEqual(places)
  })

  test('what leaves work at its home opens a fault, what is only broken does not', () => {
    const fault = (kind: 'broken' | 'snapped') =>
      given(off(2, 'studs', { broken: { kind, count: 1 } })).state.faults.get('x1')
    expect(fault('snapped')).toEqual({
      id: 'x1',
      kind: 'snapped',
      piece: 'p1',
      count: 1,
      step: 1,
      settled: null,
    })
    expect(fault('broken')).toBeUndefined()
    const cracked = matchedOff(['I1', 'I2', 'I3'], 'cap', {
      broken: { kind: 'cracked', count: 2 },
      brokenAt: ['I1', 'I3'],
    })
    expect([...given(cracked).state.faults.values()].map(({ id, piece }) => [id, piece])).toEqual([
      ['x1', 'p1'],
      ['x2', 'p3'],
    ])
  })

  test('a piece that comes off with no step opens one by its name, and the home is what the step works on', () => {
    const job = given(off(4, 'valve cover bolts'), strip('cams out'), matchedOff(['I1'], 'cap'))
    expect([...job.state.steps.values()].map(({ title }) => title)).toEqual([
      'valve cover bolts off',
      'cams out',
    ])
    const homes = [...job.state.ledger.accounts.values()].map(({ home }) => home)
    expect(homes).toEqual([{ at: 'valve cover bolts' }, { at: 'cams', position: 'I1' }])
  })

  test('single-use pieces are used from the moment they come off', () => {
    expect([...given(off(2, 'bolts'), off(1, 'gasket', { singleUse: true })).state.used]).toEqual(['p2'])
  })
})

describe('what cannot have come off', () => {
  const caps = given(strip('cams out'), matchedOff(['I1', 'I2'], 'cap'))

  test.each<[string, Command, string]>([
    ['none', off(0, 'bolts'), 'count-wrong'],
    ['less than none', off(4, 'bolts', { found: -1 }), 'count-wrong'],
    ['half a bolt', off(1.5, 'bolts'), 'count-wrong'],
    ['more than belong there', off(4, 'bolts', { found: 5 }), 'count-wrong'],
    ['ten thousand', off(10_000, 'bolts'), 'count-wrong'],
    ['more broken than found', off(4, 'bolts', { broken: { kind: 'broken', count: 5 } }), 'count-wrong'],
    ['none broken', off(4, 'bolts', { broken: { kind: 'broken', count: 0 } }), 'count-wrong'],
    ['no name', off(4, '  '), 'text-missing'],
    [
      'fewer positions than belong there',
      matchedOff(['E1', 'E2'], 'cap', { found: 3, should: 3 }),
      'count-wrong',
    ],
    ['a position twice', matchedOff(['E1', 'E1'], 'cap'), 'count-wrong'],
    [
      'a position twice among those of two',
      matchedOff(['E1', 'E1', 'E2'], 'cap', { found: 2, should: 2 }),
      'count-wrong',
    ],
    ['no positions of a set', matchedOff([], 'cap'), 'count-wrong'],
    [
      'one missing of a set, and which is not said',
      matchedOff(['E1', 'E2'], 'cap', { found: 1 }),
      'which-position',
    ],
    [
      'one broken of a set, and which is not said',
      matchedOff(['E1', 'E2'], 'cap', { broken: { kind: 'cracked', count: 1 } }),
      'which-position',
    ],
    [
      'one missing at a position that the set has not',
      matchedOff(['E1', 'E2'], 'cap', { found: 1, missingAt: ['E7'] }),
      'which-position',
    ],
    ['a home that is taken', matchedOff(['I2', 'I3'], 'cap', { at: 'cams' }), 'home-exists'],
    ['a bag nobody opened', off(4, 'bolts', { into: bag(9) }), 'unknown'],
    ['a slot of a bag', off(4, 'bolts', { into: slot(1, 1) }), 'no-such-slot'],
  ])('%s', (_, command, code) => {
    caps.when(command).refuses(code as 'law')
  })

  test.each(['0', '9', '01', '1.5', '1e0', 'x', ''])('slot %j of a tray of 8', (name) => {
    given(tray)
      .when(off(1, 'bolt', { into: slot(1, name) }))
      .refuses('no-such-slot')
  })

  test('a slot that is taken, or two pieces for one', () => {
    const held = given(tray, matchedOff(['I1'], 'cap', { into: slot(1, 1) }))
    held.when(off(1, 'bolt', { into: slot(1, 1) })).refuses('slot-taken', { piece: 'p1' })
    held.when(matchedOff(['E1', 'E2'], 'cap', { into: slot(1, 2) })).refuses('slots-short')
    const nine = Array.from({ length: 8 }, (_, index) => `E${index + 1}`)
    held.when(matchedOff(nine, 'cap', { into: hand })).refuses('slots-short', { free: 7, wanted: 8 })
  })

  test('the same position of another part, or of a replaced piece, is free', () => {
    caps.when(matchedOff(['I1', 'I2'], 'cap bolt', { at: 'cams' })).makes('came-off')
    caps
      .and({ do: 'leave-off', piece: 'p1', reason: 'no cap here any more' })
      .when(matchedOff(['I1'], 'cap', { at: 'cams' }))
      .makes('came-off')
  })
})

describe('fluids', () => {
  const drained = given(strip('sump out'), drain('oil', 3.5), endStrip)

  test('are owed from their drain to their fill, in the step that drained them', () => {
    expect(drained.state.fluids.get('f1')).toMatchObject({ litresOut: 3.5, filledLitres: null, step: 1 })
    drained.when(fill('f1')).refuses('step-not-begun', { built: 'open' })
    const filled = drained.and(
      { do: 'override', target: 'look 1', reason: 'seen' },
      begin(1),
      fill('f1', 3.4),
    )
    expect(filled.state.fluids.get('f1')?.filledLitres).toBe(3.4)
    filled.when(fill('f1')).refuses('already')
    filled.and(done(1)).when(fill('f1')).refuses('already')
  })

  test.each([[0], [-1], [Number.NaN], [10_000]])('%d litres are no amount', (litres) => {
    given().when(drain('oil', litres)).refuses('count-wrong')
    drained.when(fill('f1', litres)).refuses('count-wrong')
  })

  test('of no name, or that never came out', () => {
    given().when(drain(' ')).refuses('text-missing')
    given().when(fill('f1')).refuses('unknown', { what: 'fluid' })
  })
})

describe('marks', () => {
  test('on a piece belong to its step, others to the step under way', () => {
    const job = given(
      strip('cover off'),
      off(1, 'cover'),
      strip('cams out'),
      mark('arrow up', 'p1'),
      mark('dots level'),
    )
    expect([...job.state.marks.values()].map(({ step, confirmed }) => [step, confirmed])).toEqual([
      [1, false],
      [2, false],
    ])
  })

  test('with no words, or on what nobody knows', () => {
    given().when(mark(' ')).refuses('text-missing')
    given().when(mark('dot', 'p1')).refuses('unknown', { what: 'piece' })
  })
})

describe('aids and tools', () => {
  test.each<[string, Command, string[]]>([
    ['a rag goes into the machine', aidIn('rag', 2), ['p1 machine 2']],
    ['a magnet onto the bench', toolOut('magnet'), ['p1 bench 1']],
    [
      'a plug in each port is one piece each',
      { do: 'put-in', kind: 'aid', name: 'plug', count: 1, positions: ['port 1', 'port 2'] },
      ['p1 machine 1', 'p2 machine 1'],
    ],
    [
      'no port named: all together',
      { do: 'put-in', kind: 'aid', name: 'plug', count: 4, positions: [] },
      ['p1 machine 4'],
    ],
  ])('%s', (_, command, places) => {
    expect(where(given(strip('ports'), command))).toEqual(places)
  })

  test('belong to the build step under way, else to the strip step', () => {
    const building = given(off(1, 'bolt'), endStrip, putOn('p1'), aidIn('rag'))
    expect(building.state.ledger.accounts.get('p2')?.piece.step).toBe(1)
    expect([...building.state.steps.keys()]).toEqual([1])
    expect(given(aidIn('rag')).state.ledger.accounts.get('p1')?.piece.step).toBe(1)
  })

  test('of no name or number', () => {
    given().when(aidIn(' ')).refuses('text-missing')
    given().when(aidIn('rag', 0)).refuses('count-wrong')
  })
})

test.each([
  ['a bag', 'bag', 1],
  ['a tray', 'tray', 1],
  ['a tag hangs on its piece: nothing more goes onto it', 'tag', null],
  ['a shelf is no place for loose pieces', 'shelf', null],
] as const)('in hand after something went into %s', (_, kind, inHand) => {
  expect(given({ do: 'open-container', kind }).state.hand).toBe(inHand)
  expect(given(off(1, 'bolt', { into: { kind: 'new', container: kind } })).state.hand).toBe(inHand)
})

test('the container in hand is the one filled last', () => {
  const job = given(
    off(1, 'bolt', { into: newBag }),
    off(1, 'nut', { into: newBag }),
    off(1, 'clip', { into: bag(1) }),
  )
  expect(job.state.hand).toBe(1)
})
