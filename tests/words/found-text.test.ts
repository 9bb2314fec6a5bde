import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import type { Found } from '../../src/lines/read-found.ts'
import { readLine } from '../../src/lines/read-line.ts'
import { foundHomes } from '../../src/plan/found/found-homes.ts'
import { Gates } from '../../src/plan/gates.ts'
import { gathered, outOfToolboxAs } from '../../src/session/found-view.ts'
import { missingViews } from '../../src/session/missing-views.ts'
import { foundHeading, foundHomeText, foundToolsText, nothingFoundText } from '../../src/words/found-text.ts'
import {
  begin,
  bought,
  done,
  end,
  fitted,
  job,
  move,
  off,
  put,
  recount,
  set,
  take,
  tool,
} from '../errors/commands.ts'
import { play } from '../errors/play.ts'
import { quoted, readTyped } from '../errors/typed.ts'

/** What is told of something found, at the end of a story. */
function told(words: string, ...commands: Command[]): string[] {
  const { state } = play([job, ...commands])
  const reading = readLine(`found ${words}`, state)
  if (reading.kind !== 'ask' || reading.ask.ask !== 'found') throw new Error(JSON.stringify(reading))
  const found: Found = reading.ask.found
  const view = {
    ...found,
    homes: gathered(state, foundHomes(new Gates(state), found.piece)),
    toolbox: outOfToolboxAs(state, found),
  }
  const lines = view.homes.flatMap((home) => {
    const { what, why, acts } = foundHomeText(state, view, home)
    return [what, why, ...acts]
  })
  const tools = foundToolsText(state, view)
  const all = [...tools, ...(lines.length === 0 ? nothingFoundText(view) : [foundHeading(view), ...lines])]
  for (const words of quoted(all)) expect([words, readTyped(words, state).kind]).not.toContain('misread')
  return all
}

const cover = [begin('Cover off', []), off(8, 'cover bolts', { size: 'M6x25 hex 10' })]
const lost = (piece: 'p1' | 'p2', count = 1) =>
  move(piece, { kind: 'place', place: 'lost' }, { count, reason: 'rolled away' })

describe('what is told of a home', () => {
  test('one that is lost', () =>
    expect(told('M6x25 hex 10', ...cover, end, lost('p1'))).toEqual([
      "One home may be that of 'M6x25 hex 10'.",
      'p1  cover bolts M6x25 hex 10, belongs to Cover, step 1: 1 lost and bag 1 should hold 7',
      'Agrees in thread, pitch, length and drive.',
      'If it is: "move 1 p1 from lost to bench".',
    ]))

  test('two of three that are lost', () =>
    expect(told('2 M6x25 bolts', ...cover, end, lost('p1', 3)).at(-1)).toBe(
      'If it is: "move 2 p1 from lost to bench".',
    ))

  test('one that a count misses', () =>
    expect(told('M6x25', ...cover, recount(1, ['p1', 7]))).toEqual([
      "One home may be that of 'M6x25'.",
      'p1  cover bolts M6x25 hex 10, belongs to Cover, step 1: bag 1 was counted 1 short (d1) and bag 1 should hold 8',
      'Agrees in thread, pitch and length.',
      'If it is: "explain d1 p1 to bench because ...".',
    ]))

  test('one that was missing when the job began', () =>
    expect(
      told('M6x25 bolt', begin('Cover off'), off(7, 'cover bolts', { size: 'M6x25', should: 8 })),
    ).toEqual([
      "One home may be that of 'M6x25 bolt'.",
      'p1  cover bolts M6x25, belongs to Cover, step 1: 1 missing when the job began and bag 1 should hold 7',
      'Agrees in thread, pitch, length and name.',
      'If it is: "new 1 p1" brings it into the record.',
    ]))

  test('one that is said to lie in a bag: the bag is counted', () =>
    expect(
      told('M6 T30 bolt', ...cover, off(4, 'clips', { kind: 'part' }, { kind: 'container', no: 1 })),
    ).toEqual([
      "One home may be that of 'M6 T30 bolt'.",
      'p1  cover bolts M6x25 hex 10, belongs to Cover, step 1: bag 1 should hold 8',
      'Agrees in thread, pitch and name; another drive.',
      'Count bag 1: "count 1: p1=..., p2=...".',
    ]))

  test('one that is said to be on the machine, under what was built since', () =>
    expect(
      told(
        'M6x25',
        begin('Guard off'),
        off(1, 'guard', { kind: 'part' }),
        begin('Gear off'),
        off(8, 'gear bolts', { size: 'M6x25' }),
        end,
        fitted('p2'),
        done(2),
        fitted('p1'),
        done(1),
      ),
    ).toEqual([
      "One home may be that of 'M6x25'.",
      'p2  gear bolts M6x25, belongs to Gear, step 2: 8 of 8 recorded as on the machine',
      'Agrees in thread, pitch and length.',
      'See whether all 8 are there; to reach them, "reopen 2 because ..." opens steps 1 and 2.',
    ]))

  test('some on the machine and some in the bag: the bag is nearer', () =>
    expect(
      told(
        'M6x25',
        begin('Gear off'),
        off(8, 'gear bolts', { size: 'M6x25' }),
        end,
        take(1),
        fitted({ piece: 'p1', count: 5 }),
      ).slice(1),
    ).toEqual([
      'p1  gear bolts M6x25, belongs to Gear, step 1: 5 of 8 recorded as on the machine and bag 1 should hold 3',
      'Agrees in thread, pitch and length.',
      'Count bag 1: "count 1 = ...".',
      'See whether all 5 are there; to reach them, "reopen 1 because ...".',
    ]))

  test('an old one, which nothing waits for', () =>
    expect(
      told(
        'M6x25',
        begin('Gear off'),
        off(2, 'gear bolts', { size: 'M6x25', singleUse: true }),
        end,
        bought(2, 'p1', true),
      ).slice(4),
    ).toEqual([
      'p1  gear bolts M6x25, belongs to Gear, step 1: bag 1 should hold 2, replaced by p2 gear bolts M6x25 and single-use and used',
      'Agrees in thread, pitch and length.',
      'Count bag 1: "count 1 = ...".',
      'If it is: nothing waits for it, "scrap 1 p1" or "spare 1 p1".',
    ]))

  test('a size that nobody wrote down', () =>
    expect(told('M6x25 hex 10', begin('Clips off'), off(4, 'spring clips')).slice(1, 3)).toEqual([
      'p1  spring clips, belongs to Clips, step 1: bag 1 should hold 4',
      'The record does not say thread, length and drive.',
    ]))
})

