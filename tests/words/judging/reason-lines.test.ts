import { expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { Gates } from '../../../src/plan/gates.ts'
import { reasonLines, toldReasons } from '../../../src/words/reason-lines.ts'
import { begin, end, fitted, job, off, set, take } from '../../errors/commands.ts'
import { asked, judged, passed, together } from '../../errors/judging-commands.ts'
import { ordered } from '../../errors/order-commands.ts'
import { play } from '../../errors/play.ts'
import { quoted, readTyped } from '../../errors/typed.ts'

// p1 cylinder head, p2 to p5 cam caps I1 to I4, p6 cover bolts.
const engine: Command[] = [
  job,
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2', 'I3', 'I4']),
  off(4, 'cover bolts'),
  end,
]
const caps = (kind: 'look' | 'measure', ...what: string[]): Command => ({
  do: 'ask-checks',
  checks: (['p2', 'p3', 'p4', 'p5'] as const).map((piece) => ({ piece, kind, what })),
})

function lines(...commands: Command[]): string[] {
  const { state } = play([...engine, ...commands])
  const texts = reasonLines(state, new Gates(state).start(1))
  for (const words of quoted(texts)) expect([words, readTyped(words, state).kind]).not.toContain('misread')
  return texts
}

test('the same check of each of a set is one line', () => {
  expect(lines(caps('look', 'score'))).toEqual([
    'Cam caps I1, I2, I3, I4 not checked (k1 to k4, look for score): "ok k1..k4" if good, else "judge p2 replace because ..." for the one that is not.',
  ])
})

test('what is passed of it is left out', () => {
  expect(lines(caps('look', 'score'), passed(['k2', 'k3']))).toEqual([
    'Cam caps I1, I4 not checked (k1 and k4, look for score): "ok k1,k4" if good, else "judge p2 replace because ..." for the one that is not.',
  ])
})

test('other checks of the set, and other pieces, have lines of their own', () => {
  expect(lines(caps('look', 'score'), asked('p1', 'clean'), caps('measure', 'bore'))).toEqual([
    'Cylinder head not checked (k5, clean it): "ok k5" if good, else "judge p1 replace because ...".',
    'Cam caps I1, I2, I3, I4 not checked (k1 to k4, look for score): "ok k1..k4" if good, else "judge p2 replace because ..." for the one that is not.',
    'Cam caps I1, I2, I3, I4 not checked (k6 to k9, measure bore): "measure bore of p2: ..." and so on, then "ok k6..k9" if good, else "judge p2 replace because ..." for the one that is not.',
  ])
})

test('one verdict on several is one line, another is not', () => {
  expect(
    lines(
      together('bored as one', 'p1', 'p2', 'p3', 'p4'),
      judged('replace', 'cracked', 'p1'),
      judged('machine', 'tight', 'p5'),
    ),
  ).toEqual([
    'Cylinder head is to be replaced, because cracked: "new p1" when the new one is here.',
    'Cam caps I1, I2, I3 are to be replaced, with cylinder head, because cracked: "new p2" and so on, when the new ones are here.',
    'Cam cap I4 is to be machined, because tight: "judge p5 fit again because ..." when that is done.',
  ])
})

test('the first of a group stands for it', () => {
  const { state } = play([...engine, caps('look', 'score')])
  const told = toldReasons(state, new Gates(state).start(1))
  expect(told.map(({ reason }) => reason)).toEqual([{ code: 'check-due', check: 'k1', piece: 'p2' }])
})

test('what is condemned on the machine comes off first', () => {
  const { state } = play([
    ...engine,
    take(1),
    fitted({ piece: 'p2', position: 'I1' }),
    fitted({ piece: 'p3', position: 'I2' }),
    judged('replace', 'worn', 'p2', 'p3'),
  ])
  expect(reasonLines(state, new Gates(state).finish(1)).at(-1)).toBe(
    'Cam caps I1, I2 are to be replaced, because worn: "reopen 1 because ...", then "new p2" and so on, when the new ones are here.',
  )
})

test('what is ordered for one of them is told by its order', () => {
  const order = ordered({ piece: 'p2', name: 'cam cap I1', count: 1 })
  expect(lines(judged('replace', 'worn', 'p2', 'p3'), order)).toEqual([
    'Cam caps I1, I2 are to be replaced, because worn: "arrived o1" and so on, when the new ones are here.',
  ])
})
