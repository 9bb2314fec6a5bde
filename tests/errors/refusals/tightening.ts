import type { Cases } from '../case.ts'
import {
  angle,
  begin,
  eased,
  end,
  fitted,
  job,
  loosening,
  missed,
  off,
  stopped,
  take,
  tightening,
  torque,
  turn,
} from '../commands.ts'

const headOn = [job, begin('Cylinder head off'), off(4, 'head bolts', { size: 'M10x120' }), end]
const headFitted = [
  ...headOn,
  tightening('p1', torque, angle),
  { do: 'look', step: 1 } as const,
  fitted('p1'),
]
const torqued = [...headFitted, turn(), turn(), turn(), turn()]

export const tighteningCases = {
  'no-tightening': [
    {
      given: [job],
      when: turn(),
      says: ['No step is under way, so there is nothing to tighten.', '> "take N" takes a step up.'],
    },
    {
      given: [...headOn, { do: 'look', step: 1 }, take(1)],
      when: turn(),
      says: [
        'Step 1, Cylinder head, has no tightening that is open.',
        '> Set one, with the passes of the machine\'s manual: "tighten PIECE: ...".',
      ],
    },
  ],
  'tightening-begun': [
    {
      given: [...headFitted, turn()],
      when: tightening('p1', torque),
      says: [
        't1 (Cylinder head: head bolts) is begun, so its passes cannot be changed.',
        '> Back the fasteners off, "slacken t1 because ...", then set the passes.',
      ],
    },
  ],
  'order-wrong': [
    {
      given: headOn,
      when: { do: 'set-tightening', piece: 'p1', passes: [torque], order: ['1', '2', '2', '5'] },
      says: [
        'The order must name each fastener once.',
        '  Missing: 3, 4.',
        '  Not there: 5.',
        '  Twice: 2.',
        '> Say the order again.',
      ],
    },
  ],
  'no-such-fastener': [
    {
      given: headFitted,
      when: turn('9'),
      says: [
        't1 (Cylinder head: head bolts) has no fastener 9.',
        '  In order: 1, 2, 3, 4.',
        '> Next is fastener 1 in pass 1 of 2: 20 Nm: "turn 1".',
      ],
    },
  ],
  'turned-already': [
    {
      given: [...headFitted, turn()],
      when: turn('1'),
      says: [
        'Fastener 1 of t1 (Cylinder head: head bolts) is through pass 1 of 2: 20 Nm already.',
        '> Next is fastener 2 in pass 1 of 2: 20 Nm: "turn 2".',
      ],
    },
  ],
  'out-of-turn': [
    {
      given: [job, loosening('head bolts', ['2', '1'], eased)],
      when: turn('1'),
      says: [
        'Fastener 1 of l1 (head bolts) is not next in order, fastener 2 is.',
        '> Next is fastener 2 in pass 1 of 1: 90 deg: "turn 2".',
      ],
    },
    {
      given: [...headFitted, turn()],
      when: turn('4'),
      says: [
        'Fastener 4 of t1 (Cylinder head: head bolts) is not next in order, fastener 2 is.',
        '> Next is fastener 2 in pass 1 of 2: 20 Nm: "turn 2".',
      ],
    },
  ],
  'all-turned': [
    {
      given: [job, loosening('head bolts', ['2', '1'], eased), turn(), turn()],
      when: { do: 'tighten', tightening: 'l1' },
      says: ['Every pass of l1 (head bolts) is through.', '> Take them out: "off ...".'],
    },
    {
      given: [...torqued, turn(), turn(), turn(), turn()],
      when: { do: 'tighten', tightening: 't1' },
      says: [
        'Every pass of t1 (Cylinder head: head bolts) is through.',
        '> Leave it; to do it over, "slacken t1 because ...".',
      ],
    },
  ],
  'angle-suspect': [
    {
      given: [...torqued, turn(), stopped('phone')],
      when: turn(),
      says: [
        'Fastener 2 of t1 (Cylinder head: head bolts) may be turned already.',
        '  Work stopped in pass 2 of 2: 90 deg.',
        '  An angle is never turned twice on a fastener.',
        '> Look at its mark: "turned t1 yes because ..." or "turned t1 no because ..."; in doubt "slacken t1 because ...", as the machine\'s manual has it.',
      ],
    },
  ],
  'not-suspect': [
    {
      given: torqued,
      when: { do: 'settle-angle', tightening: 't1', turned: true, reason: 'seen' },
      says: [
        'No fastener of t1 (Cylinder head: head bolts) is in doubt.',
        '> Next is fastener 1 in pass 2 of 2: 90 deg: "turn 1".',
      ],
    },
  ],
  'passes-wrong': [
    {
      given: headOn,
      when: tightening('p1', torque, { kind: 'witness', typed: 'mark' }, angle),
      says: [
        'Witness marks are drawn when every pass is through, so they come last.',
        '> Say the passes again, with the mark at the end.',
      ],
    },
    {
      given: headOn,
      when: tightening('p1', eased, torque),
      says: [
        'A tightening does not begin with backing off.',
        "> Say the passes again as the machine's manual has them.",
      ],
    },
    {
      given: headOn,
      when: loosening('head bolts', ['1', '2'], eased, torque),
      says: [
        'Fasteners are eased by turning them back, and no torque belongs to that.',
        '> Say the steps as turns: "loosen head bolts 2x4: 90 deg, 90 deg, free".',
      ],
    },
  ],
  'fastener-faulty': [
    {
      given: [...torqued, turn(), missed('it keeps turning')],
      when: turn(),
      says: [
        'Fastener 2 of t1 (Cylinder head: head bolts) never came to its torque, so no other is turned on.',
        '  x1: it keeps turning.',
        '> Put it right, then "settle x1: ..."; what the others need after that, the machine\'s manual says.',
      ],
    },
    {
      given: [...torqued, missed('it gave way', '3')],
      when: missed('it gave way', '4'),
      says: [
        'Fastener 3 of t1 (Cylinder head: head bolts) never came to its torque, so no other is turned on.',
        '  x1: it gave way.',
        '> Put it right, then "settle x1: ..."; what the others need after that, the machine\'s manual says.',
      ],
    },
  ],
} satisfies Record<string, Cases>
