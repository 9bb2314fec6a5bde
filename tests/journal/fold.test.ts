import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { type Belongs, type Entry, type EntryBody, parseEntry } from '../../src/journal/entry.ts'
import { fold, foldOn, UnlawfulEntry } from '../../src/journal/fold.ts'
import { emptyState } from '../../src/journal/state.ts'
import { auditLedger } from '../../src/ledger/laws.ts'
import { balance } from '../../src/ledger/ledger.ts'
import {
  addStep,
  aidIn,
  angle,
  at,
  begin,
  clear,
  confirm,
  count,
  done,
  drain,
  endStrip,
  fill,
  firstStart,
  look,
  lose,
  mark,
  matchedOff,
  move,
  off,
  override,
  putOn,
  redo,
  reopen,
  replace,
  snug,
  stop,
  strip,
  tightening,
  torque,
  turn,
  turns,
  undo,
} from '../support/commands.ts'
import { given, openJob, record, stateText } from '../support/journal.ts'
import { numbered } from '../support/record.ts'

/** A job that goes through most of what can be written, with work taken back in the middle. */
const wholeJob: Command[] = [
  openJob,
  strip('valve cover off'),
  off(6, 'cover bolts'),
  off(1, 'gasket', { singleUse: true }),
  strip('cams out'),
  matchedOff(['I1', 'I2'], 'cap'),
  mark('arrow to the chain', 'p3'),
  aidIn('rag', 2),
  drain('coolant'),
  undo,
  redo,
  endStrip,
  lose('p1', 1),
  undo,
  { do: 'open-container', kind: 'tray', slots: 4 },
  count(1, ['p1', 6]),
  replace('p2', 1),
  move('p2', at('scrap')),
  tightening('p3', [snug, torque(10), angle(90)]),
  begin(2),
  putOn('p3', 'I1'),
  putOn('p4', 'I2'),
  ...turns(3),
  stop(),
  ...turns(4),
]

describe('one journal, one state', () => {
  const { entries, state } = record([
    ...wholeJob,
    confirm('m1'),
    fill('f1'),
    move('p5', at('toolbox')),
    done(2),
    look(1),
    putOn('p1'),
    putOn('p6'),
    done(1),
    clear,
    undo,
    redo,
    firstStart,
  ])

  test('folded whole, one by one, in two parts, or read back from its text', () => {
    const again = entries.map((entry) => parseEntry(JSON.parse(JSON.stringify(entry))))
    let oneByOne = emptyState()
    for (const [index, entry] of entries.entries()) {
      oneByOne = foldOn(oneByOne, entries.slice(0, index + 1), [entry])
    }
    const whole = stateText(fold(entries))
    expect(stateText(state)).toBe(whole)
    expect(stateText(oneByOne)).toBe(whole)
    expect(stateText(fold(again))).toBe(whole)
    for (const cut of entries.keys()) {
      const first = fold(entries.slice(0, cut))
      expect(stateText(foldOn(first, entries, entries.slice(cut)))).toBe(whole)
    }
  })

  test('no entry is changed by the fold', () => {
    const text = JSON.stringify(entries)
    fold(entries)
    expect(JSON.stringify(entries)).toBe(text)
  })
})

