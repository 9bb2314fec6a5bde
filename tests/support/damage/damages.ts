import { type Frame, handheld, type Picture, photograph, type Shot, throughLens } from './camera.ts'
import { type Chance, chanceOf } from './chance.ts'
import type { GreyImage } from './grey-image.ts'
import { type Oil, oilFilm, underFilm } from './oil.ts'
import { creased, smeared } from './wear.ts'

/** What happened to a label before its picture is taken. Every picture is taken by hand, whatever the damage. */
export interface Damage {
  name: string
  oil?: Oil
  /** Wiped over while the print was wet. */
  smear?: 'always' | 'half'
  crease?: 'always' | 'half'
  /** Out of focus by so many dots, from and to. */
  blur?: [number, number]
}

const mixed = (share: number): Oil => ({ share, kind: 'mixed' })
const worn = { smear: 'half', crease: 'half', blur: [0.3, 1.2] } satisfies Omit<Damage, 'name'>

/** From a clean label to the worst that is looked at, each by its name. */
export const damages = {
  clean: { name: 'clean' },
  smear: { name: 'smear', smear: 'always' },
  blur: { name: 'out of focus', blur: [1, 1.6] },
  crease: { name: 'crease', crease: 'always' },
  spatter: { name: 'spatter 5 %', oil: { ...mixed(0.05), drops: [30, 60] } },
  oil2: { name: 'oil 2 %', oil: mixed(0.02) },
  oil5: { name: 'oil 5 %', oil: mixed(0.05) },
  oil10: { name: 'oil 10 %', oil: mixed(0.1) },
  oil20: { name: 'oil 20 %', oil: mixed(0.2) },
  opaque10: { name: 'opaque oil 10 %', oil: { share: 0.1, kind: 'opaque' } },
  opaque20: { name: 'opaque oil 20 %', oil: { share: 0.2, kind: 'opaque' } },
  garage10: { name: 'oil 10 % and worn', oil: mixed(0.1), ...worn },
  garage20: { name: 'oil 20 % and worn', oil: mixed(0.2), ...worn },
} satisfies Record<string, Damage>

/** One misfortune, the same for every label of this size that meets it: what it does, and how it is looked at. */
export interface Mishap {
  /** The label after it, as the lens shows it. */
  befalls(label: GreyImage): GreyImage
  /** A picture of part of the damaged label; parts of one label are seen alike. */
  seen(label: GreyImage, frame: Frame): Picture
}

/** The mishap of this kind that the seed stands for. */
export function mishapOf(damage: Damage, size: { width: number; height: number }, seed: number): Mishap {
  const film = damage.oil ? oilFilm(size, damage.oil, chanceOf(4 * seed)) : null
  const hand = chanceOf(4 * seed + 1)
  const usual = handheld(hand)
  const shot: Shot = damage.blur ? { ...usual, blur: hand.between(...damage.blur) } : usual
  return {
    befalls(label) {
      // Its own chance, so that smear and crease do not move the blots.
      const chance = chanceOf(4 * seed + 2)
      let worn = label
      if (happens(damage.smear, chance)) worn = smeared(worn, chance.whole(2, 5), chance)
      if (happens(damage.crease, chance)) worn = creased(worn, chance)
      return throughLens(film ? underFilm(worn, film) : worn, shot)
    },
    seen: (label, frame) => photograph(label, frame, shot, chanceOf(4 * seed + 3)),
  }
}

function happens(how: Damage['smear'], chance: Chance): boolean {
  return how === 'always' || (how === 'half' && chance.between(0, 1) < 0.5)
}
