import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { type FoundHome, foundHomes } from '../../../src/plan/found/found-homes.ts'
import { type FoundPiece, foundPiece } from '../../../src/plan/found/found-piece.ts'
import { Gates } from '../../../src/plan/gates.ts'
import { readBagLine } from '../../../src/trade/bag-line/read-bag-line.ts'
import {
  aidIn,
  at,
  begin,
  count,
  done,
  endStrip,
  look,
  lose,
  matchedOff,
  move,
  off,
  override,
  putOn,
  replace,
  strip,
  supply,
} from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

/** What a person says of a piece found under the bench. */
function said(text: string): FoundPiece {
  const line = readBagLine(text, { units: 'metric' })
  const item = line.understood ? line.items[0] : undefined
  if (item?.kind !== 'fastener' && item?.kind !== 'part') throw new Error(`no piece: ${text}`)
  return foundPiece(item)
}

const homesOf = (found: FoundPiece, ...commands: Command[]) =>
  foundHomes(new Gates(given(...commands).state), found)
const idsOf = (homes: FoundHome[]) => homes.map(({ piece }) => piece)

/** Two lengths, two drives, one thread: what lies on every bench. */
const lookAlikes: Command[] = [
  strip('cover off'),
  off(8, 'cover bolts', { size: 'M6x20 hex 10' }),
  off(6, 'pump bolts', { size: 'M6x25 hex 10' }),
  off(4, 'guard screws', { size: 'M6x20 T30' }),
  off(2, 'clamp screws', { size: 'M6x25 T30' }),
]

describe('what agrees', () => {
  test.each<[string, FoundPiece, string[]]>([
    ['another length or thread is out', said('1 M6x25 bolt'), ['p2', 'p4']],
    ['another drive stays, behind', said('1 M6x25 T30 screw'), ['p4', 'p2']],
    ['a thread alone', said('1 M6 bolt'), ['p1', 'p2', 'p3', 'p4']],
    [
      'a drive alone leaves out what is known to have another',
      { drive: said('1 T30 bolt').drive },
      ['p3', 'p4'],
    ],
    ['a length alone', { lengthMm: 20.5 }, ['p1', 'p3']],
    ['words after what was measured', said('1 M6x20 guard bolt'), ['p3', 'p1']],
    ['words alone', { name: 'the guard screw' }, ['p3', 'p1', 'p2', 'p4']],
    ['nothing of that thread', said('1 M8x25 bolt'), []],
    ['the same in inches is another', said('1 1/4-20x1 bolt'), []],
    ['nothing known is nothing found', {}, []],
  ])('%s', (_, found, expected) => expect(idsOf(homesOf(found, ...lookAlikes))).toEqual(expected))

  test('why, part by part', () => {
    const [first, second] = homesOf(said('1 M6x25 8.8 T30 pump screw'), ...lookAlikes)
    expect(first).toMatchObject({
      piece: 'p4',
      agrees: { thread: 'yes', pitch: 'yes', length: 'yes', drive: 'yes', fastenerClass: 'unknown' },
    })
    expect(first?.agrees).toMatchObject({ name: 'partly', words: 1 })
    expect(second).toMatchObject({ piece: 'p2', agrees: { drive: 'no', name: 'yes', words: 2 } })
  })

  test('fasteners whose size nobody wrote may be it, and come behind; covers may not', () => {
    const homes = homesOf(
      said('1 M6x25 hex 10 bolt'),
      strip('cover off'),
      off(3, 'dowel pins'),
      off(4, 'bolts', { size: 'hex 10' }),
      off(4, 'bolts', { size: 'T30' }),
      off(2, 'bolts', { size: 'M6 hex 10' }),
      off(2, 'cover', { kind: 'part' }),
      off(2, 'bolt cover', { kind: 'part' }),
    )
    expect(idsOf(homes)).toEqual(['p4', 'p2', 'p1', 'p3'])
  })

  test('a pitch that nobody wrote contradicts none, and stands behind the one that agrees', () => {
    const job = [off(4, 'bolts', { size: 'M8x45' }), off(4, 'bolts', { size: 'M8x1x45' })]
    const fine = off(4, 'bolts', { size: 'M8x1.25x45' })
    expect(idsOf(homesOf(said('1 M8x1x45 bolt'), ...job, fine))).toEqual(['p2', 'p1'])
    expect(idsOf(homesOf(said('1 M8x45 bolt'), ...job, fine))).toEqual(['p1', 'p3', 'p2'])
  })

  test('aids, tools and strays have no home on the machine', () => {
    const homes = homesOf(
      { name: 'plug' },
      aidIn('blanking plug'),
      off(1, 'drain plug', { kind: 'part' }),
      count(1, ['p2', 1], [null, 1]),
      {
        do: 'explain',
        difference: 'd1',
        how: { kind: 'unknown-piece', name: 'plug' },
        reason: 'it lay there',
      },
    )
    expect(idsOf(homes)).toEqual(['p2'])
  })

  test('a matched piece answers to its position too', () => {
    const homes = homesOf({ name: 'cap I2' }, matchedOff(['I1', 'I2'], 'cam cap'))
    expect(homes.map(({ piece, agrees }) => [piece, agrees.name])).toEqual([
      ['p2', 'yes'],
      ['p1', 'partly'],
    ])
  })
})

