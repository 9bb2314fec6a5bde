import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import type { Entry, EntryBody } from '../../../src/journal/entry.ts'
import { fold } from '../../../src/journal/fold.ts'
import { type MergePlan, planMerge } from '../../../src/journal/merge/plan-merge.ts'
import { balance } from '../../../src/ledger/ledger.ts'
import {
  addStep,
  aidIn,
  angle,
  at,
  bag,
  begin,
  clear,
  count,
  done,
  endStrip,
  firstStart,
  mark,
  matchedOff,
  move,
  newBag,
  off,
  putOn,
  redo,
  reopen,
  replace,
  slot,
  stop,
  strip,
  tightening,
  torque,
  turn,
  undo,
} from '../../support/commands.ts'
import { numbered, openJob } from '../../support/record.ts'
import { Pen } from './parted-job.ts'

const job = written([], 'c', openJob, strip('plate off'), off(6, 'bolts'), off(2, 'clips'), endStrip)

describe('what fits', () => {
  test('a copy that only went further is taken over as it is', () => {
    const further = written(job, 'b', strip('sump off'), off(4, 'nuts'), stop(true))
    expect(planOf(job, further)).toEqual({
      fits: further.slice(job.length),
      renumbered: [],
      conflicts: [],
      onlyHere: 0,
    })
  })

  test('what is new on both ways gets other numbers, and a bag that has one is named', () => {
    const ours = written(job, 'a', strip('sump off'), off(4, 'nuts'))
    const theirs = written(job, 'b', strip('pump off'), off(3, 'studs'), off(1, 'seal', { into: bag(3) }))
    const { fits, renumbered, conflicts, onlyHere } = planOf(ours, theirs)
    expect({ conflicts, onlyHere, renumbered }).toEqual({
      conflicts: [],
      onlyHere: 2,
      renumbered: [{ there: 3, here: 4 }],
    })
    expect(fits).toMatchObject([
      { n: 8, id: 'b6', type: 'strip-began', step: { no: 3, title: 'pump off', after: [1] } },
      {
        n: 9,
        id: 'b7',
        step: 3,
        opened: { no: 4 },
        pieces: [{ id: 'p5', name: 'studs' }],
        moves: [{ piece: 'p5', to: 'c4' }],
      },
      { n: 10, id: 'b8', pieces: [{ id: 'p4' }], moves: [{ piece: 'p4', to: 'c4' }] },
    ])
  })

  test('a bag keeps its number where that is free, so that one bag is written on anew and not three', () => {
    const ours = written(job, 'a', off(1, 'nut', { into: newBag }))
    const theirs = written(job, 'b', off(1, 'stud'), off(1, 'seal'), off(1, 'pin'))
    expect(planOf(ours, theirs).renumbered).toEqual([{ there: 3, here: 6 }])
  })

  test('both go on in the same bag and the same step', () => {
    const open = written([], 'c', openJob, strip('plate off'), off(6, 'bolts'))
    const ours = written(open, 'a', off(1, 'nut', { into: bag(1) }))
    const theirs = written(open, 'b', off(1, 'stud', { into: bag(1) }))
    expect(planOf(ours, theirs)).toMatchObject({ fits: [{ id: 'b4' }], conflicts: [], renumbered: [] })
  })

  test('what was taken back there does not stand in the way of what is here', () => {
    const ours = written(job, 'a', move('p1', at('bench')))
    const theirs = written(job, 'b', move('p1', at('spare')), undo, mark('dot', 'p2'))
    const { fits, conflicts } = planOf(ours, theirs)
    expect(conflicts).toEqual([])
    expect(fits).toMatchObject([{ type: 'moved' }, { type: 'undone', entry: 7 }, { type: 'marked' }])
    expect(where([...ours, ...fits], 'p1')).toEqual(['6 bench'])
  })

  test('taking back what both had is taken over under its number here', () => {
    const ours = written(job, 'a', mark('dot', 'p1'))
    const theirs = written(job, 'b', undo, undo, redo, undo)
    expect(planOf(ours, theirs)).toMatchObject({
      conflicts: [],
      fits: [
        { type: 'undone', entry: 5 },
        { type: 'undone', entry: 4 },
        { type: 'redone', entry: 4 },
        { type: 'undone', entry: 4 },
      ],
    })
  })

  test('a bag on a label that both had printed gets another number where the label is in use here', () => {
    const printed = written(job, 'c', { do: 'deal-labels', count: 4 })
    const ours = written(printed, 'a', { do: 'open-container', kind: 'bag', no: 3 })
    const theirs = written(printed, 'b', { do: 'open-container', kind: 'bin', no: 3 }, move('p1', bag(3)))
    const { fits, renumbered, conflicts } = planOf(ours, theirs)
    expect({ renumbered, conflicts }).toEqual({ renumbered: [{ there: 3, here: 7 }], conflicts: [] })
    expect(where([...ours, ...fits], 'p1')).toEqual(['6 c7'])
    const other = written(printed, 'b', { do: 'open-container', kind: 'bin', no: 4 })
    expect(planOf(ours, other)).toMatchObject({ renumbered: [], fits: [{ container: { no: 4 } }] })
  })

  test('what was fitted earlier elsewhere does not shorten what sets from the last piece fitted', () => {
    const begun = written(job, 'c', begin(1))
    const note: Command = { do: 'note', kind: 'note', text: 'gasket dry' }
    const ours = written(begun, 'a', note, note, putOn('p1'))
    const { fits } = planOf(ours, written(begun, 'b', putOn('p2')))
    const { work } = fold([...ours, ...fits]).steps.get(1) ?? {}
    expect(work).toMatchObject({ at: ours.at(-1)?.at, fittedAt: ours.at(-1)?.at })
    expect(fits[0]?.at).not.toBe(ours.at(-1)?.at)
  })

  test('what came in a kit keeps to the step that began after it, under its number here', () => {
    const empty = written([], 'c', openJob)
    const ours = written(empty, 'a', strip('plate off'), off(1, 'nut'))
    const lines = [{ pieces: [], name: 'O-ring', count: 1 }]
    const kit: Command = { do: 'count-in', name: 'gasket kit', lines, into: at('bench') }
    const { fits, conflicts } = planOf(ours, written(empty, 'b', kit, strip('sump off')))
    expect(conflicts).toEqual([])
    expect(fits).toMatchObject([{ pieces: [{ step: 2 }] }, { step: { no: 2 } }])
  })

  test('a stop that says nothing is not taken along behind what was written here', () => {
    const silent: Command = { do: 'stop', note: '', abrupt: true }
    const ours = written(job, 'a', stop())
    expect(planMerge(ours, written(job, 'b', silent))).toEqual({ ok: false, why: 'nothing-new' })
    expect(planOf(ours, written(job, 'b', stop())).fits).toMatchObject([{ type: 'stopped' }])
    expect(planMerge(ours, written(job, 'b', silent, undo))).toEqual({ ok: false, why: 'nothing-new' })
  })
})