describe('undo and redo', () => {
  const bag = (state: { ledger: Parameters<typeof balance>[0] }) => balance(state.ledger, 'p1', 'c1')
  const sixOff = given(off(6, 'bolts'), endStrip)
  const takenOut = sixOff.and(
    move('p1', at('bench'), { count: 1 }),
    move('p1', at('bench'), { count: 2, from: 'c1' }),
  )

  test.each<[string, Command[], number]>([
    ['as it stands', [], 3],
    ['one back', [undo], 5],
    ['two back', [undo, undo], 6],
    ['two back, one forth', [undo, undo, redo], 5],
    ['two back, two forth', [undo, undo, redo, redo], 3],
    ['back and forth and back', [undo, redo, undo], 5],
    ['one back, another way', [undo, move('p1', at('bench'), { count: 4, from: 'c1' })], 1],
    [
      'one back, another way, back from there',
      [undo, move('p1', at('out'), { count: 4, from: 'c1' }), undo],
      5,
    ],
    ['and two back from there', [undo, move('p1', at('out'), { count: 4, from: 'c1' }), undo, undo], 6],
  ])('%s: %#', (_, commands, left) => {
    expect(bag(takenOut.and(...commands).state)).toBe(left)
  })

  test('a chain there and back again is where it began, whatever its length', () => {
    const { entries, state } = given(...wholeJob.slice(1))
    const count = state.inForce.length - 1
    const back = Array<Command>(count).fill(undo)
    const forth = Array<Command>(count).fill(redo)
    const there = record(back, entries)
    expect(there.state.ledger.accounts.size).toBe(0)
    given().when(undo).refuses('nothing-to-undo')
    const again = record(forth, there.entries)
    const but = { seq: 0, undone: [] }
    expect(stateText({ ...again.state, ...but })).toBe(stateText({ ...state, ...but }))
  })

  test.each<[string, Command[]]>([
    ['nothing was undone', []],
    ['all was redone', [undo, redo]],
    ['new work was done since', [undo, move('p1', at('out'), { count: 1, from: 'c1' })]],
    [
      'new work was done and taken back and done again, and the old work is not of that line',
      [undo, move('p1', at('out'), { count: 1, from: 'c1' }), undo, redo],
    ],
  ])('nothing to redo when %s', (_, commands) => {
    takenOut
      .and(...commands)
      .when(redo)
      .refuses('nothing-to-redo')
  })

  test('what was undone before new work is not listed again once the new work is taken back', () => {
    const job = takenOut.and(undo, move('p1', at('out'), { count: 1, from: 'c1' }), undo)
    expect(job.state.undone).toHaveLength(1)
  })

  test('a written entry is guarded against being taken back by one who has not seen it', () => {
    const { state } = takenOut
    takenOut.when({ do: 'undo', entry: 2 }).refuses('written-since', { entry: 2, last: state.seq })
    takenOut.when({ do: 'undo', entry: state.seq }).makes('undone', { entry: state.seq })
  })

  test('the clearance comes back when what ended it is taken back', () => {
    const cleared = sixOff.and(putOn('p1'), done(1), clear, reopen(1))
    expect(cleared.state.cleared).toBe(false)
    expect(cleared.and(undo).state.cleared).toBe(true)
  })
})

describe('the clearance', () => {
  const clearedJob = given(
    strip('cover off'),
    off(2, 'bolts'),
    endStrip,
    look(1),
    putOn('p1'),
    done(1),
    clear,
  )

  test.each<[string, Command[]]>([
    ['a piece is bought', [{ do: 'supply', piece: 'p1', count: 1, into: at('bench'), instead: false }]],
    ['a rag goes in', [aidIn('rag')]],
    ['something more comes off', [strip('bracket off')]],
    ['a step is reopened', [reopen(1)]],
    ['a check is added', [addStep('turn by hand')]],
    ['a mark is noted', [mark('dot up')]],
    ['a tightening is set', [tightening('p1', [snug])]],
    ['a count does not agree', [count(1, [null, 1])]],
  ])('falls when %s', (_, commands) => {
    expect(clearedJob.state.cleared).toBe(true)
    expect(clearedJob.and(...commands).state.cleared).toBe(false)
  })

  test.each<[string, Command[]]>([
    ['somebody notes something', [{ do: 'note', kind: 'note', text: 'cold start tomorrow' }]],
    ['work stops', [stop()]],
    ['an empty bag is opened or put on a shelf', [{ do: 'open-container', kind: 'bag' }]],
    ['a count agrees', [count(1, [null, 0])]],
    ['the machine is started', [firstStart]],
  ])('stands while %s', (_, commands) => {
    expect(clearedJob.and(...commands).state.cleared).toBe(true)
  })
})

