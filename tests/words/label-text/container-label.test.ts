import { describe, expect, test } from 'vitest'
import type { Command } from '../../../src/journal/command.ts'
import { labelCode } from '../../../src/label/code.ts'
import { containerLabel } from '../../../src/words/label-text/container-label.ts'
import * as c from '../../support/commands.ts'
import { given } from '../../support/journal.ts'

const bolts = (count: number, more: object = {}) =>
  c.off(count, 'valve cover bolts', { size: 'M6x25 hex 8', ...more })
const tray = (slots: number): Command => ({ do: 'open-container', kind: 'tray', slots })
const container = (kind: 'bag' | 'bin' | 'shelf', name?: string, inside?: number): Command => ({
  do: 'open-container',
  kind,
  ...(name === undefined ? {} : { name }),
  ...(inside === undefined ? {} : { inside }),
})

/** The label of a container after these commands. */
function label(no: number, ...commands: Command[]) {
  return containerLabel(given(...commands).state, no, '25 Nov 2026', labelCode(7, no))
}

describe('what a label says', () => {
  test('of a bag of bolts', () => {
    expect(label(1, c.strip('Valve cover off'), bolts(8))).toEqual({
      kind: 'container',
      name: 'bag 1',
      code: labelCode(7, 1),
      heading: 'BAG 1',
      part: null,
      what: ['8 × valve cover bolts M6x25 hex 8'],
      where: ['Valve cover, step 1'],
      status: 'FIT AGAIN',
      warnings: [],
      job: '007 blue twin',
      date: '25 Nov 2026',
    })
  })

  test('of one that came short', () => {
    const short = label(1, c.strip('Valve cover off'), bolts(7, { should: 8 }))
    expect(short.what).toEqual(['7 × valve cover bolts M6x25 hex 8'])
    expect(short.warnings).toEqual(['valve cover bolts M6x25 hex 8: 7 of 8, 1 was missing'])
  })

  test('of one that lost some, and scrapped some', () => {
    const { what, warnings } = label(
      1,
      c.strip('Valve cover off'),
      bolts(8),
      c.lose('p1', 1),
      c.move('p1', c.at('scrap'), { count: 2, reason: 'threads pulled' }),
    )
    expect(what).toEqual(['5 × valve cover bolts M6x25 hex 8'])
    expect(warnings).toEqual(['valve cover bolts M6x25 hex 8: 5 of 8, 2 in scrap, 1 lost'])
  })

  test('of look-alikes whose holes were written down', () => {
    const at = label(1, c.strip('Cover'), bolts(5, { alikeAt: ['1', '2', '3', '5', '6'] }))
    expect(at.what).toEqual(['5 × valve cover bolts M6x25 hex 8 @1..3,5,6'])
  })

  test('of one long bolt of its own', () => {
    const { what } = label(1, c.strip('Cover'), bolts(1, { positions: ['4'] }))
    expect(what).toEqual(['1 × valve cover bolt M6x25 hex 8 at 4'])
  })

  test('of an empty one', () => {
    expect(label(1, container('bag', 'spares'))).toMatchObject({
      heading: 'BAG 1 spares',
      status: 'EMPTY',
      what: [],
    })
  })

  test('of a tool that lies in it', () => {
    const tools = label(1, c.strip('Cover'), container('bin'), c.toolOut('mirrors'), c.move('p1', c.bag(1)))
    expect(tools).toMatchObject({ status: 'TOOL', what: ['1 × mirror'], where: [], part: null })
  })
})

describe('sets', () => {
  const caps = ['I1', 'I2', 'I3', 'I4']
  const off = (into: Parameters<typeof c.bag>[0]) =>
    c.matchedOff(caps, 'cam caps', { kind: 'part', into: c.bag(into) })

  test('in a bag, as a range', () => {
    expect(label(1, c.strip('Camshafts'), container('bag'), off(1)).what).toEqual(['4 × cam caps I1–I4'])
  })

  test('in a bag, with what is missing from it', () => {
    const { what, part } = label(
      1,
      c.strip('Camshafts'),
      container('bag'),
      container('bag'),
      off(1),
      c.move('p3', c.bag(2)),
    )
    expect(what).toEqual(['3 × cam caps I1–I4 without I3'])
    expect(part).toBe('1 of 2')
  })

  test('that are hardly there say what is, not what is not', () => {
    const moves = (['p2', 'p3', 'p4'] as const).map((piece) => c.move(piece, c.bag(2)))
    const { what } = label(1, c.strip('Camshafts'), container('bag'), container('bag'), off(1), ...moves)
    expect(what).toEqual(['1 × cam cap I1'])
  })

  test('in a tray, with the slots', () => {
    expect(label(1, c.strip('Camshafts'), tray(8), off(1)).what).toEqual(['4 × cam caps I1–I4 in slots 1–4'])
  })

  test('in a tray, laid in another order', () => {
    const free = (slot: number): Command => c.move('p2', c.slot(1, slot))
    const { what } = label(1, c.strip('Camshafts'), tray(8), off(1), free(8))
    expect(what).toEqual(['4 × cam caps I1 in slot 1, I2 in slot 8, I3, I4 in slots 3 and 4'])
  })

  test('whose caution and marks stand on the label, those alike in one line', () => {
    const { warnings } = label(
      1,
      c.strip('Camshafts'),
      container('bag'),
      off(1),
      c.mark('arrow to the chain', 'p1'),
      c.mark('arrow to the chain', 'p2'),
      { do: 'note', kind: 'caution', text: 'ease evenly' },
      { do: 'note', kind: 'note', text: 'not for the label' },
    )
    expect(warnings).toEqual(['ease evenly', 'mark on cam cap I1 and cam cap I2: arrow to the chain'])
  })
})

