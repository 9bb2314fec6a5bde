import { describe, expect, test } from 'vitest'
import { tighteningStage } from '../../src/session/tightening-stage.ts'
import { benchWithJob } from '../cli/support/bench.ts'

const set = ['begin head off', 'off 4 M10x120 E14 head bolts @A1,A2,B1,B2 into new bag', 'end']

function stageOf(...lines: string[]) {
  const { state } = benchWithJob(...lines).session()
  const joint = [...state.tightenings.values()][0] ?? [...state.loosenings.values()][0]
  if (!joint) throw new Error('no tightening')
  return tighteningStage(state, joint)
}

describe('how far a tightening has come', () => {
  test('rests on the names until somebody draws it', () => {
    const tighten = 'tighten head bolts: 20 Nm order A2,B1,A1,B2'
    expect(stageOf(...set, tighten)).toMatchObject({
      isProposed: true,
      layout: {
        shape: 'grid',
        places: [{ position: 'A1' }, { position: 'A2' }, {}, { position: 'B2', x: 1, y: 1 }],
      },
    })
    const drawn = stageOf(...set, 'layout head bolts: B1 B2 / A1 A2', tighten)
    expect(drawn.isProposed).toBe(false)
    expect(drawn.layout?.places[0]).toMatchObject({ position: 'B1', x: 0, y: 0 })
  })

  test('is not drawn where names only count, but listed as they were written down', () => {
    const stage = stageOf(
      'begin x off',
      'off 3 M6x25 hex 10 bolts into new bag',
      'end',
      'tighten bolts: 8 Nm order 3,1,2',
    )
    expect(stage.layout).toBeNull()
    expect(stage.written).toEqual(['1', '2', '3'])
  })

  test('marks the next one, and tells those after it in the order of the pass', () => {
    const stage = stageOf(
      ...set,
      'tighten head bolts: 20 Nm order A2,B1,A1,B2',
      'look 1',
      'take 1',
      'fit head bolts',
      'turn',
    )
    expect(stage).toMatchObject({ pass: 0, next: { fastener: 'B1' }, after: ['A1', 'B2'] })
    expect([...stage.cells].filter(([, { isMarked }]) => isMarked).map(([name]) => name)).toEqual(['B1'])
    expect(stage.cells.get('A2')?.says).toBe('✓')
  })

  test('one that never came to its torque stands with a !', () => {
    const stage = stageOf(
      ...set,
      'tighten head bolts: 20 Nm order A2,B1,A1,B2',
      'look 1',
      'take 1',
      'fit head bolts',
      'turn',
      'no torque B1 because it turns and turns',
    )
    expect(stage.cells.get('B1')?.says).toBe('!')
  })
})