describe('what is reopened', () => {
  const built = given(
    strip('cover off'),
    off(2, 'cover bolts'),
    strip('cams out'),
    matchedOff(['I1'], 'cap'),
    mark('arrow', 'p2'),
    drain('oil'),
    strip('pistons out'),
    off(2, 'rod bolts', { singleUse: true }),
    endStrip,
    { do: 'use-again', piece: 'p3', reason: 'measured' },
    tightening('p3', [torque(30)]),
    begin(3),
    putOn('p3'),
    ...turns(2),
    done(3),
    begin(2),
    putOn('p2', 'I1'),
    confirm('m1'),
    fill('f1'),
    done(2),
    look(1),
    putOn('p1'),
    done(1),
  )
  const on = (job: typeof built) =>
    (['p1', 'p2', 'p3'] as const).map((piece) => balance(job.state.ledger, piece, 'machine'))
  const stands = (job: typeof built) => [...job.state.steps.values()].map((step) => step.built)

  test.each<[string, number, number[], string[]]>([
    ['the cover alone', 1, [0, 1, 2], ['redo', 'done', 'done']],
    ['the cams, with the cover', 2, [0, 0, 2], ['redo', 'redo', 'done']],
    ['the pistons, with all that is on top', 3, [0, 0, 0], ['redo', 'redo', 'redo']],
  ])('%s', (_, step, pieces, standing) => {
    const job = built.and(reopen(step))
    expect(on(built)).toEqual([2, 1, 2])
    expect(on(job)).toEqual(pieces)
    expect(stands(job)).toEqual(standing)
    expect(balance(job.state.ledger, 'p1', 'bench')).toBe(2)
  })

  test('its marks, fluids and tightenings are owed again, and nobody else’s', () => {
    const cams = built.and(reopen(2)).state
    expect(cams.marks.get('m1')?.confirmed).toBe(false)
    expect(cams.fluids.get('f1')?.filledLitres).toBeNull()
    expect(cams.tightenings.get('t1')?.done.map((pass) => pass.size)).toEqual([2])
    const pistons = built.and(reopen(3)).state
    expect(pistons.tightenings.get('t1')?.done.map((pass) => pass.size)).toEqual([0])
  })

  test('single-use bolts that come off again are used, though once decided to be good', () => {
    expect(built.state.used.has('p3')).toBe(false)
    expect(built.and(reopen(2)).state.used.has('p3')).toBe(false)
    const job = built.and(reopen(3))
    expect(job.state.used.has('p3')).toBe(true)
    job.when(putOn('p3')).refuses('piece-used')
  })

  test('a failed check takes back the overrides of its own gates', () => {
    const check = given(addStep('turn by hand'), override('check 1'), {
      do: 'fail',
      step: 1,
      result: 'it binds',
      steps: [],
    })
    expect(check.state.overrides.size).toBe(0)
    check.when(clear).refuses('not-clear')
  })
})

describe('what is lost', () => {
  const lost = given(off(3, 'bolts'), endStrip, lose('p1', 1))
  const giveUp: Command = { do: 'accept-lost', piece: 'p1', reason: 'searched for an hour' }
  const found = move('p1', at('bench'), { count: 1, from: 'lost' })

  test.each<[string, Command[], boolean]>([
    ['is open', [], true],
    ['is given up by a decision', [giveUp], false],
    [
      'is given up, and others of its kind move about',
      [giveUp, move('p1', at('bench'), { count: 1, from: 'c1' })],
      false,
    ],
    ['and turned up: then another lost asks for a decision of its own', [giveUp, found, lose('p1', 1)], true],
    ['two given up, and one turned up', [lose('p1', 1), giveUp, found], false],
    ['two given up, one turned up, another lost', [lose('p1', 1), giveUp, found, lose('p1', 1)], true],
  ])('%s', (_, commands, open) => {
    const refusal = lost
      .and(...commands)
      .when(clear)
      .refuses('not-clear')
    const codes = refusal.code === 'not-clear' ? refusal.leftovers.map(({ code }) => code) : []
    expect(codes.includes('piece-lost')).toBe(open)
  })
})

