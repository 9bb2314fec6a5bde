import { describe, expect, test } from 'vitest'
import {
  differenceName,
  fastenerName,
  faultName,
  fluidName,
  markName,
  onTheWayBack,
  overOrShort,
  passName,
  stepName,
  tighteningName,
} from '../../src/words/names.ts'
import { targetName } from '../../src/words/targets.ts'
import {
  added,
  angle,
  begin,
  drained,
  end,
  job,
  marked,
  off,
  recount,
  tightening,
  torque,
} from '../errors/commands.ts'
import { play } from '../errors/play.ts'

const strip = [
  job,
  begin('Valve cover off'),
  off(8, 'cover bolts'),
  marked('dot to the left', 'p1'),
  drained('coolant', 2.1),
  off(4, 'studs', { broken: { kind: 'snapped', count: 1 } }),
  tightening('p1', torque, angle),
  recount(1, ['p1', 7], ['p2', 3], [null, 2]),
]
const { state } = play(strip)

describe('names of what a job has besides pieces', () => {
  test('a step keeps its word while it comes off, and loses it on the way back', () => {
    expect(stepName(state, 1)).toBe('step 1, Valve cover off')
    expect(stepName(play([...strip, end]).state, 1)).toBe('step 1, Valve cover')
    expect(stepName(play([job, added('Clean the ports out')]).state, 1)).toBe('step 1, Clean the ports out')
    expect(stepName(state, 9)).toBe('step 9')
    expect([onTheWayBack('Cams out'), onTheWayBack('Tuck hoses away'), onTheWayBack('Off')]).toEqual([
      'Cams',
      'Tuck hoses',
      'Off',
    ])
  })

  test('a mark, a fluid, a fault and a tightening say their id and what they are', () => {
    expect(markName(state, 'm1')).toBe('mark m1 on cover bolts (dot to the left)')
    expect(fluidName(state, 'f1')).toBe('coolant (2.1 L drained)')
    expect(faultName(state, 'x1')).toBe('x1, 1 × stud snapped')
    expect(tighteningName(state, 't1')).toBe('t1 (Valve cover: cover bolts)')
    expect(fastenerName('I3')).toBe('fastener I3')
  })

  test('a pass says its number and its value as it was typed', () => {
    const passes = { passes: [torque, angle] }
    expect([passName(passes, 0), passName(passes, 1)]).toEqual(['pass 1 of 2: 20 Nm', 'pass 2 of 2: 90 deg'])
  })

  test('a difference says where, what, and by how much', () => {
    expect(differenceName(state, 'd1')).toBe('d1, bag 1, cover bolts: 7 counted, 8 in the record, 1 short')
    expect(differenceName(state, 'd2')).toBe('d2, bag 1: 2 that the record does not have there')
    expect([overOrShort(4, 3), overOrShort(4, 6)]).toEqual(['1 short', '2 too many'])
  })

  test('what an override stands for', () => {
    const targets = ['start 1', 'finish 1', 'look 1', 'check 1', 'm1', 'f1', 'x1', 't1'] as const
    expect(targets.map((target) => targetName(state, target))).toEqual([
      'the start of step 1, Valve cover off',
      'the finish of step 1, Valve cover off',
      'the last look before step 1, Valve cover off',
      'the doing of step 1, Valve cover off',
      'mark m1 on cover bolts (dot to the left)',
      'coolant (2.1 L drained)',
      'x1, 1 × stud snapped',
      't1 (Valve cover: cover bolts)',
    ])
  })

  test('what the record does not know still has a name', () => {
    expect([
      markName(state, 'm9'),
      fluidName(state, 'f9'),
      faultName(state, 'x9'),
      tighteningName(state, 't9'),
      differenceName(state, 'd9'),
    ]).toEqual(['mark m9', 'fluid f9', 'fault x9', 'tightening t9', 'difference d9'])
  })
})
