import type { ChecksTable } from '../check.ts'

/**
 * Clutch and gearbox. Gears: cracks, worn, galled or pitted teeth, keyways, splines, TM 9-2320-387-24-1, paragraph 2-15. Ball
 * and roller bearings: rust, pits, dents of the races, abrasion, discolouration, TM 9-2320-360-34-1, paragraph 2-10. Splines
 * with peening and fatigue cracks: TM 5-4210-233-14&P-1, paragraph 4-9.3. Bushes: fit, wear, out-of-round, oil holes, TM
 * 9-2815-202-34, paragraph 3-2. The rest is common practice.
 */
export const gearboxChecks = {
  'friction plate': {
    look: [
      'worn or glazed lining',
      'burnt lining',
      'oil soaking',
      'loose rivets or springs',
      'worn tabs or splines',
    ],
    measure: ['thickness', 'flatness'],
  },
  'steel plate': { look: ['blueing', 'score', 'worn tabs'], measure: ['flatness', 'thickness'] },
  'pressure plate': {
    look: ['heat cracks', 'blueing', 'score', 'worn spring fingers', 'loose rivets'],
    measure: ['flatness', 'height of the spring fingers'],
  },
  'clutch basket': {
    look: ['wear steps from the plate tabs', 'cracks', 'loose rivets or springs', 'worn bush'],
    measure: ['depth of the wear steps'],
  },
  gear: {
    look: [
      'chipped or broken teeth',
      'pitting',
      'galling',
      'cracks',
      'blueing',
      'rounded dogs',
      'worn keyway or splines',
    ],
    measure: ['backlash', 'bore'],
    compare: ['contact pattern with its mate'],
  },
  shaft: {
    clean: ['oil ways'],
    look: [
      'score',
      'wear step',
      'worn splines',
      'cracks',
      'blueing',
      'worn circlip grooves',
      'thread damage',
    ],
    measure: ['diameter of the journals', 'run-out'],
  },
  bearing: {
    clean: ['old grease where it is not sealed'],
    look: [
      'rough turning',
      'pitting',
      'rust',
      'dents in the races',
      'blueing',
      'cracks',
      'marks of turning in its seat',
    ],
    measure: ['radial play'],
  },
  bush: {
    clean: ['oil hole'],
    look: ['score', 'wear to one side', 'blueing', 'loose fit in its seat'],
    measure: ['bore', 'clearance'],
  },
  'selector fork': {
    look: ['worn or blued ends', 'bends', 'cracks', 'worn guide pin'],
    measure: ['thickness of the ends', 'clearance in the groove'],
  },
  'selector drum': {
    look: ['worn tracks', 'score', 'worn detent star', 'loose pins'],
    measure: ['width of the tracks'],
  },
  'synchro ring': {
    look: ['worn inner threads', 'chipped teeth', 'cracks'],
    measure: ['gap to its cone'],
    compare: ['grip on its cone with the others'],
  },
} as const satisfies ChecksTable
