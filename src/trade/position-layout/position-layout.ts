/**
 * Where the positions of a set lie on the machine, as seen by the one who stands before it: drawn once, and used by
 * sheets and screens alike.
 */
export interface PositionLayout {
  shape: LayoutShape
  /**
   * x to the right and y down. In a row, a grid and a free outline in columns and rows from 0, 0; on a circle around
   * 0, 0 with the radius 1.
   */
  places: PlacedPosition[]
}

export type LayoutShape = 'row' | 'grid' | 'circle' | 'free'

export interface PlacedPosition {
  position: string
  x: number
  y: number
}

/** The most columns, and the most rows. */
export const MOST_ACROSS = 40
/** As many as a set may have. */
export const MOST_POSITIONS = 200

/** Positions in rows of so many, in the order given. */
export function inRows(positions: readonly string[], columns: number): PositionLayout {
  return {
    shape: positions.length <= columns ? 'row' : 'grid',
    places: positions.map((position, index) => ({
      position,
      x: index % columns,
      y: Math.floor(index / columns),
    })),
  }
}

/** Positions clockwise around a circle, the first at the top: common practice for bolt circles, as seen from outside. */
export function onCircle(positions: readonly string[]): PositionLayout {
  return {
    shape: 'circle',
    places: positions.map((position, index) => {
      const turn = (2 * Math.PI * index) / positions.length
      return { position, x: withoutNoise(Math.sin(turn)), y: withoutNoise(-Math.cos(turn)) }
    }),
  }
}

/** The sine of half a turn is nothing, and neither is it less than nothing. */
function withoutNoise(value: number): number {
  return Number(value.toFixed(12)) + 0
}
