import type { ChecksTable } from '../check.ts'

/**
 * The valve gear. Valves: cupped, cracked or burnt heads, pitted faces, stem wear and bends, worn lock grooves, TM
 * 9-6115-604-34, paragraph 9-8, and TM 9-2815-225-34&P, paragraph 3-35. Springs: nicks, cracks, surface corrosion, free
 * length, NAVEDTRA 14076, chapter 3; so are worn keepers. Rockers and their shafts: TM 9-6115-604-34, paragraph 9-13.
 * Camshaft: run-out on V-blocks, scored journals and thrust faces, keyways, TM 9-2815-202-34. The rest is common practice.
 */
export const valveChecks = {
  valve: {
    clean: ['carbon under the head', 'stem'],
    look: [
      'burnt or cupped head',
      'cracks',
      'pitted face',
      'bent stem',
      'score on the stem',
      'worn lock groove',
      'worn tip',
    ],
    measure: ['diameter of the stem', 'run-out of the stem', 'thickness of the head rim'],
    compare: ['contact ring on the face with the ring on its seat'],
  },
  'valve spring': {
    look: ['cracks', 'nicks', 'rust pits', 'coils that touched', 'leaning to one side'],
    measure: ['free length'],
    compare: ['length with the others', 'load on a spring tester with the others'],
  },
  'spring retainer': {
    look: ['cracks', 'worn taper', 'worn groove', 'burrs'],
    compare: ['fit of locks in the groove'],
  },
  follower: {
    clean: ['oil holes', 'varnish'],
    look: ['pitting on the face', 'score', 'hollow worn face', 'wear step', 'blueing'],
    measure: ['diameter', 'clearance in its bore'],
    compare: ['wear with the lobe that runs on it'],
  },
  shim: {
    look: ['wear step', 'pitting', 'cracks', 'dents'],
    measure: ['thickness'],
    compare: ['thickness with its mark'],
  },
  rocker: {
    clean: ['oil holes'],
    look: [
      'pitting or score on the pad',
      'worn roller',
      'thread damage on the adjuster',
      'worn adjuster tip',
      'cracks',
    ],
    measure: ['bore', 'clearance on the shaft'],
  },
  'push rod': {
    clean: ['oil bore'],
    look: ['worn ends', 'loose ends', 'bends'],
    measure: ['run-out', 'length'],
  },
  'valve guide': {
    clean: ['carbon in the bore'],
    look: ['cracks', 'chips', 'score', 'loose fit in the head'],
    measure: ['bore', 'clearance of the stem'],
  },
  camshaft: {
    clean: ['oil holes', 'journals'],
    look: [
      'pitted lobes',
      'score on lobes or journals',
      'wear step',
      'blueing',
      'worn thrust face',
      'thread damage',
      'worn keyway',
    ],
    measure: ['height of the lobes', 'diameter of the journals', 'run-out', 'end float', 'oil clearance'],
  },
  'bearing cap': {
    clean: ['joint faces', 'bolt holes', 'oil holes'],
    look: ['score', 'cracks', 'burrs on the joint face', 'its number and arrow'],
    measure: ['bore', 'oil clearance'],
    compare: ['number and arrow with its place'],
  },
} as const satisfies ChecksTable
