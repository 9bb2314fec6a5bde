import { type Drawing, moved, type Shape } from '../drawing.ts'
import type { FlagLabel } from '../label-content.ts'
import { chooseSymbol } from '../symbol/choose-symbol.ts'
import type { Box } from './column.ts'
import { cuts, firstOf, sketchFace } from './flag-face.ts'
import type { About, LabelSize, LayoutRefusal, Sketch } from './laid.ts'
import { leastSide } from './symbol-spots.ts'
import { inset } from './type-sizes.ts'

/** Outer diameter of the hose that a flag is made for when none is said, in millimetres. Common practice. */
const usualHose = 10

/**
 * A label that is folded round a hose: its middle lies on the hose, its ends meet back to back as a flag. The face left
 * of the fold stands once more right of it, at the same distance, so that one covers the other, each upright to its reader.
 */
export function sketchFlag(
  content: FlagLabel,
  { width, height }: LabelSize,
  about: About,
): Sketch | Exclude<LayoutRefusal, { code: 'no-glyph' }> {
  const { dpi, hose = usualHose } = about
  const wrap = Math.PI * hose
  const faceWidth = (width - wrap) / 2 - 2 * inset
  const face: Box = { x: inset, y: inset, width: faceWidth, height: height - 2 * inset }
  const least = leastSide(dpi)
  if (face.width < least) {
    const needed = wrap + 2 * (least + 2 * inset)
    return { code: 'flag-too-short', label: content.name, width, needed, hose }
  }
  const side = Math.min(face.width, face.height, Math.max(least, 0.55 * Math.min(face.width, face.height)))
  const symbol = chooseSymbol({ width: side, height: side, symbols: 2 }, dpi)
  if ('code' in symbol) return { ...symbol, label: content.name }
  const x = face.x + face.width - symbol.size
  // At the top right; or at the bottom right, which leaves the first line all the width.
  const spots = [face.y, face.y + face.height - symbol.size].map((y) => ({
    symbol,
    places: [{ x, y, width: symbol.size, height: symbol.size }],
  }))
  const ways = cuts.flatMap((cut) => spots.map((each) => ({ cut, spots: each })))
  const left = firstOf(ways, (way) => sketchFace(content, face, way.spots, way.cut, about.typeface))
  if (!left) return { code: 'label-too-small', label: content.name, width, height }
  const right: Drawing = moved({ width, height, shapes: left.shapes }, width - face.width - 2 * inset, 0)
  return {
    shapes: [...left.shapes, ...right.shapes, ...foldMarks(width, height, wrap)],
    shortened: left.shortened,
  }
}

/** The fold as a dashed line, and short lines at both edges where the hose begins and ends. */
function foldMarks(width: number, height: number, wrap: number): Shape[] {
  const upright = (x: number, from: number, to: number, dashed: boolean): Shape => ({
    kind: 'line',
    from: { x, y: from },
    to: { x, y: to },
    width: 0.25,
    dashed,
  })
  const ends = [(width - wrap) / 2, (width + wrap) / 2]
  return [
    upright(width / 2, inset, height - inset, true),
    ...ends.flatMap((x) => [
      upright(x, inset, inset + tick, false),
      upright(x, height - inset - tick, height - inset, false),
    ]),
  ]
}

const tick = 1.5