describe('what does not fit', () => {
  const [one, two] = [strip('one side off'), strip('two side off')]
  const here = { at: 'block' }
  const set = (...positions: string[]) => matchedOff(positions, 'cap', here)

  test.each<[string, Command[], Command[]]>([
    ['the same bolts go to two places', [move('p1', at('bench'), { count: 2 })], [move('p1', at('spare'))]],
    ['the same thing comes off twice', [one, off(1, 'Nut', here)], [two, off(3, 'nuts', here)]],
    ['one of a set comes off twice', [one, set('I1', 'I2')], [two, set('I2')]],
    ['a set and a lot of the same name', [one, set('I1', 'I2')], [two, off(2, 'cap', here)]],
    ['a lot and a set of the same name', [one, off(2, 'cap', here)], [two, set('I1', 'I2')]],
    ['a step is closed that something more is owed in', [mark('dot', 'p1')], [...home(1)]],
    ['something more is owed in a step that is closed', [...home(1)], [mark('dot', 'p1')]],
    ['a step is closed that has become critical', [critical(1)], [...home(1)]],
    ['the same rag goes in twice', [aidIn('rag')], [aidIn('rag')]],
    ['the same mark', [mark('dot', 'p1')], [mark('Dot', 'p1')]],
    ['the same step begins twice', [strip('sump off')], [strip('Sump off')]],
    ['a step is closed that another comes off behind', [...home(1)], [strip('sump off', { after: [1] })]],
    ['two lots are taken out of one', [replace('p1', 2)], [replace('p1', 1)]],
    ['a bag is void that something goes into', [move('p2', at('bench')), voidBag(2)], [move('p1', bag(2))]],
    ['a bag is void that something went into', [move('p1', bag(2))], [move('p2', at('bench')), voidBag(2)]],
    ['another name of the job', [{ do: 'describe', name: 'one' }], [{ do: 'describe', name: 'two' }]],
    ['what both had is taken back under it', [undo, undo], [move('p2', at('bench'))]],
    ['what both had is taken back beneath it', [move('p2', at('bench'))], [undo, undo]],
    ['both take the same back', [undo], [undo]],
    ['a count of what went elsewhere', [move('p1', at('bench'))], [count(1, ['p1', 6])]],
  ])('%s', (_, ours, theirs) => {
    const { conflicts } = planOf(written(job, 'a', ...ours), written(job, 'b', ...theirs))
    const found = conflicts.find(({ why }) => why === 'same-thing')
    expect(found?.against.map(({ id }) => id.slice(0, 1))).toContain('a')
    expect(found?.entry.id).toMatch(/^b/)
  })

  test('what rests on it follows, and the rest fits', () => {
    const ours = written(job, 'a', strip('sump off'), off(1, 'plug'))
    const theirs = written(
      job,
      'b',
      strip('sump off'),
      off(4, 'studs'),
      mark('dot', 'p3'),
      mark('line', 'p2'),
    )
    const { fits, conflicts } = planOf(ours, theirs)
    expect(conflicts.map(({ entry, why, against }) => [entry.id, why, against.map(({ id }) => id)])).toEqual([
      ['b6', 'same-thing', ['a6']],
      ['b7', 'follows', []],
      ['b8', 'follows', []],
    ])
    expect(fits).toMatchObject([{ id: 'b9', mark: { id: 'm2', piece: 'p2' } }])
  })

  test('a full tray: the same slot', () => {
    const tray = written(job, 'c', { do: 'open-container', kind: 'tray', slots: 2 })
    const ours = written(tray, 'a', strip('one off'), matchedOff(['I1', 'I2'], 'cap', { into: bag(3) }))
    const theirs = written(tray, 'b', strip('two off'), matchedOff(['E1'], 'cap', { into: slot(3, 2) }))
    expect(planOf(ours, theirs).conflicts).toMatchObject([{ why: 'same-thing', against: [{ id: 'a8' }] }])
  })

  test('printed labels whose numbers are bags here; what went into bags with them is taken over', () => {
    const ours = written(job, 'a', off(1, 'nut'))
    const labels: Command = { do: 'deal-labels', count: 4 }
    const into = { into: { kind: 'container', no: 4 } } as const
    const { fits, renumbered, conflicts } = planOf(ours, written(job, 'b', labels, off(1, 'seal', into)))
    expect(conflicts).toMatchObject([
      { entry: { type: 'labels-dealt' }, why: 'label-taken', against: [{ id: 'a6' }] },
    ])
    expect(fits).toMatchObject([{ type: 'came-off', opened: { no: 4 } }])
    expect(renumbered).toEqual([])
    const free = planOf(written(job, 'a', mark('dot', 'p1')), written(job, 'b', labels, off(1, 'seal', into)))
    expect(free).toMatchObject({
      conflicts: [],
      renumbered: [],
      fits: [{ from: 3, to: 6 }, { opened: { no: 4 } }],
    })
  })

  test('two who wait for each other break a law', () => {
    const steps = written(job, 'c', addStep('clean'), addStep('prime'))
    const ours = written(steps, 'a', { do: 'change-step', step: 2, needs: [3] })
    const theirs = written(steps, 'b', { do: 'change-step', step: 3, needs: [2] })
    expect(planOf(ours, theirs)).toMatchObject({ fits: [], conflicts: [{ why: 'law', against: [] }] })
  })

  test('two bags that stand in each other break a law', () => {
    const put = (container: number, inside: number): Command => ({ do: 'put-container', container, inside })
    const theirs = written(job, 'b', put(2, 1), mark('dot', 'p1'))
    expect(planOf(written(job, 'a', put(1, 2)), theirs)).toMatchObject({
      fits: [{ type: 'marked' }],
      conflicts: [{ entry: { type: 'container-put' }, why: 'law' }],
    })
  })

  test('a pump on a bracket that sits on the pump', () => {
    const onto = (piece: `p${number}`, to: `p${number}`): Entry[] => {
      const moves = [{ piece, count: 1, from: 'bench' as const, to }]
      return append(parts, `${piece}`, { type: 'moved', moves })
    }
    const parts = written(
      job,
      'c',
      off(1, 'pump', { into: at('bench') }),
      off(1, 'bracket', { into: at('bench') }),
    )
    const { conflicts } = planOf(onto('p3', 'p4'), onto('p4', 'p3'))
    expect(conflicts).toMatchObject([{ why: 'same-thing' }])
  })

  test('a bolt in doubt here is not ticked by what was turned elsewhere', () => {
    const begun = written(
      job,
      'c',
      tightening('p1', [torque(20), angle(90)]),
      begin(1),
      putOn('p1'),
      putOn('p2'),
    )
    const turned = written(begun, 'c', ...Array.from({ length: 8 }, () => turn()))
    const { conflicts } = planOf(written(turned, 'a', stop(true)), written(turned, 'b', turn()))
    expect(conflicts).toMatchObject([{ why: 'same-thing', against: [{ type: 'stopped' }] }])
  })

  test('a stop elsewhere does not begin a pass again that goes on here', () => {
    const begun = written(job, 'c', tightening('p1', [torque(20)]), begin(1), putOn('p1'))
    const ours = written(begun, 'a', turn(), turn())
    const { conflicts } = planOf(ours, written(begun, 'b', stop()))
    expect(conflicts).toMatchObject([{ why: 'same-thing', against: [{ id: 'a9' }, { id: 'a10' }] }])
    const { fits } = planOf(written(begun, 'a', stop()), written(begun, 'b', turn(), turn()))
    expect(fits).toHaveLength(2)
  })

  test('what follows on a step that was taken apart again here', () => {
    const closed = written(job, 'c', ...home(1), addStep('check', { needs: [1] }))
    const ours = written(closed, 'a', reopen(1))
    const { fits, conflicts } = planOf(ours, written(closed, 'b', begin(2), done(2, 'dry')))
    expect(fits).toEqual([])
    expect(conflicts).toMatchObject([
      { why: 'same-thing', against: [{ type: 'reopened' }] },
      { why: 'same-thing', against: [{ type: 'reopened' }] },
    ])
  })
})

