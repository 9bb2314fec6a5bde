/** Where symbols stand on a label, each with its quiet zone: the corner of each, in the unit of the sizes given. */
export type Placement = (label: { width: number; height: number }, side: number) => Place[]

export interface Place {
  left: number
  top: number
}

export type PlacementName = keyof typeof placements

/** One symbol beside the text; two in opposite corners; three, and four, in corners: the text stands between. */
export const placements = {
  one: ({ width }, side) => [{ left: width - side, top: 0 }],
  two: ({ width, height }, side) => [
    { left: width - side, top: 0 },
    { left: 0, top: height - side },
  ],
  three: ({ width, height }, side) => [
    { left: width - side, top: 0 },
    { left: 0, top: height - side },
    { left: width - side, top: height - side },
  ],
  four: ({ width, height }, side) => [
    { left: width - side, top: 0 },
    { left: 0, top: height - side },
    { left: width - side, top: height - side },
    { left: 0, top: 0 },
  ],
  /** At the middle of the two ends, for comparison. */
  ends: ({ width, height }, side) => [
    { left: width - side, top: Math.round((height - side) / 2) },
    { left: 0, top: Math.round((height - side) / 2) },
  ],
} satisfies Record<string, Placement>
