export interface Box {
  x: number
  y: number
  width: number
  height: number
}

/** Where lines of text may stand: an area, less what lies in it already. */
export interface Column {
  area: Box
  taken: readonly Box[]
}

export interface Span {
  x: number
  width: number
}

/** The widest piece of the area that is free all the way from `top` to `bottom`. */
export function spanAt({ area, taken }: Column, top: number, bottom: number): Span {
  const inTheWay = taken.filter((box) => box.y < bottom && box.y + box.height > top).sort((a, b) => a.x - b.x)
  const right = area.x + area.width
  let widest: Span = { x: area.x, width: 0 }
  let left = area.x
  for (const { x, width } of [...inTheWay, { x: right, width: 0 }]) {
    if (x - left > widest.width) widest = { x: left, width: x - left }
    left = Math.max(left, x + width)
  }
  return widest
}

/** Where the area ends below. */
export function bottomOf({ area }: Column): number {
  return area.y + area.height
}

/** The column from `top` down to `bottom`. */
export function between({ area, taken }: Column, top: number, bottom: number): Column {
  return { area: { ...area, y: top, height: Math.max(0, bottom - top) }, taken }
}
