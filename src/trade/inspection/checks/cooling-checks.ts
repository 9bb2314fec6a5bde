import type { ChecksTable } from '../check.ts'

/**
 * Cooling and what carries fluids. Water pump: bearings, cracked or corroded impeller, scored shaft, pitted body, TM
 * 9-2320-272-24-2. Thermostat in heated water: TM 5-3820-254-14&P, paragraph 4-18. Hoses and tubes: frayed, kinked, rubbed,
 * corroded, damaged fittings, TM 5-4210-233-14&P-1, paragraph 4-9.3; hoses that are twisted or bulge, AC 43.13-1B, paragraph
 * 6-73. The rest is common practice.
 */
export const coolingChecks = {
  'water pump': {
    clean: ['joint face', 'drain hole'],
    look: [
      'rough or loose bearing',
      'traces of coolant at the drain hole',
      'corroded or loose impeller',
      'cracks and pitting in the body',
      'worn pulley or drive',
    ],
    measure: ['end play of the shaft', 'clearance of the impeller'],
  },
  impeller: { look: ['cracks', 'corrosion', 'pitting', 'loose fit on the shaft', 'marks of touching'] },
  thermostat: {
    look: ['a gap when cold', 'sticking in heated water', 'corrosion', 'damaged seat or seal'],
    measure: ['height of the valve when fully open'],
    compare: ['opening temperature with the figure on it'],
  },
  radiator: {
    clean: ['fins', 'inside by a flush both ways'],
    look: [
      'leaks at tanks and seams',
      'corroded or bent fins',
      'cracked necks',
      'thread damage',
      'scale or oil inside',
    ],
  },
  hose: {
    look: [
      'cracks',
      'soft or bulged places',
      'hard ends',
      'rubbed places',
      'kinks',
      'oil soaking',
      'lining that is loose',
    ],
  },
  pipe: {
    clean: ['bore'],
    look: [
      'cracks at flares and joints',
      'dents and kinks',
      'rubbed places',
      'corrosion',
      'damaged fittings',
    ],
  },
  clamp: { look: ['stripped screw', 'cracked or bent band', 'rust', 'weak spring'] },
} as const satisfies ChecksTable
