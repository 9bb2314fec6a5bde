import type { Command } from '../../../src/journal/command.ts'
import { begin, end, job, off, set } from '../../errors/commands.ts'
import { asked, found, judged, judgedSome, listed, passed, together } from '../../errors/judging-commands.ts'

const head: Command[] = [
  job,
  begin('Engine off'),
  off(1, 'cylinder head', { kind: 'part' }),
  set('cam caps', ['I1', 'I2']),
  off(8, 'pump studs'),
  end,
]
const list = listed(
  'metal in the oil',
  { do: 'replace', piece: 'p1' },
  { do: 'check', piece: 'p2', kind: 'look', what: ['score'] },
)

/** What was asked of pieces and decided about them, as the history tells it. */
export const judgingEntries = {
  'checks-set': [
    {
      story: [...head, asked('p2', 'look', 'score', 'cracks')],
      says: 'to be checked: cam cap I1, look for score and cracks (k1)',
    },
    { story: [...head, asked('p1', 'clean')], says: 'to be checked: cylinder head, clean it (k1)' },
    {
      story: [
        ...head,
        {
          do: 'ask-checks',
          checks: [
            { piece: 'p2', kind: 'measure', what: ['bore'] },
            { piece: 'p3', kind: 'measure', what: ['bore'] },
          ],
        },
      ],
      says: 'to be checked: cam caps I1, I2, measure bore (k1 and k2)',
    },
  ],
  'checks-done': [
    {
      story: [...head, asked('p1', 'look', 'cracks'), passed(['k1'])],
      says: 'checked and good: k1, cylinder head',
    },
    {
      story: [...head, asked('p1', 'look', 'cracks'), asked('p2'), passed(['k1', 'k2'], 'none')],
      says: 'checked and good: k1 and k2, cylinder head and cam cap I1: none',
    },
  ],
  'check-dropped': [
    {
      story: [...head, asked('p1'), { do: 'drop-check', check: 'k1', reason: 'the head is new' }],
      says: 'check k1 dropped, because the head is new',
    },
  ],
  judged: [
    {
      story: [...head, judged('fit-again', 'no marks', 'p2', 'p3')],
      says: 'judged: cam caps I1, I2 good to go back, because no marks',
    },
    {
      story: [...head, judged('machine', 'warped', 'p1')],
      says: 'judged: cylinder head to be machined, because warped',
    },
    {
      story: [...head, judged('clean', 'varnish', 'p1')],
      says: 'judged: cylinder head to be cleaned and looked at again, because varnish',
    },
    {
      story: [...head, together('bored as one', 'p1', 'p2', 'p3'), judged('replace', 'cracked', 'p1')],
      says: 'judged: cylinder head to be replaced, and with it cam caps I1, I2, because cracked',
    },
    {
      story: [...head, judgedSome(2, 'replace', 'p4')],
      says: 'judged: 2 of the pump studs to be replaced, because bent; 2 × pump studs from bag 1, to scrap',
    },
    {
      story: [...head, judgedSome(8, 'replace', 'p4')],
      says: 'judged: pump studs to be replaced, because bent',
    },
  ],
  bound: [
    {
      story: [...head, together('bored as one', 'p1', 'p2', 'p3')],
      says: 'belong together: cylinder head and cam caps I1, I2, because bored as one',
    },
    {
      story: [...head, together(undefined, 'p1', 'p2')],
      says: 'belong together: cylinder head and cam cap I1',
    },
  ],
  'trigger-set': [
    {
      story: [...head, list],
      says: 'h1 set, when metal in the oil: replace cylinder head; check cam cap I1, look for score',
    },
  ],
  'trigger-dropped': [
    {
      story: [...head, list, { do: 'drop-trigger', trigger: 'h1', reason: 'another engine' }],
      says: 'list h1 dropped, because another engine',
    },
  ],
  'found-out': [
    {
      story: [...head, list, found('metal in the oil', 'h1')],
      says: 'found: metal in the oil; replace cylinder head; check cam cap I1, look for score (k1)',
    },
    { story: [...head, found('a coin')], says: 'found: a coin' },
  ],
} satisfies Record<string, { story: Command[]; says: string }[]>
