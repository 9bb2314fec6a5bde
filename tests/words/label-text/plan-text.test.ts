import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { groupedCode, labelCode } from '../../../src/label/code.ts'
import { paperPlan } from '../../../src/session/label-facts.ts'
import { planText } from '../../../src/words/label-text/plan-text.ts'
import { sessionWith } from '../../session/support/sessions.ts'
import * as c from '../../support/commands.ts'

/** The printed plan after these commands. */
function plan(...commands: Command[]) {
  const session = sessionWith(...commands)
  return planText(session.state, paperPlan(session), '25 Nov 2026', (no) => labelCode(7, no))
}

function step(no: number, ...commands: Command[]) {
  const found = plan(...commands).steps.find((each) => each.no === no)
  if (!found) throw new Error(`no step ${no}`)
  return found
}

const code = (no: number) => groupedCode(labelCode(7, no))

const cover = [
  c.strip('Cover off', { hides: false }),
  c.off(4, 'bolts', { size: 'M6x25 hex 8' }),
  c.off(1, 'covers', { kind: 'part', into: c.at('bench') }),
]

describe('a step on paper', () => {
  test('has its own code, its standing, and what comes before it', () => {
    const two = [...cover, c.strip('Head off'), c.off(8, 'head bolts'), c.endStrip]
    expect(step(1, ...two)).toMatchObject({
      code: labelCode(7, 9001),
      title: 'Cover',
      standing: 'NOT YET',
      isDone: false,
      before: 'after step 2',
    })
    expect(step(2, ...two)).toMatchObject({ before: 'nothing comes before it' })
    expect(plan(...two).steps.map(({ no }) => no)).toEqual([2, 1])
  })

  test('says what goes back and from where, last off first', () => {
    const { items } = step(1, ...cover)
    expect(items).toEqual([
      {
        kind: 'tick',
        text: '1 × cover',
        from: ['on the bench'],
        notes: [],
        boxes: [{ label: '', done: false }],
      },
      {
        kind: 'tick',
        text: '4 × bolts M6x25 hex 8',
        from: [`bag 1 (${code(1)})`],
        notes: [],
        boxes: [{ label: '', done: false }],
      },
      { kind: 'write', text: 'torque and order, from the service manual' },
    ])
  })

  test('has a box for each of a set, and names where each lies', () => {
    const caps = c.matchedOff(['I1', 'I2', 'I3'], 'cam caps', { kind: 'part' })
    const { items } = step(1, c.strip('Camshafts'), caps, c.move('p2', c.at('bench')))
    expect(items.find(({ text }) => text.includes('cam caps'))).toMatchObject({
      text: '3 × cam caps I1–I3',
      from: [`bag 1 (${code(1)}): I1, I3`, 'I2 on the bench'],
      boxes: [
        { label: 'I1', done: false },
        { label: 'I2', done: false },
        { label: 'I3', done: false },
      ],
    })
  })

  test('says that a used one is replaced, and that one is short', () => {
    const { items } = step(
      1,
      c.strip('Cover', { hides: false }),
      c.off(1, 'gasket', { kind: 'part', singleUse: true }),
      c.off(7, 'bolts', { should: 8 }),
    )
    expect(items.slice(0, 2)).toMatchObject([
      { text: '8 × bolts', from: [`bag 2 (${code(2)}): 7`], notes: ['bolts: 7 of 8, 1 was missing'] },
      { text: '1 × gasket', notes: ['USED, DO NOT FIT: a new one goes in'] },
    ])
  })

  test('holds marks, fluids, aids, cautions and notes', () => {
    const { items, cautions, notes } = step(
      1,
      c.strip('Hoses', { hides: false }),
      c.drain('coolant', 2.1),
      c.aidIn('rags'),
      c.mark('dot up'),
      { do: 'note', kind: 'caution', text: 'hot' },
      { do: 'note', kind: 'note', text: 'routed behind the bracket' },
    )
    expect(items.map(({ text }) => text)).toEqual([
      'take out 1 × rag',
      'see mark m1 (dot up)',
      'fill coolant: 2.1 l came out',
      'coolant filled in',
    ])
    expect(cautions).toEqual(['hot'])
    expect(notes).toEqual(['routed behind the bracket'])
  })

  test('shows a tightening as a grid in its order, with the values as typed', () => {
    const grid = step(
      1,
      ...cover,
      c.endStrip,
      c.begin(1),
      c.putOn('p2'),
      c.putOn('p1', undefined, 4),
      c.tightening('p1', [c.torque(5), c.angle(90)], ['2', '3', '1', '4']),
      ...c.turns(5),
    ).items.find(({ kind }) => kind === 'grid')
    expect(grid).toEqual({
      kind: 'grid',
      text: 'tighten Cover: bolts (t1)',
      caution: expect.stringContaining('the service manual of the machine decides'),
      fasteners: ['2', '3', '1', '4'],
      passes: [
        { text: 'pass 1: 5 Nm', done: [true, true, true, true] },
        { text: 'pass 2: 90 deg', done: [true, false, false, false] },
      ],
    })
  })

  test('that is done is ticked, with its result', () => {
    const done = [
      ...cover,
      c.endStrip,
      c.begin(1),
      c.putOn('p2'),
      c.putOn('p1', undefined, 4),
      c.done(1, 'dry'),
    ]
    const { standing, isDone, items, notes } = step(1, ...done)
    expect({ standing, isDone, notes }).toEqual({ standing: 'DONE', isDone: true, notes: ['result: dry'] })
    expect(items.every((item) => item.kind === 'tick' && item.boxes.every((box) => box.done))).toBe(true)
    // Reopened, the old result says nothing any more.
    expect(step(1, ...done, c.reopen(1)).notes).toEqual([])
  })

  test('of the way back alone has a line for its result, and comes after the start where it must', () => {
    const later = c.addStep('check oil', { way: 'after-start', due: 'after 500 km' })
    const found = step(2, ...cover, later)
    expect(found).toMatchObject({ afterStart: true, items: [{ kind: 'write', text: 'result' }] })
    expect(found.before).toBe('after the first start, due after 500 km')
  })
})

describe('the lists', () => {
  test('hold every container that is not void, and where it stands', () => {
    const shelf: Command = { do: 'open-container', kind: 'shelf' }
    const { containers } = plan(shelf, { do: 'open-container', kind: 'bag', inside: 1 }, ...cover, {
      do: 'void-container',
      container: 1,
      reason: 'gone',
    })
    expect(containers.map(({ heading, stands }) => [heading, stands])).toEqual([
      ['BAG 2', null],
      ['BAG 3', null],
    ])
    const stands = plan(shelf, { do: 'open-container', kind: 'bag', inside: 1 }).containers[1]
    expect(stands).toMatchObject({ heading: 'BAG 2', stands: 'on shelf 1', status: 'EMPTY' })
  })

  test('hold all that lies elsewhere, and what is missing', () => {
    const { loose } = plan(
      ...cover,
      c.aidIn('rags'),
      c.move('p1', c.at('out'), { count: 1, reason: 'to be matched' }),
      c.lose('p1', 1),
    )
    expect(loose).toEqual([
      { place: 'In the machine, to come out', what: ['1 × rag, put in during step 1'] },
      { place: 'On the bench', what: ['1 × cover → Cover, step 1'] },
      { place: 'Out', what: ['1 × bolt M6x25 hex 8 → Cover, step 1'] },
      { place: 'Lost', what: ['1 × bolt M6x25 hex 8 → Cover, step 1'] },
      { place: 'Missing', what: ['bolts M6x25 hex 8: 3 of 4, 1 lost'] },
    ])
  })
})