describe('a record that breaks a law is not folded', () => {
  const { entries } = given(
    off(6, 'bolts'),
    matchedOff(['I1', 'I2'], 'cap'),
    tightening('p1', [snug]),
    endStrip,
  )
  const moves = (each: object) => ({
    type: 'moved',
    moves: [{ piece: 'p1', count: 1, from: 'c1', to: 'bench', ...each }],
  })

  test.each<[string, object]>([
    ['more than there is', moves({ count: 7 })],
    ['a piece nobody knows', moves({ piece: 'p77' })],
    ['an undo of the opening of the job', { type: 'undone', entry: 1 }],
    ['an undo of itself', { type: 'undone', entry: entries.length + 1 }],
    ['a redo of what is yet to be written', { type: 'redone', entry: 99 }],
    ['a second job', { type: 'opened', job: { no: 2, name: 'other', machine: '', units: 'metric' } }],
    [
      'a number too high to count on from',
      { type: 'marked', mark: { id: 'm9007199254740991', text: 'dot', step: 1 } },
    ],
    ['a cap at the wrong home', moves({ piece: 'p2', from: 'c2', to: 'machine', position: 'I2' })],
    ['a step nobody knows', { type: 'build-began', step: 77 }],
    ['a container nobody knows', { type: 'container-put', container: 77, inside: null }],
    ['a mark nobody knows', { type: 'confirmed', mark: 'm77' }],
    ['a fluid nobody knows', { type: 'filled', fluid: 'f77', litres: 1, typed: '1 l' }],
    ['a fault nobody knows', { type: 'settled', fault: 'x77', how: 'drilled' }],
    ['a tightening nobody knows', { type: 'tightened', tightening: 't77', pass: 0, fastener: '1' }],
    ['a pass nobody knows', { type: 'tightened', tightening: 't1', pass: 3, fastener: '1' }],
    ['a bolt nobody knows', { type: 'tightened', tightening: 't1', pass: 0, fastener: '7' }],
    ['a tightening of a piece nobody knows', tightened({ piece: 'p77' })],
    ['a tightening with a piece nobody knows', tightened({ with: ['p77'] })],
    ['a tightening in a step nobody knows', tightened({ step: 77 })],
    ['an order that names a bolt twice', tightened({ order: ['1', '2', '1'] })],
    ['a pass that leaves a bolt out', tightened({ passes: [{ kind: 'snug', typed: 'snug', order: ['1'] }] })],
    [
      'a pass over a bolt nobody knows',
      tightened({ passes: [{ kind: 'snug', typed: 'snug', order: ['1', '2', '9'] }] }),
    ],
    ['easing in a step nobody knows', eased({ step: 77 })],
    ['easing in an order that names a bolt twice', eased({ order: ['1', '1'] })],
    [
      'easing by a drawing with two bolts in one place',
      eased({ layout: { shape: 'row', places: places([1, 0], [1, 0]) } }),
    ],
    [
      'a drawing with two in one place',
      { type: 'laid-out', of: ['p1'], shape: 'row', places: places([1, 0], [1, 0]) },
    ],
    [
      'a drawing with a position twice',
      { type: 'laid-out', of: ['p1'], shape: 'row', places: [...places([1, 0]), ...places([2, 0])] },
    ],
    ['no torque at a bolt nobody knows', missed({ fastener: '77' })],
    ['no torque of a piece nobody knows', missed({ piece: 'p77' })],
    ['a reading in a step nobody knows', measuredIn(77)],
    ['an account opened again', { ...entries[1], n: undefined }],
    [
      'a container opened again',
      { type: 'container-opened', container: { no: 1, kind: 'bag', inside: null } },
    ],
    ['a container that stands in itself', { type: 'container-put', container: 1, inside: 1 }],
    [
      'a container opened in itself',
      { type: 'container-opened', container: { no: 9, kind: 'bag', inside: 9 } },
    ],
    [
      'a container opened in one nobody knows',
      { type: 'container-opened', container: { no: 9, kind: 'bag', inside: 77 } },
    ],
    ['labels dealt again', { type: 'labels-dealt', from: 2, to: 9 }],
    ['a label void that nobody dealt', { type: 'labels-voided', labels: [77], reason: 'torn' }],
    ['labels dealt backwards', { type: 'labels-dealt', from: 50, to: 49 }],
    ['labels dealt that stand for steps', { type: 'labels-dealt', from: 50, to: 9000 }],
    ['a picture of a container nobody knows', added(['g9', { container: 77 }])],
    ['a picture of a step nobody knows', added(['g9', { step: 77 }])],
    ['two pictures of one number', added(['g9', null], ['g9', null])],
    ['a picture nobody knows', { type: 'picture-sorted', picture: 'g77', belongs: 'none' }],
  ])('%s', (_, body) => {
    const entry = { ...numbered(body as EntryBody, entries.length + 1), n: entries.length + 1 }
    expect(() => fold([...entries, entry])).toThrow(UnlawfulEntry)
    expect(() => fold([...entries, entry])).toThrow(`entry ${entry.n}`)
  })

  test('one number changed anywhere: refused by its schema or by a law, or the ledger is whole', () => {
    const sound = record(wholeJob).entries
    const outcomes = { refused: 0, whole: 0 }
    fc.assert(
      fc.property(
        fc.nat(sound.length - 1),
        fc.nat(40),
        fc.integer({ min: -3, max: 12 }),
        (pick, at, value) => {
          const damaged = sound.map((entry, index) => (index === pick ? changed(entry, at, value) : entry))
          try {
            const state = fold(damaged.map((entry) => parseEntry(JSON.parse(JSON.stringify(entry)))))
            expect(auditLedger(state.ledger)).toEqual([])
            outcomes.whole += 1
          } catch (error) {
            if ((error as Error).name === 'AssertionError') throw error
            outcomes.refused += 1
          }
        },
      ),
      { numRuns: 400 },
    )
    expect(outcomes.refused).toBeGreaterThan(50)
    expect(outcomes.whole).toBeGreaterThan(50)
  })
})

