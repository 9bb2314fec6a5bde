import { expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { judgingHeeds } from '../../src/session/judging-heeds.ts'
import { judgingHeedText } from '../../src/words/judging/heed-words.ts'
import { begin, bought, done, end, fitted, job, off, set, take } from '../errors/commands.ts'
import { asked, clearances, flatness, found, judged, listed, together } from '../errors/judging-commands.ts'
import { play } from '../errors/play.ts'
import { quoted, readTyped } from '../errors/typed.ts'

// p1 cylinder head, p2 to p4 cam caps I1 to I3, p5 oil pump.
const engine: Command[] = [
  job,
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2', 'I3']),
  off(1, 'oil pump', { kind: 'part' }),
  end,
]
const bored = together('the caps are bored in the head', 'p1', 'p2', 'p3', 'p4')
const list = listed('metal in the oil', { do: 'replace', piece: 'p5' })
const on: Command[] = [
  job,
  begin('Engine off'),
  off(1, 'oil pump', { kind: 'part' }),
  end,
  take(1),
  fitted('p1'),
  done(1),
]

test.each<[string, Command[], string[]]>([
  ['a verdict on one alone', [...engine, judged('replace', 'cracked', 'p1')], []],
  [
    'what was judged along, and why',
    [...engine, bored, judged('replace', 'cracked', 'p1')],
    ['With cylinder head go cam caps I1, I2, I3: the caps are bored in the head.'],
  ],
  [
    'along without a reason',
    [...engine, together(undefined, 'p1', 'p5'), judged('replace', 'cracked', 'p1')],
    ['With cylinder head goes oil pump: they belong together.'],
  ],
  [
    'what is condemned on the machine, and what to undo',
    [...on, judged('replace', 'it leaks', 'p1')],
    ['Oil pump is on the machine, so the first start is held: "reopen 1 because ...", which opens step 1.'],
  ],
  ['what may stay there', [...on, judged('fit-again', 'it is dry', 'p1')], []],
  [
    'a measurement that a check asks for, in its limits',
    [...engine, asked('p1', 'measure', 'flatness'), flatness('p1', 0.02, 0.03)],
    ['Cylinder head, k1, measure flatness: measured, "ok k1" if it is good.'],
  ],
  [
    'out of them',
    [...engine, asked('p1', 'measure', 'flatness'), flatness('p1', 0.2)],
    [
      'Cylinder head, k1, measure flatness: out, so "judge p1 replace because ...", "judge p1 machine because ..." or "judge p1 fit again because ...".',
    ],
  ],
  [
    'too close to call',
    [...engine, asked('p1', 'measure', 'flatness'), flatness('p1', 0.05)],
    ['Cylinder head, k1, measure flatness: too close to call, "ok k1: ..." with why it is good.'],
  ],
  [
    'only a part of what is asked',
    [...engine, asked('p1', 'measure', 'flatness', 'run-out'), flatness('p1', 0.02)],
    ['Cylinder head, k1, measure flatness and run-out: still to be measured, run-out.'],
  ],
  [
    'of a set, each check by itself',
    [
      ...engine,
      asked('p2', 'measure', 'oil clearance'),
      asked('p3', 'measure', 'oil clearance'),
      asked('p4', 'measure', 'oil clearance'),
      clearances('p2', { I1: 0.02, I2: 0.3 }),
    ],
    [
      'Cam cap I1, k1, measure oil clearance: measured, "ok k1" if it is good.',
      'Cam cap I2, k2, measure oil clearance: out, so "judge p3 replace because ...", "judge p3 machine because ..." or "judge p3 fit again because ...".',
    ],
  ],
  ['a measurement that nobody asked for', [...engine, flatness('p1', 0.2)], []],
  [
    'a finding and its list',
    [...engine, list, found('metal in the oil', 'h1')],
    ['Opened: h1, when metal in the oil.'],
  ],
  [
    'a finding without one',
    [...engine, list, found('a coin')],
    ['No list of yours is for this: "help when" tells how to make one.'],
  ],
  [
    'a new piece among those it belongs together with',
    [...engine, bored, bought(1, 'p1', true)],
    [
      'Cam caps I1, I2, I3 belong together with cylinder head, which is new (the caps are bored in the head): judge them too, "judge p2 replace because ..." or "judge p2 fit again because ...".',
    ],
  ],
  [
    'a new piece whose mates are condemned already',
    [...engine, bored, judged('replace', 'cracked', 'p1'), bought(1, 'p1')],
    [],
  ],
])('%s', (_says, commands, told) => {
  const { state, entries } = play(commands)
  const last = entries.at(-1)
  if (!last) throw new Error('no entry')
  const texts = judgingHeeds(state, last).map((heed) => judgingHeedText(state, heed))
  expect(texts).toEqual(told)
  for (const words of quoted(texts)) expect([words, readTyped(words, state).kind]).not.toContain('misread')
})
