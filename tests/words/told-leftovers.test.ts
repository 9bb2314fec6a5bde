import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { Gates } from '../../src/plan/gates.ts'
import { leftovers } from '../../src/plan/leftovers.ts'
import { leftoverLines, toldLeftovers } from '../../src/words/told-leftovers.ts'
import { begin, end, fitted, job, off, set, take } from '../errors/commands.ts'
import { judged } from '../errors/judging-commands.ts'
import { play } from '../errors/play.ts'
import { quoted, readTyped } from '../errors/typed.ts'

// p1 to p4 cam caps I1 to I4, p5 camshaft.
const engine: Command[] = [
  job,
  begin('Cam caps off'),
  set('cam caps', ['I1', 'I2', 'I3', 'I4']),
  off(1, 'camshaft', { kind: 'part' }),
  end,
]
const look = (...pieces: `p${number}`[]): Command => ({
  do: 'ask-checks',
  checks: pieces.map((piece) => ({ piece, kind: 'look', what: ['score'] })),
})

function judgements(...commands: Command[]) {
  const { state } = play([...engine, ...commands])
  const all = leftovers(new Gates(state)).filter(
    ({ code }) => code === 'check-due' || code === 'piece-judged',
  )
  for (const words of quoted(leftoverLines(state, all, String)))
    expect([words, readTyped(words, state).kind]).not.toContain('misread')
  return toldLeftovers(state, all, String).map(({ what, where, cure }) => [`${what}: ${where}`, cure])
}

test('the same check of each of a set is left over once, another piece by itself', () => {
  expect(judgements(look('p1', 'p2', 'p3', 'p4', 'p5'))).toEqual([
    [
      'cam caps I1, I2, I3, I4 not checked (k1 to k4, look for score): belong to Cam caps, step 1',
      '"ok k1..k4" if good, else "judge p1 replace because ..." for the one that is not.',
    ],
    [
      'camshaft not checked (k5, look for score): belongs to Cam caps, step 1',
      '"ok k5" if good, else "judge p5 replace because ...".',
    ],
  ])
})

test('those of a set that are on the machine are told apart from those that lie beside it', () => {
  const told = judgements(
    take(1),
    fitted({ piece: 'p1', position: 'I1' }),
    fitted({ piece: 'p2', position: 'I2' }),
    judged('replace', 'worn', 'p1', 'p2', 'p3', 'p4'),
  )
  expect(told.map(([what]) => what)).toEqual([
    'cam caps I1, I2 are to be replaced, because worn: are on the machine, at Cam caps, step 1',
    'cam caps I3, I4 are to be replaced, because worn: belong to Cam caps, step 1',
  ])
})