describe('the first start', () => {
  const ready = written(job, 'c', ...home(1))

  test('a clearance there does not cover what is new here', () => {
    const ours = written(ready, 'a', strip('sump off'), off(4, 'nuts'))
    const { fits, conflicts } = planOf(ours, written(ready, 'b', mark('dot', 'p1'), undo, clear, firstStart))
    expect(fits.map(({ type }) => type)).toEqual(['marked', 'undone'])
    expect(conflicts).toMatchObject([
      { entry: { type: 'cleared' }, why: 'same-thing', against: [{ id: 'a10' }, { id: 'a11' }] },
      { entry: { type: 'started' }, why: 'same-thing' },
    ])
  })

  test('work there does not go behind a start here, and goes behind a clearance, which it ends', () => {
    const theirs = written(ready, 'b', strip('sump off'), off(4, 'nuts'))
    const { conflicts } = planOf(written(ready, 'a', clear, firstStart), theirs)
    expect(conflicts).toMatchObject([{ why: 'same-thing', against: [{ type: 'started' }] }, {}])
    const cleared = written(ready, 'a', clear)
    const { fits } = planOf(cleared, theirs)
    expect(fits).toHaveLength(2)
    expect(fold([...cleared, ...fits]).cleared).toBe(false)
  })

  test('a clearance there stands where only words are new here', () => {
    const ours = written(ready, 'a', { do: 'note', kind: 'note', text: 'paint the cover' })
    const { fits, conflicts } = planOf(ours, written(ready, 'b', clear, firstStart))
    expect(conflicts).toEqual([])
    expect(fold([...ours, ...fits])).toMatchObject({ cleared: true, started: true })
  })

  test('nothing is cleared over what an earlier merge has left open', () => {
    const ours = append(ready, 'a', leftOut('z1'))
    expect(planOf(ours, written(ready, 'b', clear)).conflicts).toMatchObject([{ entry: { type: 'cleared' } }])
  })
})

