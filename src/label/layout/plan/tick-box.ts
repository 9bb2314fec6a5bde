import type { Shape } from '../../drawing.ts'

/** Side of a box to be ticked with a pencil, in millimetres. */
export const boxSide = 3.2

/** A box to tick, or one that is ticked. */
export function tickBox(x: number, y: number, done: boolean): Shape[] {
  const box: Shape = { kind: 'box', x, y, width: boxSide, height: boxSide, line: 0.25 }
  if (!done) return [box]
  const foot = { x: x + boxSide * 0.42, y: y + boxSide * 0.8 }
  return [
    box,
    { kind: 'line', from: { x: x + boxSide * 0.18, y: y + boxSide * 0.5 }, to: foot, width: 0.45 },
    { kind: 'line', from: foot, to: { x: x + boxSide * 0.86, y: y + boxSide * 0.16 }, width: 0.45 },
  ]
}