describe('a set whose pieces nothing tells apart', () => {
  const caps = [begin('Caps off'), set('cam caps', ['I1', 'I2', 'I3', 'I4', 'I5'])]

  test('stands there once', () =>
    expect(told('cam cap', ...caps)).toEqual([
      "One home may be that of 'cam cap'.",
      'p1  cam cap I1, belongs to Caps / I1, step 1: bag 1 should hold 1; the same goes for p2 cam cap I2, p3 cam cap I3 and 2 more of its set',
      'Agrees in name.',
      'Count bag 1: "count 1: p1=..., p2=..., p3=..., p4=..., p5=...".',
    ]))

  test('the one that is missing stands by itself, and first', () =>
    expect(
      told('cam cap', ...caps, lost('p2'))
        .filter((line) => /^p\d/.test(line))
        .map((line) => line.slice(0, 14)),
    ).toEqual(['p2  cam cap I2', 'p1  cam cap I1']))

  test('the one whose position is said stands by itself', () =>
    expect(
      told('cam cap I3', ...caps)
        .filter((line) => /^p\d/.test(line))
        .map((line) => line.slice(0, 14)),
    ).toEqual(['p3  cam cap I3', 'p1  cam cap I1']))
})

test('the likeliest first', () =>
  expect(
    told(
      'M6x25',
      ...cover,
      begin('Pump off', []),
      off(4, 'pump bolts', { size: 'M6x25 T30' }),
      end,
      lost('p2'),
    )
      .filter((line) => /^p\d/.test(line))
      .map((line) => line.slice(0, 2)),
  ).toEqual(['p2', 'p1']))

test('nothing that may be it', () =>
  expect(told('M10x60', ...cover)).toEqual([
    "Nothing in the record may be 'M10x60'.",
    'What came off and was never told of: "off ..." records it. For an aid or a tool, "where" shows what is out.',
  ]))

describe('typing what is said first puts the record right', () => {
  test.each<[string, Command[]]>([
    ['lost', [...cover, end, lost('p1', 2)]],
    ['counted short', [...cover, recount(1, ['p1', 6])]],
    ['missing when the job began', [begin('Cover off'), off(6, 'cover bolts', { size: 'M6x25', should: 8 })]],
  ])('%s', (_, commands) => {
    const { state } = play([job, ...commands])
    expect(missingViews(state)).toHaveLength(1)
    const [words = ''] = quoted(told('2 M6x25 bolts', ...commands))
    const reading = readTyped(words, state)
    const righted = play([job, ...commands, ...(reading.kind === 'commands' ? reading.commands : [])])
    expect(missingViews(righted.state)).toEqual([])
    expect(righted.state.ledger.accounts.get('p1')?.at.get('bench')).toBe(2)
  })
})

describe('an aid or a tool', () => {
  test('that the record has in the machine', () =>
    expect(told('rag', ...cover, put('rag', 'inlet port'))).toEqual([
      'p2, 1 × rag at inlet port, is out of the toolbox, on the machine: "take out p2" when it is back.',
    ]))

  test('that is lost', () => {
    const story = [
      begin('Hose off'),
      tool('magnet'),
      move('p1', { kind: 'place', place: 'lost' }, { reason: 'not there' }),
    ]
    const [says = ''] = told('magnet', ...story)
    expect(says).toBe('p1, 1 × magnet, is lost: "move 1 p1 from lost to toolbox" if it is.')
    const { state } = play([job, ...story])
    const reading = readTyped(quoted([says])[0] ?? '', state)
    const righted = play([job, ...story, ...(reading.kind === 'commands' ? reading.commands : [])])
    expect(righted.state.ledger.accounts.get('p1')?.at.get('toolbox')).toBe(1)
  })

  test('beside a piece of its name', () =>
    expect(
      told('clamp', begin('Hose off'), off(2, 'clamps', { kind: 'part' }), tool('clamp')).map((line) =>
        line.slice(0, 24),
      ),
    ).toEqual([
      'p2, 1 × clamp, is out of',
      'One home may be that of ',
      'p1  clamps, belongs to H',
      'Agrees in name.',
      'Count bag 1: "count 1 = ',
    ]))

  test('that is back in the toolbox is not it', () => expect(told('rag', ...cover)).toHaveLength(2))
})