describe('again, and back', () => {
  const ours = written(job, 'a', strip('sump off'), off(4, 'nuts'), mark('dot', 'p3'))
  const theirs = written(job, 'b', strip('pump off'), off(3, 'studs'), mark('line', 'p3'))

  test('a copy of another job', () => {
    const other = written([], 'x', openJob)
    expect(planMerge(job, other)).toEqual({ ok: false, why: 'other-job' })
    expect(planMerge([], other)).toEqual({ ok: false, why: 'other-job' })
    expect(planMerge(job, [])).toEqual({ ok: false, why: 'other-job' })
  })

  test('nothing is new the second time, nor in an older copy', () => {
    const merged = [...ours, ...planOf(ours, theirs).fits]
    expect(planMerge(merged, theirs)).toEqual({ ok: false, why: 'nothing-new' })
    expect(planMerge(merged, job)).toEqual({ ok: false, why: 'nothing-new' })
  })

  test('that copies were merged is no news, however often they are merged to and fro or in a ring', () => {
    const copies = [ours, theirs, written(job, 'd', mark('arrow', 'p2'))]
    const merge = (to: number, from: number) => {
      const [into = [], other = []] = [copies[to], copies[from]]
      const planned = planMerge(into, other)
      if (planned.ok) copies[to] = append([...into, ...planned.plan.fits], `m${to}-`, note)
      return planned.ok
    }
    const ring = [0, 1, 2].map((to) => [to, (to + 1) % 3] as const)
    for (const [to, from] of [...ring, ...ring]) merge(to, from)
    const all = copies.map((copy) =>
      copy
        .filter(({ type }) => type !== 'merged')
        .map(({ id }) => id)
        .sort(),
    )
    expect(all).toEqual([all[0], all[0], all[0]])
    const back = ring.map(([to, from]) => [from, to] as const)
    expect([...ring, ...back, ...ring].filter(([to, from]) => merge(to, from))).toEqual([])
    // One that only went further by a note, too.
    const [copy = []] = copies
    expect(planMerge(copy, append(copy, 'z', note))).toEqual({ ok: false, why: 'nothing-new' })
    // But what a merge has left out is owed here as well.
    expect(planOf(copy, append(copy, 'z', leftOut('x1'))).fits).toMatchObject([{ leftOut: [{ id: 'w1' }] }])
  })

  test('that others left out what stands here is no news, and what they left out of a third is owed, even here', () => {
    const started = written(job, 'a', ...home(1), clear, firstStart)
    const copy = append(written(job, 'b', mark('arrow', 'p2')), 'z', leftOut(started.at(-1)?.id ?? ''))
    const { fits, conflicts } = planOf(started, copy)
    expect({ fits, conflicts }).toMatchObject({ fits: [], conflicts: [{ entry: { type: 'marked' } }] })
    const third = append(job, 'z', leftOut('x1'))
    expect(planOf(started, third)).toMatchObject({ fits: [{ leftOut: [{ entry: 'x1' }] }], conflicts: [] })
  })

  test('what the copy went on with is known by the numbers it got here', () => {
    const merged = [...ours, ...planOf(ours, theirs).fits]
    const further = written(theirs, 'b', move('p3', at('bench')), mark('arrow', 'p3'))
    expect(planOf(merged, further).fits).toMatchObject([
      { moves: [{ piece: 'p4', from: 'c4', to: 'bench' }] },
      { mark: { id: 'm3', piece: 'p4' } },
    ])
    // And back: the copy takes over what it lacks, by its own numbers.
    expect(planOf(further, merged).fits).toMatchObject([
      { type: 'strip-began', id: 'a6', step: { no: 4 } },
      { type: 'came-off', pieces: [{ id: 'p5' }], opened: { no: 5 } },
      { type: 'marked', mark: { id: 'm3', piece: 'p5' } },
    ])
  })

  test('what was left out before is not asked about again, and what rests on it still follows', () => {
    const clash = written(job, 'b', strip('sump off'))
    const { conflicts } = planOf(ours, clash)
    const settled = append(ours, 'a', leftOut(conflicts[0]?.entry.id ?? ''))
    expect(planMerge(settled, clash)).toEqual({ ok: false, why: 'nothing-new' })
    const further = written(clash, 'b', off(1, 'ring'))
    expect(planOf(settled, further).conflicts).toMatchObject([
      { entry: { type: 'came-off' }, why: 'follows' },
    ])
  })
})