describe('status', () => {
  const gasket = (more: object = {}) => c.off(2, 'gaskets', { kind: 'part', singleUse: true, ...more })

  test('single-use that came off is not to be fitted', () => {
    expect(label(1, c.strip('Cover'), gasket())).toMatchObject({ status: 'USED, DO NOT FIT', warnings: [] })
  })

  test('the new one is new, the old one is old', () => {
    const both = [c.strip('Cover'), gasket(), c.endStrip, container('bag'), c.replace('p1', 2, c.bag(2))]
    expect(label(2, ...both)).toMatchObject({ status: 'NEW', what: ['2 × gaskets'] })
    expect(label(1, ...both)).toMatchObject({ status: 'OLD, DO NOT FIT' })
  })

  test('used again on somebody’s word, it fits again', () => {
    const again: Command = { do: 'use-again', piece: 'p1', reason: 'ran ten minutes' }
    expect(label(1, c.strip('Cover'), gasket(), again).status).toBe('FIT AGAIN')
  })

  test('mixed says of each line what is not to be fitted, and names what goes back first', () => {
    const mixed = label(
      1,
      c.strip('Cover'),
      container('bag'),
      gasket({ into: c.bag(1) }),
      bolts(4, { into: c.bag(1) }),
    )
    expect(mixed).toMatchObject({
      status: 'MIXED',
      what: ['4 × valve cover bolts M6x25 hex 8', 'USED, DO NOT FIT: 2 × gaskets'],
    })
  })

  test('one too many is to be decided', () => {
    const more = [
      c.strip('Cover', { hides: false }),
      bolts(2),
      c.endStrip,
      c.supply('p1', 1, c.bag(1)),
      c.begin(1),
      c.putOn('p1', undefined, 2),
    ]
    expect(label(1, ...more)).toMatchObject({
      status: 'TO DECIDE',
      what: ['1 × valve cover bolt M6x25 hex 8'],
    })
    expect(label(1, ...more.slice(0, -2)).warnings).toEqual([
      'valve cover bolts M6x25 hex 8: 1 too many, 2 belong there',
    ])
  })

  test('a void label says so, and where to look', () => {
    const gone: Command = { do: 'void-container', container: 1, insteadOf: 2, reason: 'torn' }
    expect(label(1, container('bag'), container('bag'), gone)).toMatchObject({
      status: 'VOID',
      warnings: ['void: torn, now bag 2'],
    })
  })
})

describe('several containers', () => {
  test('a lot that is spread says where the others are', () => {
    const spread = [c.strip('Cover'), bolts(8), container('bag'), c.move('p1', c.bag(2), { count: 3 })]
    expect(label(1, ...spread)).toMatchObject({
      part: '1 of 2',
      what: ['5 × valve cover bolts M6x25 hex 8 (of 8, others in bag 2)'],
    })
    expect(label(2, ...spread)).toMatchObject({
      part: '2 of 2',
      what: ['3 × valve cover bolts M6x25 hex 8 (of 8, others in bag 1)'],
    })
  })

  test('pieces of several steps in one bin each say their own home', () => {
    const { what, where, part } = label(
      1,
      container('bin'),
      c.strip('Valve cover off'),
      c.off(1, 'valve cover', { kind: 'part', into: c.bag(1) }),
      c.strip('Coils off'),
      c.off(2, 'coils', { kind: 'part', into: c.bag(1) }),
    )
    expect(what).toEqual(['1 × valve cover → Valve cover, step 1', '2 × coils → Coils, step 2'])
    expect(where).toEqual([])
    expect(part).toBeNull()
  })

  test('a shelf lists what stands on it', () => {
    const shelf = [
      container('shelf', 'behind the lift'),
      container('bin', 'covers', 1),
      container('bag', undefined, 1),
    ]
    expect(label(1, ...shelf)).toMatchObject({
      heading: 'SHELF 1 behind the lift',
      status: 'HOLDS OTHERS',
      what: ['bin 2 (covers)', 'bag 3'],
    })
  })
})

test('names that would break a line, or hide, stay one line', () => {
  const { state } = given(c.strip('Cover'), bolts(2))
  const account = state.ledger.accounts.get('p1')
  if (!account) throw new Error('no p1')
  account.piece = { ...account.piece, name: 'bolts\n\u202eXZ^\u001b[2J' }
  state.job.name = 'one\r\ntwo'
  const { what, job } = containerLabel(state, 1, '25\tNov', labelCode(7, 1))
  expect(what).toEqual(['2 × bolts XZ^[2J M6x25 hex 8'])
  expect(job).toBe('007 one two')
})
