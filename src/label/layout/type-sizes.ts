/**
 * Sizes of type on labels, all as the em in millimetres. Capitals and digits of the fonts are 0.73 of the em high.
 *
 * A character ought to fill 16 minutes of arc to be read with ease (a figure of display ergonomics, ISO 9241-303, from
 * memory): 1.75 mm at 37 cm, a label held in the hand; 2.5 mm at 54 cm, arm's length.
 */
export const handEm = 2.4
export const armEm = 3.4

/** From the top of a line to its baseline, and from line to line, as parts of the em; capitals with accents fit. */
export const ascent = 0.94
export const pitch = 1.2
/** Height of capitals and digits as part of the em. */
export const capHeight = 0.73

/** What no ink comes near, from the edge of the label: a printer shifts by so much, a cutter as well. Common practice. */
export const inset = 0.8

/** As `ascent`, for a first line: the accents of capitals may reach into the margin above. */
export function firstAscent(size: number): number {
  return Math.max(0.8, ascent - (0.9 * inset) / size)
}

/** Sizes from the largest to the smallest, each a little smaller than the one before. */
export function sizesDown(largest: number, smallest: number): number[] {
  const sizes: number[] = []
  for (let size = largest; size > smallest; size *= 0.93) sizes.push(size)
  return [...sizes, smallest]
}
