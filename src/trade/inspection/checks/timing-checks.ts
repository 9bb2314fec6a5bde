import type { ChecksTable } from '../check.ts'

/** The timing drive, and drives alike. Common practice. */
export const timingChecks = {
  chain: {
    look: ['stretched links', 'stiff links', 'loose or cracked rollers and pins', 'rust', 'worn side plates'],
    measure: ['length over a number of links pulled tight'],
    compare: ['marked links with the marks on the sprockets'],
  },
  belt: {
    look: [
      'cracks',
      'missing or torn teeth',
      'frayed edges',
      'oil or coolant soaking',
      'glazing',
      'its direction arrow',
    ],
    compare: ['its age with what the manual allows'],
  },
  sprocket: {
    look: [
      'hooked or thin teeth',
      'chipped teeth',
      'cracks',
      'worn keyway or dowel hole',
      'loose bolt holes',
      'its timing mark',
    ],
    measure: ['run-out'],
  },
  tensioner: {
    clean: ['oil hole', 'plunger'],
    look: [
      'sticking plunger',
      'plunger that slips back',
      'worn ratchet',
      'score',
      'worn head',
      'weak spring',
    ],
    measure: ['length of the plunger out'],
  },
  idler: { look: ['rough or noisy bearing', 'side play', 'worn running face', 'grease lost', 'cracks'] },
  'chain guide': {
    look: ['grooves worn by the chain', 'cracks', 'loose or broken lining', 'worn pivot'],
    measure: ['depth of the grooves'],
  },
} as const satisfies ChecksTable
