import { expect, test } from 'vitest'
import {
  arrowCells,
  orderCells,
  stageCells,
  togetherCells,
  valueCells,
} from '../../../src/trade/position-drawing/cells.ts'

const sizes = new Map([
  ['1', 'M6x40'],
  ['2', 'M6x110'],
])

test('sizes by position', () => {
  expect([...valueCells(sizes)]).toEqual([
    ['1', { says: 'M6x40' }],
    ['2', { says: 'M6x110' }],
  ])
})

test('the turn of each in an order', () => {
  expect([...orderCells(['A2', 'B1'])]).toEqual([
    ['A2', { says: '(1)' }],
    ['B1', { says: '(2)' }],
  ])
})

test('through, next, in doubt, at fault and not yet are told apart without colour', () => {
  const stage = { order: ['1', '2', '3', '4'], done: new Set(['1', '2']), faulty: new Set(['2']) }
  expect([...stageCells({ ...stage, next: { fastener: '3', suspect: false } }).values()]).toEqual([
    { says: '✓', isMarked: false },
    { says: '!', isMarked: false },
    { says: '·', isMarked: true },
    { says: '·', isMarked: false },
  ])
  const inDoubt = stageCells({ ...stage, next: { fastener: '3', suspect: true } })
  expect(inDoubt.get('3')).toEqual({ says: '?', isMarked: true })
})

test('arrows, and sizes with them', () => {
  const arrows = arrowCells([{ position: '1', arrow: 'left' }, { position: '2' }])
  expect([...arrows]).toEqual([['1', { says: '←' }]])
  expect([...togetherCells(valueCells(sizes), arrows)]).toEqual([
    ['1', { says: 'M6x40 ←', isMarked: undefined }],
    ['2', { says: 'M6x110', isMarked: undefined }],
  ])
})
