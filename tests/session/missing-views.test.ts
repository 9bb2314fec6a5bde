import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { missingViews } from '../../src/session/missing-views.ts'
import { missingText } from '../../src/words/missing-text.ts'
import { begin, bought, end, job, move, off, override, recount } from '../errors/commands.ts'
import { play } from '../errors/play.ts'
import { quoted, readTyped } from '../errors/typed.ts'

const lost = (piece: 'p1', count: number): Command =>
  move(piece, { kind: 'place', place: 'lost' }, { count, reason: 'rolled away' })
const snapped = off(4, 'studs', { broken: { kind: 'snapped', count: 1 } })
const bolts = off(8, 'bolts')
const settled: Command = { do: 'settle-fault', fault: 'x1', how: 'drilled out, new thread' }
const accepted: Command = { do: 'accept-lost', piece: 'p1', reason: 'nobody looks any more' }
const leftOff: Command = { do: 'leave-off', piece: 'p1', count: 1, reason: 'holds without' }

/** What is missing after a story, and each way in which it is put right. */
function told(...commands: Command[]): string[] {
  const { state } = play([job, begin('Gear off'), ...commands, end])
  const lines = missingViews(state).flatMap((view) => {
    const { what, ways } = missingText(state, view)
    return [what, ...ways.map((way) => `> ${way}`)]
  })
  for (const words of quoted(lines)) expect([words, readTyped(words, state).kind]).not.toContain('misread')
  return lines
}

describe('each thing that is missing or broken, with all the ways out', () => {
  test.each<[string, Command[], string[]]>([
    ['nothing', [bolts], []],
    [
      'missing when the job began: found, bought, or done without',
      [off(7, 'bolts', { should: 8 })],
      [
        'bolts: 1 short and 1 missing when the job began',
        '> "new 1 p1" when found or here, or "leave off 1 p1 because ...".',
      ],
    ],
    [
      'lost: found, bought, done without, and accepted as lost',
      [bolts, lost('p1', 2)],
      [
        'bolts: 2 short and 2 lost',
        '> "move 2 p1 from lost to bench" when found, "new 2 p1" when here, or "leave off 2 p1 because ...".',
        '> "accept lost p1 because ..." when nobody looks any more.',
      ],
    ],
    [
      'lost and replaced: found or accepted',
      [bolts, lost('p1', 1), bought(1, 'p1')],
      ['bolts: 1 lost', '> "move 1 p1 from lost to bench" when found, or "accept lost p1 because ...".'],
    ],
    [
      'snapped: got out, replaced, done without, or accepted',
      [snapped],
      [
        'studs: 1 short, 1 in scrap and x1, 1 × stud snapped',
        '> "new 1 p1" when here, or "leave off 1 p1 because ...".',
        '> Get out what is left of it, then "settle x1: ..." with how, or "override x1 because ..." if it may stay so.',
      ],
    ],
    [
      'counted short and not explained',
      [bolts, recount(1, ['p1', 7])],
      [
        'bolts: count d1, bag 1, bolts: 7 counted, 8 in the record, 1 short',
        '> Look for it: "explain d1 p1 to PLACE because ..." when found, or "explain d1 missing because ...".',
      ],
    ],
  ])('%s', (_, commands, lines) => expect(told(...commands)).toEqual(lines))

  test.each<[string, Command[]]>([
    ['lost, replaced and accepted', [bolts, lost('p1', 1), bought(1, 'p1'), accepted]],
    ['lost, left off and accepted', [bolts, lost('p1', 1), leftOff, accepted]],
    ['snapped, got out and replaced', [snapped, settled, bought(1, 'p1')]],
    ['snapped, allowed to stay and left off', [snapped, override('x1'), leftOff]],
    ['missing when the job began, and found', [off(7, 'bolts', { should: 8 }), bought(1, 'p1')]],
  ])('no more: %s', (_, commands) => expect(told(...commands)).toEqual([]))
})

test('the figures as data', () =>
  expect(missingViews(play([job, begin('Gear off'), snapped, bolts, lost2(), end]).state)).toEqual([
    { piece: 'p1', step: 1, short: 1, neverThere: 0, lost: 0, faults: ['x1'], differences: [] },
    { piece: 'p2', step: 1, short: 3, neverThere: 0, lost: 3, faults: [], differences: [] },
  ]))

function lost2(): Command {
  return move('p2', { kind: 'place', place: 'lost' }, { count: 3, reason: 'rolled away' })
}