function written(before: readonly Entry[], by: string, ...commands: Command[]): Entry[] {
  const pen = new Pen(before, by)
  for (const command of commands)
    if (!pen.give(command)) throw new Error(`${JSON.stringify(command)} was refused`)
  return pen.entries
}

function append(before: readonly Entry[], by: string, body: EntryBody): Entry[] {
  const n = before.length + 1
  return [...before, { ...numbered(body, n), id: `${by}${n}` }]
}

const note: EntryBody = { type: 'merged', copy: '/elsewhere', taken: 1, leftOut: [], renumbered: [] }

function leftOut(entry: string): EntryBody {
  const item = { id: 'w1', entry, at: '2030-01-01T08:00:00Z', says: 'strip step "sump off" begun' } as const
  return { type: 'merged', copy: '/elsewhere', taken: 0, leftOut: [item], renumbered: [] }
}

function planOf(ours: readonly Entry[], theirs: readonly Entry[]): MergePlan {
  const planned = planMerge(ours, theirs)
  if (!planned.ok) throw new Error(`not planned: ${planned.why}`)
  fold([...ours, ...planned.plan.fits])
  return planned.plan
}

function where(entries: readonly Entry[], piece: `p${number}`): string[] {
  const { ledger } = fold(entries)
  return [...(ledger.accounts.get(piece)?.at.keys() ?? [])].map(
    (place) => `${balance(ledger, piece, place)} ${place}`,
  )
}

/** The job's own step goes back on. */
function home(step: number): Command[] {
  return [begin(step), putOn('p1'), putOn('p2'), done(step)]
}

function critical(step: number): Command {
  return { do: 'change-step', step, critical: { afterMinutes: 30 } }
}

function voidBag(container: number): Command {
  return { do: 'void-container', container, reason: 'torn' }
}
