import type { ChecksTable } from '../check.ts'

/**
 * Castings. Cracks near studs, plugs and in sharp corners, mating flanges for warpage with a straight-edge and for
 * discolouration by leaks, tapped holes for damaged threads: TM 9-2815-202-34, paragraph 3-2. The rest is common practice.
 */
export const castingChecks = {
  'cylinder head': {
    clean: ['joint face', 'combustion chambers', 'water and oil holes'],
    look: [
      'cracks between the valve seats',
      'cracks at the plug or injector holes',
      'corrosion at the water holes',
      'burnt or pitted valve seats',
      'marks of the gasket leaking',
      'thread damage',
      'score in the cam bearings',
    ],
    measure: ['flatness', 'clearance of the valve guides', 'bores of the cam bearings'],
  },
  block: {
    clean: ['joint faces', 'bolt holes to the bottom', 'oil ways', 'water ways'],
    look: [
      'cracks',
      'score in the bores',
      'ridge at the top of the bores',
      'corrosion at the water holes',
      'rust at the core plugs',
      'thread damage',
      'loose dowels',
    ],
    measure: [
      'flatness',
      'bores',
      'taper of the bores',
      'out of round of the bores',
      'bores of the main bearings',
    ],
  },
  'gearbox case': {
    clean: ['joint faces', 'oil ways', 'magnet and sump'],
    look: [
      'cracks',
      'bearing seats that turned or are worn',
      'thread damage',
      'loose dowels',
      'loose bushes',
    ],
    measure: ['bores of the bearing seats', 'flatness'],
  },
  cover: {
    clean: ['joint face', 'gasket groove'],
    look: ['cracks', 'bent flange', 'corrosion', 'marks of leaking', 'thread damage', 'worn seal seat'],
    measure: ['flatness'],
  },
  manifold: {
    clean: ['joint faces', 'carbon in the ports'],
    look: ['cracks', 'burnt or leaking joint faces', 'corrosion', 'broken studs', 'thread damage'],
    measure: ['flatness across all ports'],
  },
  bracket: { look: ['cracks', 'bent arms', 'worn or long holes', 'thread damage'] },
  'rubber mount': { look: ['cracked rubber', 'rubber loose from its metal', 'oil soaking', 'sagging'] },
} as const satisfies ChecksTable
