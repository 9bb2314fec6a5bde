import type { Cases } from '../case.ts'
import {
  added,
  afterStart,
  begin,
  done,
  drained,
  end,
  filled,
  fitted,
  hand,
  job,
  look,
  marked,
  merged,
  move,
  off,
  open,
  override,
  picture,
  pictures,
  put,
  take,
} from '../commands.ts'

const empty = [job, added('Wash it'), done(1), { do: 'clear' } as const]
const running = [...empty, { do: 'first-start' } as const]

export const jobCases = {
  'no-job': [
    {
      given: [],
      when: begin('Valve cover off'),
      says: ['No job is open, so nothing can be recorded.', '> Open a job or start a new one first.'],
    },
  ],
  'job-open-already': [
    {
      given: [job],
      when: job,
      says: [
        'This job is open already: Blue twin top end.',
        '> Go on with it, or start the other as a job of its own.',
      ],
    },
  ],
  'job-closed': [
    {
      given: [...running, { do: 'close-job' }],
      when: begin('Valve cover off'),
      says: [
        'This job is closed: Blue twin top end.',
        '> Notes can still be added; to open it again, "undo" until the closing is taken back.',
      ],
    },
  ],
  unknown: [
    {
      given: [job, merged('cleared', 'first start')],
      when: { do: 'settle-left-out', leftOut: 'w3', how: 'it was not' },
      says: [
        'There is no left-out entry w3 in this job.',
        '  Known: w1, w2.',
        '> "left" shows what is to be settled.',
      ],
    },
    {
      given: [job],
      when: { do: 'settle-left-out', leftOut: 'w1', how: 'it was not' },
      says: [
        'There is no left-out entry w1 in this job.',
        '> There is none yet: what does not fit of a copy is left out when the two are merged, "merge PATH".',
      ],
    },
    {
      given: [job, begin('Valve cover off')],
      when: take(9),
      says: ['There is no step 9 in this job.', '  Known: 1.', '> "back" shows every step.'],
    },
    {
      given: [job, open('bag'), open('bag')],
      when: { do: 'put-container', container: 9, inside: null },
      says: ['There is no container 9 in this job.', '  Known: 1, 2.', '> "where" shows every container.'],
    },
    {
      given: [job],
      when: move('p9', hand),
      says: ['There is no piece p9 in this job.', '> There is none yet: "off ..." records what comes off.'],
    },
    {
      given: [job, marked('arrow to the chain')],
      when: { do: 'confirm', mark: 'm9' },
      says: ['There is no mark m9 in this job.', '  Known: m1.', '> Say one of these.'],
    },
    {
      given: [job, pictures(picture('lid.jpg', 1))],
      when: { do: 'sort-picture', picture: 'g9', belongs: 'none' },
      says: ['There is no picture g9 in this job.', '  Known: g1.', '> "photos" shows every picture.'],
    },
    {
      given: [job],
      when: { do: 'sort-picture', picture: 'g9', belongs: 'none' },
      says: [
        'There is no picture g9 in this job.',
        '> There is none yet: pictures come in from a folder, "photos import FOLDER".',
      ],
    },
    {
      given: [job, drained('coolant', 2.1)],
      when: filled('f9', 2.1),
      says: ['There is no fluid f9 in this job.', '  Known: f1.', '> Say one of these.'],
    },
    {
      given: [job],
      when: { do: 'slacken', tightening: 't1', reason: 'one stage missed' },
      says: [
        'There is no tightening t1 in this job.',
        '> There is none yet: "tighten PIECE: ..." sets one, with the passes of the machine\'s manual.',
      ],
    },
    {
      given: [job],
      when: { do: 'settle-fault', fault: 'x1', how: 'extracted' },
      says: ['There is no fault x1 in this job.', '> There is none yet: faults are noted as parts come off.'],
    },
    {
      given: [job],
      when: { do: 'explain', difference: 'd1', how: { kind: 'missing' }, reason: 'not found' },
      says: [
        'There is no difference d1 in this job.',
        '> There is none yet: "count BAG = ..." compares what is there with the record.',
      ],
    },
  ],
  'count-wrong': [
    {
      given: [job],
      when: off(2.5, 'bolts'),
      says: [
        '2.5 cannot be right here.',
        '  Pieces are whole numbers up to 9999, and no more come off than belong there; litres are more than 0.',
        '> Count once more and say the number.',
      ],
    },
    {
      given: [job],
      when: off(9, 'bolts', { should: 8 }),
      says: [
        '9 cannot be right here.',
        '  Pieces are whole numbers up to 9999, and no more come off than belong there; litres are more than 0.',
        '> Count once more and say the number.',
      ],
    },
    {
      given: [job],
      when: drained('coolant', 0),
      says: [
        '0 cannot be right here.',
        '  Pieces are whole numbers up to 9999, and no more come off than belong there; litres are more than 0.',
        '> Count once more and say the number.',
      ],
    },
  ],
  'text-missing': [
    {
      given: [job],
      when: begin(' '),
      says: ['The title is missing.', '> Say what the work is: "begin TITLE".'],
    },
    { given: [job], when: off(8, ''), says: ['The name is missing.', '> Say what it is called.'] },
    {
      given: [job, off(8, 'bolts')],
      when: { do: 'leave-off', piece: 'p1', reason: '' },
      says: ['The reason is missing.', '> Say why, with the word because.'],
    },
    { given: [job], when: marked(''), says: ['The text is missing.', '> Say what is to be written down.'] },
    {
      given: [job, added('Turn by hand')],
      when: { do: 'fail', step: 1, result: '', steps: [] },
      says: ['The result is missing.', '> Say what was found or measured: "done N: ..." or "fail N: ...".'],
    },
  ],
  already: [
    {
      given: [job, merged('cleared'), { do: 'settle-left-out', leftOut: 'w1', how: 'it was not' }],
      when: { do: 'settle-left-out', leftOut: 'w1', how: 'it was' },
      says: ['w1 is settled already: it was not.', '> Nothing more is owed there.'],
    },
    {
      given: [job, begin('Seat off'), marked('dot up'), end, take(1), { do: 'confirm', mark: 'm1' }],
      when: { do: 'confirm', mark: 'm1' },
      says: ['Mark m1 (dot up) is confirmed already.', '> Go on with the next.'],
    },
    {
      given: [job, begin('Seat off'), drained('oil', 1.8), end, take(1), filled('f1', 1.9)],
      when: filled('f1', 1.9),
      says: [
        'Oil (1.8 L drained) is filled already.',
        '> Go on with the next; a wrong amount is taken back with "undo" if it was the last entry.',
      ],
    },
    {
      given: [
        job,
        off(1, 'stud', { broken: { kind: 'snapped', count: 1 } }),
        { do: 'settle-fault', fault: 'x1', how: 'extracted' },
      ],
      when: { do: 'settle-fault', fault: 'x1', how: 'drilled out' },
      says: ['x1 is settled already: extracted.', '> Nothing more is owed there.'],
    },
    {
      given: empty,
      when: { do: 'clear' },
      says: [
        'The first start is cleared already, and nothing was touched since.',
        '> When the machine has run: "started".',
      ],
    },
    {
      given: running,
      when: { do: 'first-start' },
      says: ['The first start is recorded already.', '> "close" when the checks after it are done.'],
    },
    {
      given: [job, begin('Valve cover off'), off(8, 'bolts'), end, look(1)],
      when: look(1),
      says: [
        'The last look before step 1, Valve cover, is taken already.',
        '> Go on; when something beneath is touched, it is due again.',
      ],
    },
    {
      given: [job, { do: 'archive', archived: true }],
      when: { do: 'archive', archived: true },
      says: ['Blue twin top end is in the archive already.', '> Nothing needs doing.'],
    },
    {
      given: [job],
      when: { do: 'archive', archived: false },
      says: ['Blue twin top end is not in the archive.', '> Nothing needs doing.'],
    },
    {
      given: [job],
      unreachable: 'a void container is refused as container-void before that',
      refusal: { code: 'already', what: 'voided', id: 'bag 1' },
      says: ['Bag 1 is void already.', '> Use another container.'],
    },
  ],
  'not-clear': [
    {
      given: [
        job,
        begin('Seat off'),
        off(2, 'seat bolts'),
        begin('Pump off'),
        off(3, 'pump bolts', { kind: 'part', positions: ['1', '2', '3'], size: 'M6x35' }),
        put('rag', 'pump bore'),
        end,
        fitted({ piece: 'p2', position: '1' }),
        fitted({ piece: 'p3', position: '2' }),
        override('finish 2'),
        done(),
        fitted('p1'),
        done(),
      ],
      when: { do: 'clear' },
      says: [
        'Not cleared: 2 things are not as they must be at the first start.',
        '  Pump bolt M6x35 position 3 in bag 2 (017 0002 21): belongs to Pump / position 3, step 2. To reach it, undo: step 1, then step 2.',
        '  1 × rag at pump bore is still in the machine, put in during step 2, Pump. To reach it, undo: step 1, then step 2.',
        '> Begin with the first: "reopen 2 because ..." opens steps 1 and 2, then "fit p4 at 3".',
      ],
    },
  ],
  'nothing-recorded': [
    {
      given: [job],
      when: { do: 'clear' },
      says: [
        'Not cleared: nothing is recorded in this job yet, Blue twin top end.',
        '> Look whether this is the job that you mean; "off ..." records what comes off.',
      ],
    },
  ],
  'not-cleared': [
    {
      given: [job],
      when: { do: 'first-start' },
      says: [
        'The first start is not cleared, or something was touched since.',
        '> "clear" goes through everything once more, "left" shows what is in the way.',
      ],
    },
  ],
  'not-started': [
    {
      given: [job],
      when: { do: 'close-job' },
      says: [
        'The machine has not had its first start, so the job cannot be closed.',
        '> "clear", then "started".',
      ],
    },
  ],
  'checks-open': [
    {
      given: [
        job,
        afterStart('Look for leaks', 'after the first warm-up'),
        { do: 'clear' },
        { do: 'first-start' },
      ],
      when: { do: 'close-job' },
      says: [
        '1 check after the first start is open.',
        '  Step 1, Look for leaks, due after the first warm-up.',
        '> "done 1" when it is done, or hand over what is open in words: "close because ...".',
      ],
    },
  ],
  'nothing-to-undo': [
    {
      given: [job],
      when: { do: 'undo' },
      says: ['Nothing is left to take back.', '> The opening of the job itself is never taken back.'],
    },
  ],
  'nothing-to-redo': [
    {
      given: [job, begin('Seat off')],
      when: { do: 'redo' },
      says: ['Nothing was taken back since the last new entry.', '> Say again what is to be recorded.'],
    },
  ],
  'merge-stays': [
    {
      given: [job, begin('Seat off'), merged()],
      when: { do: 'undo' },
      says: [
        'Entry 3 merged a copy of the job into this record, and a merge is not taken back.',
        '> "log" shows what came with it; put right with new lines what is not so.',
      ],
    },
  ],
  'written-since': [
    {
      given: [job, begin('Seat off')],
      when: { do: 'undo', entry: 9 },
      says: ['There is no entry 9, the last is 2.', '> "undo" takes that back.'],
    },
    {
      given: [job, begin('Seat off'), off(8, 'bolts')],
      when: { do: 'undo', entry: 2 },
      says: [
        'Entry 2 is not the last any more: entry 3 was written since.',
        '> Look at entry 3 first; "undo" takes back the last one.',
      ],
    },
  ],
} satisfies Record<string, Cases>
