import type { ChecksTable } from '../check.ts'

/**
 * Crank, rods, pistons, bores. Crankshaft and shells: scores, pits, cracks, overheating, taper, out-of-round, bright spots on
 * shell backs, thickness of thrust washers, TM 5-3805-262-34, paragraph 4-1; bend by dial gauge and end play, TM
 * 10-3930-653-14&P. Pistons, pins and rods: scuffed skirts, wavy lands, eroded crown edges, etched pins, signs of a bent rod,
 * TM 5-3820-254-14&P. Liners: out-of-round, taper, cracks, score, flange, erosion, TM 10-3930-243-34; pits outside and a
 * honing pattern that is gone, TM 5-3805-281-24-2. The rest is common practice.
 */
export const crankChecks = {
  crankshaft: {
    clean: ['oil ways', 'journals', 'threads'],
    look: [
      'score on the journals',
      'cracks at the fillets and oil holes',
      'blueing',
      'groove under the seal',
      'worn thrust faces',
      'worn keyway',
      'thread damage',
    ],
    measure: [
      'journals',
      'taper of the journals',
      'out of round of the journals',
      'run-out',
      'end float',
      'oil clearance',
    ],
  },
  'bearing shell': {
    clean: ['back', 'oil hole'],
    look: [
      'score',
      'pitting',
      'flaking',
      'blueing',
      'dirt in the metal',
      'bright spots on the back',
      'worn tang',
    ],
    measure: ['oil clearance', 'thickness'],
    compare: ['wear with the other shells in their order'],
  },
  'crank bearing': {
    look: ['score', 'pitting', 'flaking', 'blueing', 'rough turning of balls or rollers'],
    measure: ['clearance'],
    compare: ['wear with the other bearings in their order'],
  },
  'thrust washer': {
    look: ['score', 'blueing', 'worn grooves', 'cracks'],
    measure: ['thickness', 'end float'],
  },
  'connecting rod': {
    clean: ['oil ways', 'joint faces'],
    look: [
      'cracks',
      'bend or twist',
      'blueing',
      'burrs on the joint faces',
      'score in the small end',
      'its number and side',
    ],
    measure: ['bore of the big end', 'bore of the small end', 'side clearance'],
    compare: ['number on the rod with the number on its cap'],
  },
  piston: {
    clean: ['ring grooves', 'oil holes', 'carbon on the crown'],
    look: [
      'scuffed skirt',
      'cracks',
      'broken or wavy ring lands',
      'eroded crown edge',
      'valve marks',
      'worn pin bore',
    ],
    measure: [
      'diameter of the skirt',
      'clearance in its cylinder',
      'side clearance of the rings',
      'bore for the pin',
    ],
    compare: ['mark on the crown with its cylinder and front'],
  },
  'piston ring': {
    clean: ['carbon'],
    look: ['score', 'broken ends', 'worn or flaked face', 'its mark for up'],
    measure: ['ring gap in its cylinder', 'side clearance in its groove'],
  },
  'piston pin': {
    look: ['score', 'etching', 'wear step', 'blueing', 'cracks'],
    measure: ['diameter', 'clearance in piston and rod'],
  },
  liner: {
    clean: ['outside and seat', 'seal grooves'],
    look: [
      'score',
      'honing pattern that is gone',
      'ridge at the top',
      'cracks',
      'pits or erosion outside',
      'damage at the flange',
    ],
    measure: ['bore', 'taper', 'out of round', 'height above the block'],
  },
  flywheel: {
    clean: ['friction face', 'crank seat'],
    look: ['heat cracks', 'blueing', 'score', 'worn or chipped ring gear teeth', 'worn bolt or dowel holes'],
    measure: ['run-out', 'flatness'],
  },
  pulley: {
    look: [
      'cracks',
      'worn or bent grooves',
      'groove under the seal',
      'rubber that moved or cracked',
      'worn keyway',
    ],
    measure: ['run-out'],
  },
} as const satisfies ChecksTable