describe('what the count says', () => {
  const one = (...more: Command[]) =>
    homesOf(said('1 M6x20 bolt'), off(8, 'cover bolts', { size: 'M6x20' }), ...more)[0]

  test('lying in a bag that should hold 8', () => {
    expect(one()).toMatchObject({ standing: 'lying', undo: [] })
    expect(one()?.count).toMatchObject({
      should: 8,
      onMachine: 0,
      short: 0,
      lies: [{ place: 'c1', count: 8 }],
    })
  })

  test('counted one short, and not explained', () => {
    expect(one(count(1, ['p1', 7]))).toMatchObject({
      standing: 'missing',
      count: {
        countedShort: [{ difference: 'd1', container: 1, count: 1 }],
        lies: [{ place: 'c1', count: 8 }],
      },
    })
    expect(one(count(1, ['p1', 9]))).toMatchObject({ standing: 'lying', count: { countedShort: [] } })
    expect(one(count(1, ['p1', 7]), count(1, ['p1', 8]))).toMatchObject({ standing: 'lying' })
  })

  test('lost, accepted or not', () => {
    const lost = [endStrip, lose('p1', 1)]
    expect(one(...lost)).toMatchObject({ standing: 'missing', count: { lost: 1, short: 1 } })
    const accepted = one(...lost, { do: 'accept-lost', piece: 'p1', reason: 'a new one is coming' })
    expect(accepted).toMatchObject({ standing: 'missing', count: { lost: 1 } })
    // A new one came in its stead, and the lost one may still turn up.
    const supplied = one(...lost, supply('p1', 1))
    expect(supplied).toMatchObject({ standing: 'missing', count: { lost: 1, short: 0 } })
  })

  test('one was missing when the job began', () =>
    expect(
      homesOf(said('1 M6x20 bolt'), off(8, 'cover bolts', { size: 'M6x20', found: 7 }))[0],
    ).toMatchObject({ standing: 'missing', count: { short: 1, lost: 0 } }))

  test('recorded as on the machine, one of which it may be, and what is undone to see', () =>
    expect(one(endStrip, look(1), begin(1), putOn('p1'), done(1))).toMatchObject({
      standing: 'on-machine',
      count: { onMachine: 8, lies: [] },
      undo: [1],
    }))

  test('half of them on', () =>
    expect(one(endStrip, look(1), begin(1), putOn('p1', undefined, 5))).toMatchObject({
      standing: 'on-machine',
      count: { onMachine: 5, lies: [{ place: 'c1', count: 3 }] },
      undo: [],
    }))

  test('left off on purpose, all or some', () => {
    const leaveOff = (count: number): Command => ({ do: 'leave-off', piece: 'p1', count, reason: 'no use' })
    expect(one(endStrip, leaveOff(8))).toMatchObject({
      standing: 'out-of-use',
      count: { should: 0, leftOff: 8, lies: [{ place: 'c1', count: 8 }] },
    })
    expect(one(endStrip, leaveOff(1))).toMatchObject({ standing: 'lying', count: { should: 7, leftOff: 1 } })
  })

  test('thrown away, and replaced: the old ones have no home any more', () => {
    const homes = homesOf(
      said('1 M6x20 bolt'),
      off(2, 'cover bolts', { size: 'M6x20' }),
      endStrip,
      move('p1', at('scrap'), { count: 1 }),
      replace('p1', 2),
      look(1),
      putOn('p2'),
      done(1),
    )
    expect(homes).toMatchObject([
      { piece: 'p2', standing: 'on-machine', undo: [1], count: { leftOff: 0 } },
      { piece: 'p1', standing: 'out-of-use', undo: [], count: { replacedBy: 'p2', scrapped: 1, leftOff: 0 } },
    ])
  })

  test('used once: no longer wanted', () => {
    const homes = homesOf(said('1 M6x20 bolt'), off(2, 'cover bolts', { size: 'M6x20', singleUse: true }))
    expect(homes).toMatchObject([{ piece: 'p1', standing: 'out-of-use', count: { used: true } }])
  })
})

