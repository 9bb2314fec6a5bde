/**
 * The shares of mistakes by which they are drawn, as Reason counted them in 122 quality lapses of one airline over three years:
 * as a trade article quotes them down to the caps, those below from memory; "the rest" is what is left of 100. How a figure is
 * split among several kinds of mistake, and among ways in which one is made, is a choice of this program; so is what comes on
 * top, as broken-off work. They are weights beside each other and no per cent of all.
 */
const SHARES = { omission: 56, 'wrong installation': 30, 'wrong part': 8, other: 6 } as const

export type Group = keyof typeof SHARES

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

/** How often a kind of mistake is drawn, beside the others. */
export interface Share {
  group: Group
  weight: number
  /** What the weight rests on. */
  from: string
}

/** A part of one figure within the omissions. */
export function ofOmissions(kind: Omitted, part: number): Share {
  return {
    group: 'omission',
    weight: (SHARES.omission * OMITTED[kind] * part) / 100,
    from: `${LAPSES}: omissions 56 %, within them ${kind} ${OMITTED[kind]} %`,
  }
}

/** A part of one of the other figures. */
export function ofGroup(group: Exclude<Group, 'omission'>, part: number): Share {
  return { group, weight: SHARES[group] * part, from: `${LAPSES}: ${group} ${SHARES[group]} %` }
}
