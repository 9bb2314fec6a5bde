/**
 * The shares of mistakes by which they are drawn, of 100, from the table in section 1 of the trade notes: 122 quality lapses of
 * one airline over three years, as Reason counted them. The split of a figure among several kinds of mistake, and among ways
 * in which one is made, is a choice of this program.
 */
export const SHARES = { omission: 56, 'wrong installation': 30, 'wrong part': 8, other: 6 } as const

const LAPSES = '122 quality lapses of one airline (Reason)'

/** Within the omissions, in per cent of them. */
const OMITTED = {
  'fasteners undone or incomplete': 22,
  'items left locked, pins not removed': 13,
  'caps loose or missing': 11,
  'items loose or disconnected': 10,
  'spacers, washers, seals missing': 10,
  'tools or spare fasteners left in': 10,
  'no lubrication': 7,
  'panels left off': 3,
  'the rest': 14,
} as const

export type Omitted = keyof typeof OMITTED

/** Of 100 mistakes, a part of one figure within the omissions. */
export function ofOmissions(kind: Omitted, part: number): { weight: number; from: string } {
  return {
    weight: (SHARES.omission * OMITTED[kind] * part) / 100,
    from: `${LAPSES}: omissions 56 %, within them ${kind} ${OMITTED[kind]} %`,
  }
}

/** Of 100 mistakes, a part of one of the other figures. */
export function ofGroup(
  group: Exclude<keyof typeof SHARES, 'omission'>,
  part: number,
): { weight: number; from: string } {
  return { weight: SHARES[group] * part, from: `${LAPSES}: ${group} ${SHARES[group]} %` }
}