test('among what agrees alike: missing, then on the machine, then in a bag, then out of use', () => {
  const size = 'M6x20 hex 10'
  const homes = homesOf(
    said('1 M6x20 hex 10 bolt'),
    strip('one'),
    off(2, 'bolts', { size }),
    strip('two', { after: [] }),
    off(2, 'bolts', { size }),
    strip('three', { after: [] }),
    off(2, 'bolts', { size }),
    strip('four', { after: [] }),
    off(2, 'bolts', { size }),
    off(1, 'bolts', { size: 'M6x20 hex 8', found: 0 }),
    endStrip,
    { do: 'leave-off', piece: 'p1', reason: 'no use' },
    begin(3),
    putOn('p3'),
    done(3),
    lose('p4', 1),
  )
  expect(homes.map(({ piece, standing }) => [piece, standing])).toEqual([
    ['p4', 'missing'],
    ['p3', 'on-machine'],
    ['p2', 'lying'],
    ['p1', 'out-of-use'],
    // What was measured otherwise stands behind, missing or not.
    ['p5', 'missing'],
  ])
})

test('of two that are on the machine, first the one that is reached by undoing less', () => {
  const homes = homesOf(
    said('1 M6x20 bolt'),
    strip('guard off', { hides: false }),
    off(1, 'guard', { kind: 'part' }),
    strip('cover off', { after: [1], hides: false }),
    off(2, 'bolts', { size: 'M6x20' }),
    strip('bracket off', { after: [], hides: false }),
    off(2, 'bolts', { size: 'M6x20' }),
    endStrip,
    putOn('p2'),
    done(2),
    putOn('p1'),
    done(1),
    putOn('p3'),
    done(3),
  )
  expect(homes.map(({ piece, undo }) => [piece, undo])).toEqual([
    ['p3', [3]],
    ['p2', [1, 2]],
  ])
})

const lengths = [20, 25]
const drives = ['hex 10', 'T30']
const sizes = lengths.flatMap((length) => drives.map((drive) => ({ length, drive })))

/** A lot of fasteners that somebody may take for another, at a step of its own or one with the lot before. */
interface Lot {
  size: number
  count: number
  ownStep: boolean
  /** The coarse pitch of ISO 261 for M6, written out or not. */
  pitch: boolean
}
const lot = fc.record({
  size: fc.nat(sizes.length - 1),
  count: fc.integer({ min: 2, max: 9 }),
  ownStep: fc.boolean(),
  pitch: fc.boolean(),
})
const others: Command[] = [
  off(10, 'mount bolts', { size: 'M8x20 hex 13' }),
  off(4, 'clips'),
  off(1, 'gasket', { kind: 'part' }),
  matchedOff(['I1', 'I2'], 'cap'),
]

/** The lots come off in order as p1, p2, ..., each into a bag of its own number; then things that look like none of them. */
function strippedDown(lots: readonly Lot[], missing: readonly number[] = []): Command[] {
  const apart = lots.flatMap(({ size, count, ownStep, pitch }, index) => {
    const { length, drive } = sizes[size] as (typeof sizes)[number]
    const text = `M6${pitch ? 'x1' : ''}x${length} ${drive}`
    const found = missing.includes(index) ? count - 1 : count
    const lotOff = off(count, `lot ${index + 1} bolts`, { size: text, found })
    return ownStep ? [strip(`lot ${index + 1}`), lotOff] : [lotOff]
  })
  return [strip('stripping'), ...apart, strip('others'), ...others, endStrip]
}

/** What somebody says who has a rule and a gauge; and, in `whole`, has tried a wrench on it. */
function described({ size }: Lot, whole: boolean): FoundPiece {
  const { length, drive } = sizes[size] as (typeof sizes)[number]
  return said(`1 M6x${length}${whole ? ` ${drive}` : ''} bolt`)
}

