import { begin, done, end, fitted, job, off, set, take } from './commands.ts'
import { asked, judged, together } from './judging-commands.ts'
import type { LeftoverCase } from './leftovers.ts'
import type { ReasonCase } from './reasons.ts'

const head = [job, begin('Engine off'), off(1, 'cylinder head', { kind: 'part' }), end]
const caps = [
  job,
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2']),
  end,
]

/** Why a step waits for what is not accepted. */
export const judgingReasonCases = {
  'check-due': [
    {
      given: [...head, asked('p1', 'look', 'cracks', 'score')],
      gate: 'start',
      step: 1,
      says: [
        'Cylinder head not checked (k1, look for cracks and score): "ok k1" if good, else "judge p1 replace because ...".',
      ],
    },
    {
      given: [...head, asked('p1', 'measure', 'flatness')],
      gate: 'start',
      step: 1,
      says: [
        'Cylinder head not checked (k1, measure flatness): "measure flatness of p1: ...", then "ok k1" if good, else "judge p1 replace because ...".',
      ],
    },
    {
      given: [...head, take(1), fitted('p1'), asked('p1', 'clean')],
      gate: 'finish',
      step: 1,
      says: [
        'Cylinder head not checked (k1, clean it): "ok k1" if good, else "judge p1 replace because ...".',
      ],
    },
  ],
  'piece-judged': [
    {
      given: [...head, judged('replace', 'cracked', 'p1')],
      gate: 'start',
      step: 1,
      says: ['Cylinder head is to be replaced, because cracked: "new p1" when the new one is here.'],
    },
    {
      given: [...head, judged('machine', 'warped', 'p1')],
      gate: 'start',
      step: 1,
      says: [
        'Cylinder head is to be machined, because warped: "judge p1 fit again because ..." when that is done.',
      ],
    },
    {
      given: [...head, judged('clean', 'varnish', 'p1')],
      gate: 'start',
      step: 1,
      says: [
        'Cylinder head is to be cleaned and looked at again, because varnish: "judge p1 fit again because ..." when that is done.',
      ],
    },
    {
      given: [...caps, together('bored as one', 'p1', 'p2', 'p3'), judged('replace', 'cracked', 'p1')],
      gate: 'start',
      step: 1,
      says: [
        'Cylinder head is to be replaced, because cracked: "new p1" when the new one is here.',
        'Cam cap I1 is to be replaced, with cylinder head, because cracked: "new p2" when the new one is here.',
        'Cam cap I2 is to be replaced, with cylinder head, because cracked: "new p3" when the new one is here.',
      ],
    },
    {
      given: [...head, take(1), fitted('p1'), judged('replace', 'cracked', 'p1')],
      gate: 'finish',
      step: 1,
      says: [
        'Cylinder head is to be replaced, because cracked: "reopen 1 because ...", then "new p1" when the new one is here.',
      ],
    },
  ],
} satisfies Record<string, ReasonCase[]>

/** What is not accepted holds the first start, wherever it is. */
export const judgingLeftoverCases = {
  'check-due': [
    {
      given: [...head, asked('p1', 'look', 'cracks')],
      says: [
        'Cylinder head not checked (k1, look for cracks): belongs to Engine, step 1.',
        '> "ok k1" if good, else "judge p1 replace because ...".',
      ],
    },
    {
      given: [...head, take(1), fitted('p1'), done(1), asked('p1', 'measure', 'flatness')],
      says: [
        'Cylinder head not checked (k1, measure flatness): is on the machine, at Engine, step 1. To reach it, undo: step 1.',
        '> "measure flatness of p1: ...", then "ok k1" if good, else "judge p1 replace because ...".',
      ],
    },
  ],
  'piece-judged': [
    {
      given: [...head, judged('replace', 'cracked', 'p1')],
      says: [
        'Cylinder head is to be replaced, because cracked: belongs to Engine, step 1.',
        '> "new p1" when the new one is here.',
      ],
    },
    {
      given: [...head, take(1), fitted('p1'), done(1), judged('replace', 'cracked', 'p1')],
      says: [
        'Cylinder head is to be replaced, because cracked: is on the machine, at Engine, step 1. To reach it, undo: step 1.',
        '> "reopen 1 because ...", then "new p1" when the new one is here.',
      ],
    },
    {
      given: [...head, take(1), fitted('p1'), done(1), judged('machine', 'warped', 'p1')],
      says: [
        'Cylinder head is to be machined, because warped: is on the machine, at Engine, step 1. To reach it, undo: step 1.',
        '> "reopen 1 because ...", then "judge p1 fit again because ..." when that is done.',
      ],
    },
  ],
} satisfies Record<string, LeftoverCase[]>
