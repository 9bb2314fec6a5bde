import type { Cases } from '../case.ts'
import { begin, into, job, labels, off, open, set, voided } from '../commands.ts'

const torn = 'torn by the wire brush'

export const containerCases = {
  'container-void': [
    {
      given: [job, open('bag'), { do: 'void-container', container: 1, reason: torn }],
      when: off(8, 'bolts', {}, into(1)),
      says: ['The label of bag 1 is void: torn by the wire brush.', '> Use another, or "bag" opens one.'],
    },
    {
      given: [
        job,
        open('bag'),
        open('bin'),
        { do: 'void-container', container: 1, insteadOf: 2, reason: torn },
      ],
      when: off(8, 'bolts', {}, into(1)),
      says: ['The label of bag 1 is void: torn by the wire brush.', '> Use bin 2, which took its place.'],
    },
    {
      given: [job, labels(3), { do: 'void-container', container: 2, reason: torn }],
      when: off(8, 'bolts', {}, into(2)),
      says: ['Label 2 is void: torn by the wire brush.', '> Use another, or "bag" opens one.'],
    },
    {
      given: [job, labels(3), voided(1, 3)],
      when: open('bag', undefined, undefined, 3),
      says: ['Label 3 is void: the sheet is lost.', '> Use another, or "bag" opens one.'],
    },
  ],
  'slot-taken': [
    {
      given: [job, open('tray', 4), set('cam caps', ['I1', 'I2'], into(1))],
      when: off(1, 'cam cap dowel', {}, into(1, '2')),
      says: ['Tray 1, slot 2 holds cam cap I2.', '> Free: 3, 4.'],
    },
    {
      given: [job, open('tray', 2), set('cam caps', ['I1', 'I2'], into(1))],
      when: off(1, 'cam cap dowel', {}, into(1, '2')),
      says: ['Tray 1, slot 2 holds cam cap I2.', '> No slot is free: use another tray.'],
    },
  ],
  'no-such-slot': [
    {
      given: [job, open('tray', 4)],
      when: off(1, 'cam cap dowel', {}, into(1, '5')),
      says: ['Tray 1 has slots 1 to 4, there is no slot 5.', '> Free: 1, 2, 3, 4.'],
    },
    {
      given: [job, open('bag')],
      when: off(1, 'cam cap dowel', {}, into(1, '5')),
      says: ['Bag 1 has no slots, so there is no slot 5.', '> Leave the slot out.'],
    },
  ],
  'slots-short': [
    {
      given: [job, open('tray', 4)],
      when: set('cam caps', ['I1', 'I2', 'I3', 'I4', 'I5'], into(1)),
      says: [
        'Tray 1 has 4 free slots, 5 wanted: 1 short.',
        '> Use a tray with 5 free slots, or put them away in smaller lots.',
      ],
    },
    {
      given: [job],
      when: set('cam caps', ['I1', 'I2'], { kind: 'new', container: 'tray', slots: 1 }),
      says: [
        'The new tray has 1 free slot, 2 wanted: 1 short.',
        '> Use a tray with 2 free slots, or put them away in smaller lots.',
      ],
    },
  ],
  'inside-itself': [
    {
      given: [job, open('bin'), open('bag', undefined, 1)],
      when: { do: 'put-container', container: 1, inside: 2 },
      says: [
        'Bin 1 cannot go into bag 2: that one is inside it (bag 2 in bin 1).',
        '> Take bag 2 out of it first.',
      ],
    },
    {
      given: [job, open('bin')],
      when: { do: 'put-container', container: 1, inside: 1 },
      says: ['Bin 1 cannot go into itself.', '> Say what else it goes into.'],
    },
  ],
  'not-empty': [
    {
      given: [job, off(8, 'cover bolts', { size: 'M6x25 hex 10' })],
      when: { do: 'void-container', container: 1, reason: torn },
      says: [
        'Bag 1 still holds 8 pieces, so its label cannot be made void.',
        '  8 × cover bolts M6x25 hex 10 in bag 1: "move p1 to PLACE".',
        '> Move what it holds first.',
      ],
    },
  ],
  'numbers-used-up': [
    {
      given: [job],
      and: { type: 'container-opened', container: { no: 9999, kind: 'bag', inside: null } },
      when: open('bag'),
      says: [
        'Every container number of this job up to 8999 is dealt, and none is dealt twice.',
        '> Use a container that is empty, or a label that is unused.',
      ],
    },
    {
      given: [job],
      and: { type: 'labels-dealt', from: 1, to: 8990 },
      when: labels(24),
      says: ['Only 9 container numbers of this job up to 8999 are left.', '> Ask for 9 at most.'],
    },
    {
      given: [job],
      and: { type: 'strip-began', step: { no: 9999, title: 'Seat off', after: [], hides: false } },
      when: begin('Cover off'),
      says: [
        'Every step number of this job up to 9999 is dealt, and none is dealt twice.',
        '> Go on in a step that is there.',
      ],
    },
  ],
  'too-many-labels': [
    {
      given: [job],
      when: labels(1001),
      says: ['1001 labels cannot be dealt at once.', '> Ask for 1 to 1000.'],
    },
  ],
  'label-unused': [
    {
      given: [job, labels(24), open('bin')],
      when: { do: 'put-container', container: 14, inside: 25 },
      says: [
        'Label 14 is unused: no container has it yet.',
        '> Put something into it first, or open it: "bag label 14".',
      ],
    },
    {
      given: [job, labels(24), off(4, 'bolts')],
      when: { do: 'count', container: 14, counts: [{ piece: 'p1', counted: 4 }] },
      says: [
        'Label 14 is unused: no container has it yet.',
        '> Put something into it first, or open it: "bag label 14".',
      ],
    },
  ],
  'label-in-use': [
    {
      given: [job, labels(24), off(4, 'bolts', {}, into(14))],
      when: open('tray', 12, undefined, 14),
      says: ['Label 14 is in use: it is bag 14.', '> Use another; "scan 14" shows what is in it.'],
    },
  ],
  'no-such-label': [
    {
      given: [job],
      when: open('bag', undefined, undefined, 14),
      says: [
        'There is no unused label 14: that number is not on a sheet of labels.',
        '> "bag" opens one with the next number.',
      ],
    },
    {
      given: [job, labels(3), voided(1, 1)],
      when: open('bag', undefined, undefined, 14),
      says: [
        'There is no unused label 14: that number is not on a sheet of labels.',
        '> The first unused one is 2; "bag" opens one with the next number.',
      ],
    },
  ],
  'slots-not-said': [
    {
      given: [job, labels(24)],
      when: off(1, 'cam cap dowel', {}, into(14, '5')),
      says: ['Label 14 is unused, so it has no slots yet.', '> Say how many: "tray 12 slots label 14".'],
    },
  ],
  'no-unused-labels': [
    {
      given: [job, labels(3), voided(1, 3)],
      when: voided(1, 3),
      says: [
        'None of the labels 1 to 3 is unused.',
        '> Those that containers have are made void one by one, once they are empty.',
      ],
    },
    {
      given: [job, open('bag')],
      when: voided(1, 1),
      says: [
        'Label 1 is not an unused one.',
        '> Those that containers have are made void one by one, once they are empty.',
      ],
    },
  ],
} satisfies Record<string, Cases>
