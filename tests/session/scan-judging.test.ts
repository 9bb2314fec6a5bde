import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { scan } from '../../src/session/scan.ts'
import { begin, bought, end, into, off, open, set, take } from '../errors/commands.ts'
import { asked, judged, passed } from '../errors/judging-commands.ts'
import { sessionWith } from './support/sessions.ts'

// Bag 1: cam caps p1, p2. Bag 2: cover bolts p3, of another step, which goes back later.
const bags: Command[] = [
  begin('Cover off'),
  open('bag'),
  begin('Caps off'),
  open('bag'),
  set('cam caps', ['I1', 'I2'], into(1)),
  end,
]

function verdictOf(...commands: Command[]) {
  const answer = scan(sessionWith(...bags, ...commands), '1')
  return answer.kind === 'container' ? answer.verdict : answer
}

test.each<[string, Command[], object]>([
  ['nobody asked', [], { kind: 'fits-now', step: 2 }],
  [
    'a check is open',
    [asked('p1')],
    { kind: 'not-checked', step: 2, reasons: [{ code: 'check-due', check: 'k1' }] },
  ],
  ['in a step under way as well', [take(2), asked('p1')], { kind: 'not-checked', step: 2 }],
  ['all is seen', [asked('p1'), passed(['k1'])], { kind: 'fits-now', step: 2 }],
  [
    'one is condemned, and that is said before what is not checked',
    [asked('p1'), judged('replace', 'cracked', 'p2')],
    { kind: 'not-good', step: 2, reasons: [{ code: 'piece-judged', piece: 'p2', verdict: 'replace' }] },
  ],
  ['it is to be machined', [judged('machine', 'tight', 'p1')], { kind: 'not-good', step: 2 }],
  [
    'it may stay',
    [judged('machine', 'tight', 'p1'), judged('fit-again', 'eased', 'p1')],
    { kind: 'fits-now', step: 2 },
  ],
  ['both were replaced', [bought(1, 'p1', true), bought(1, 'p2', true)], { kind: 'nothing-to-fit' }],
])('%s', (_says, commands, verdict) => {
  expect(verdictOf(...commands)).toMatchObject(verdict)
})

test('what belongs to another step than the one in hand is said first', () => {
  const session = sessionWith(...bags, take(2), off(2, 'spacers', {}, into(2)), asked('p3'))
  expect(scan(session, '2')).toMatchObject({ verdict: { kind: 'not-in-this-step' } })
})
