import type { ChecksTable } from '../check.ts'

/**
 * Fasteners and springs. Studs, bolts and nuts: bent, loose or stretched, damaged threads; springs: distorted or collapsed
 * coils; snap rings: obvious damage, TM 9-2320-387-24-1, paragraph 2-15. Necking, where the specification lets a stretch bolt
 * be used again: several service sheets. Metal on drain plugs: TM 9-2320-360-34-1, paragraph 2-10. The rest is common practice.
 */
export const fastenerChecks = {
  'stretch bolt': {
    clean: ['threads', 'under the head'],
    look: ['necking along a straight-edge', 'thread damage', 'bent shank', 'corrosion'],
    measure: ['length', 'diameter at the neck'],
    compare: ['what the manual says of using it again', 'length with a new one'],
  },
  bolt: {
    clean: ['threads', 'under the head'],
    look: ['thread damage', 'stretched or bent shank', 'rounded head', 'corrosion', 'old thread lock'],
  },
  stud: {
    clean: ['threads'],
    look: ['thread damage', 'loose fit in its hole', 'bends', 'stretch', 'corrosion'],
    measure: ['height it stands out'],
  },
  nut: {
    clean: ['threads'],
    look: ['thread damage', 'rounded flats', 'cracks', 'lock that no longer grips'],
  },
  'threaded plug': {
    clean: ['threads', 'magnet'],
    look: ['metal on it', 'thread damage', 'rounded head', 'damaged sealing face'],
  },
  dowel: { clean: ['its hole'], look: ['burrs', 'bends', 'loose fit', 'rust'] },
  circlip: { look: ['spread or bent ends', 'twist', 'worn edges', 'rust'] },
  spring: {
    look: ['cracks', 'bent or collapsed coils', 'worn ends', 'rust'],
    measure: ['free length'],
    compare: ['length with the others'],
  },
} as const satisfies ChecksTable