/** Where among the homes the true origin stands, from 1. */
function rankOf(origin: number, homes: readonly FoundHome[]): number {
  const rank = homes.findIndex(({ piece }) => piece === `p${origin + 1}`) + 1
  expect(rank).toBeGreaterThan(0)
  return rank
}

/** Back up again, so many steps, as far as the gates let it. */
function backUp(stripped: Job, steps: number): Job {
  let job = stripped
  for (let step = 0; step < steps; step += 1) {
    const ready = new Gates(job.state).ready()[0]
    if (ready === undefined) break
    const own = [...job.state.ledger.accounts.values()].filter(({ piece }) => piece.step === ready)
    job = job.and(...own.map(({ piece, home }) => putOn(piece.id, home.position)), done(ready))
  }
  return job
}
type Job = ReturnType<typeof given>

describe('a piece that turned up: its true origin is among the first three', () => {
  /** Up to twelve lots, the orphan's among them, and up to two more lots of which one is gone for other reasons. */
  const crowd = fc.record({
    lots: fc.array(lot, { minLength: 1, maxLength: 12, size: 'max' }),
    pick: fc.nat(11),
    alsoGone: fc.array(fc.nat(11), { maxLength: 2 }),
    whole: fc.boolean(),
    how: fc.constantFrom('lost', 'counted', 'never there'),
    built: fc.nat(14),
  })

  test('where the record misses one, among any number of look-alikes', () => {
    fc.assert(
      fc.property(crowd, ({ lots, pick, alsoGone, whole, how, built }) => {
        const origin = pick % lots.length
        const gone = [...new Set([origin, ...alsoGone.map((each) => each % lots.length)])]
        const missing = how === 'never there' ? gone : []
        let job = given(...strippedDown(lots, missing))
        for (const index of gone) {
          const id = `p${index + 1}` as const
          const there = (lots[index] as Lot).count - 1
          if (how === 'lost') job = job.and(lose(id, 1))
          if (how === 'counted') job = job.and(count(index + 1, [id, there]))
        }
        job = backUp(job, built)
        const homes = foundHomes(new Gates(job.state), described(lots[origin] as Lot, whole))
        expect(rankOf(origin, homes)).toBeLessThanOrEqual(3)
      }),
      { numRuns: 400, seed: 59 },
    )
  })

  test('where the record misses none, as long as no more than three look like it', () => {
    const few = fc.record({
      lots: fc
        .array(lot, { minLength: 1, maxLength: 12, size: 'max' })
        .filter((lots) => sizes.every((_, size) => lots.filter((each) => each.size === size).length <= 3)),
      pick: fc.nat(11),
      put: fc.constantFrom('in its bag', 'on the machine'),
    })
    fc.assert(
      fc.property(few, ({ lots, pick, put }) => {
        const origin = pick % lots.length
        const own = lots[origin] as Lot
        const stripped = given(...strippedDown(lots))
        const job = put === 'in its bag' ? stripped : backUp(stripped, lots.length + 2)
        const rank = (whole: boolean) =>
          rankOf(origin, foundHomes(new Gates(job.state), described(own, whole)))
        expect(rank(true)).toBeLessThanOrEqual(3)
        const ownLength = sizes[own.size]?.length
        const sameLength = lots.filter(({ size }) => sizes[size]?.length === ownLength)
        if (sameLength.length <= 3) expect(rank(false)).toBeLessThanOrEqual(3)
      }),
      { numRuns: 300, seed: 60 },
    )
  })

  test('one that is recorded as fitted and fell down, while all that look like it lie in their bags', () => {
    fc.assert(
      fc.property(fc.array(lot, { minLength: 1, maxLength: 12, size: 'max' }), fc.nat(11), (lots, pick) => {
        const origin = pick % lots.length
        const alone = lots.map((each) => ({ ...each, ownStep: true }))
        const commands = [
          ...strippedDown(alone),
          override(`start ${origin + 2}`),
          begin(origin + 2),
          putOn(`p${origin + 1}`),
        ]
        for (const whole of [false, true])
          expect(rankOf(origin, homesOf(described(lots[origin] as Lot, whole), ...commands))).toBe(1)
      }),
      { numRuns: 150, seed: 61 },
    )
  })
})