test('containers never stand in each other in a circle, whatever the record says', () => {
  const { entries } = given(...[1, 2, 3].map(() => ({ do: 'open-container', kind: 'bin' }) as const))
  const put = (...pairs: [container: number, inside: number][]) => [
    ...entries,
    ...pairs.map(([container, inside], index) => {
      const n = entries.length + 1 + index
      return { ...numbered({ type: 'container-put', container, inside }, n), n }
    }),
  ]
  expect(fold(put([1, 2], [2, 3])).containers.get(2)?.inside).toBe(3)
  expect(() => fold(put([1, 2], [2, 3], [3, 1]))).toThrow(`entry ${entries.length + 3}`)
  expect(() => fold(put([1, 77]))).toThrow(UnlawfulEntry)
})

test('a label that is void is never opened, whatever the record says', () => {
  const { entries } = given(
    { do: 'deal-labels', count: 3 },
    { do: 'void-labels', from: 1, to: 3, reason: 'sheet lost' },
  )
  const opened: EntryBody = { type: 'container-opened', container: { no: 2, kind: 'bag', inside: null } }
  expect(() => fold([...entries, numbered(opened, 4)])).toThrow('label 2 is void')
})

test('a container of a record from before steps had codes keeps its number', () => {
  const { entries } = given(off(6, 'bolts'))
  const opened: EntryBody = { type: 'container-opened', container: { no: 9004, kind: 'bag', inside: null } }
  const state = fold([...entries, numbered(opened, 3)])
  expect(state.containers.get(9004)?.kind).toBe('bag')
  expect(state.dealt.container).toBe(9004)
})

test('turning goes on where it stood after a stop and a new start of the program', () => {
  const job = given(
    off(3, 'bolts'),
    endStrip,
    tightening('p1', [torque(20), angle(90)]),
    putOn('p1'),
    ...turns(2),
    stop(),
  )
  expect(
    fold(job.entries)
      .tightenings.get('t1')
      ?.done.map((pass) => pass.size),
  ).toEqual([0, 0])
  const on = job.and(...turns(3), turn(), stop(true))
  expect(on.state.tightenings.get('t1')?.suspect).toEqual({ pass: 1, fastener: '2' })
})

const grid = { name: 'bolts', step: 1, order: ['1', '2'] }

/** A tightening as no program of ours would set it. */
function tightened(each: object) {
  const passes = [{ kind: 'torque', newtonMetres: 10, typed: '10 Nm' }]
  return { type: 'tightening-set', tightening: { id: 't2', ...grid, piece: 'p1', passes, ...each } }
}

function eased(each: object) {
  const passes = [{ kind: 'back-off', typed: 'free' }]
  return { type: 'loosening-set', loosening: { id: 'l1', ...grid, passes, ...each } }
}

function missed({ fastener = '1', piece = 'p1' }) {
  const fault = { id: 'x9', kind: 'no-torque', piece, count: 1 }
  return { type: 'torque-missed', tightening: 't1', fastener, fault, says: 'it turns on' }
}

function measuredIn(step: number) {
  const measurement = { kind: 'gap', readings: [{ mm: 0.1, typed: '0.1' }] }
  return { type: 'measured', measure: { id: 'q1', name: 'gap', step, measurement } }
}

/** Positions 1, 2 and so on. */
function places(...spots: [number, number][]) {
  return spots.map(([x, y], index) => ({ position: `${index + 1}`, x, y }))
}

/** Pictures enter the record, each with a number and what it shows. */
function added(...pictures: ['g9', Belongs | null][]): EntryBody {
  const facts = (id: 'g9', belongs: Belongs | null, index: number) => ({
    id,
    file: `20300101-08000${index}.jpg`,
    sha256: String(index).repeat(64),
    taken: null,
    belongs,
  })
  return {
    type: 'pictures-added',
    pictures: pictures.map(([id, belongs], index) => facts(id, belongs, index)),
  }
}

/** The entry with one of its numbers changed, below its header. */
function changed(entry: Entry, at: number, value: number): Entry {
  const spots: [Record<string, unknown>, string][] = []
  const copy = JSON.parse(JSON.stringify(entry)) as Record<string, unknown>
  const walk = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return
    for (const [key, inside] of Object.entries(node)) {
      if (typeof inside === 'number' && !(node === copy && ['v', 'n'].includes(key)))
        spots.push([node as Record<string, unknown>, key])
      walk(inside)
    }
  }
  walk(copy)
  const spot = spots[at % (spots.length || 1)]
  if (spot) spot[0][spot[1]] = value
  return copy as unknown as Entry
}

test('a bag opened before its step stays in hand while it is empty; a filled one belongs to the step before', () => {
  const opened: Command = { do: 'open-container', kind: 'bag' }
  expect(given(opened, strip('valve cover off')).state.hand).toBe(1)
  expect(given(strip('valve cover off'), off(6, 'cover bolts'), strip('cams out')).state.hand).toBeNull()
})
