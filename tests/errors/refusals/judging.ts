import type { Cases } from '../case.ts'
import { begin, end, fitted, job, off, set, take } from '../commands.ts'
import { asked, flatness, judged, judgedSome, passed, together } from '../judging-commands.ts'

const head = [job, begin('Engine off'), off(1, 'cylinder head', { kind: 'part' })]
const studs = [job, begin('Pump off'), off(8, 'pump studs'), off(1, 'oil pump', { kind: 'part' })]

export const judgingCases = {
  'check-done': [
    {
      given: [...head, asked('p1', 'look', 'cracks'), passed(['k1'])],
      when: passed(['k1']),
      says: [
        'Check k1, look for cracks, is answered already.',
        '> "checks" shows what is still to be checked.',
      ],
    },
    {
      given: [...head, asked('p1', 'look', 'cracks'), passed(['k1'])],
      when: { do: 'drop-check', check: 'k1', reason: 'new' },
      says: [
        'Check k1, look for cracks, is answered already.',
        '> "checks" shows what is still to be checked.',
      ],
    },
  ],
  'check-unmeasured': [
    {
      given: [...head, asked('p1', 'measure', 'flatness', 'bores')],
      when: passed(['k1']),
      says: [
        'Flatness and bores of cylinder head: not measured since k1 was asked.',
        '> "measure flatness of p1: ..." with what was read, then "ok k1".',
      ],
    },
    {
      given: [...head, asked('p1', 'measure')],
      when: passed(['k1']),
      says: [
        'Cylinder head was not measured since k1 was asked.',
        '> "measure size of p1: ..." with what was read, then "ok k1".',
      ],
    },
    // It was measured before anybody asked.
    {
      given: [...head, flatness('p1', 0.01, 0.02), asked('p1', 'measure', 'flatness')],
      when: passed(['k1']),
      says: [
        'Flatness of cylinder head: not measured since k1 was asked.',
        '> "measure flatness of p1: ..." with what was read, then "ok k1".',
      ],
    },
  ],
  'check-not-in': [
    {
      given: [...head, asked('p1', 'measure', 'flatness'), flatness('p1', 0.02, 0.08)],
      when: passed(['k1'], 'looks good'),
      says: [
        'Cylinder head is out of its limits, so k1 is not passed by a word.',
        '  q1 flatness of p1: 0.08 mm, OUT: 0.03 mm over the limit of 0.05 mm.',
        '> "judge p1 replace because ..." or "judge p1 machine because ..."; if it may stay, "judge p1 fit again because ...".',
      ],
    },
    {
      given: [...head, asked('p1', 'measure', 'flatness'), flatness('p1', 0.02, 0.05)],
      when: passed(['k1']),
      says: [
        'Cylinder head is too close to its limit to call, so k1 asks for your reason.',
        '  q1 flatness of p1: 0.05 mm, too close to call: 0.05 mm to 0.06 mm at a limit of 0.05 mm, it is read as the limit itself.',
        '> Measure again with a finer instrument, or "ok k1: ..." with why it is good.',
      ],
    },
  ],
  'judge-part': [
    {
      given: studs,
      when: judgedSome(2, 'machine', 'p1'),
      says: [
        '2 of 8 pump studs cannot be told from the rest, so no verdict but to replace them is for some alone: to be machined.',
        '> For all of it "judge p1 machine because ...".',
      ],
    },
    {
      given: studs,
      when: judgedSome(2, 'replace', 'p2'),
      says: ['Oil pump is one piece, not 2.', '> For all of it "judge p2 replace because ...".'],
    },
  ],
  'nothing-to-bind': [
    {
      given: head,
      when: together('bored as one', 'p1', 'p1'),
      says: [
        'Cylinder head alone belongs together with nothing.',
        '> Name what belongs with it as well: "together p1, PIECE because ...".',
      ],
    },
  ],
  'not-accepted': [
    {
      given: [
        job,
        begin('Caps off'),
        set('cam caps', ['I1', 'I2']),
        end,
        take(1),
        asked('p1', 'look', 'score'),
        judged('clean', 'varnish', 'p1'),
      ],
      when: fitted({ piece: 'p1', position: 'I1' }),
      says: [
        'Cam cap I1 is not accepted, so it does not go back yet.',
        '  Cam cap I1 is to be cleaned and looked at again, because varnish: "judge p1 fit again because ..." when that is done.',
        '  Cam cap I1 not checked (k1, look for score): "ok k1" if good, else "judge p1 replace because ...".',
        '> Lift these reasons first, or leave it off the machine.',
      ],
    },
  ],
} satisfies Record<string, Cases>
