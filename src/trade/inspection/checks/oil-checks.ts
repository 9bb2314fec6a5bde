import type { ChecksTable } from '../check.ts'

/** Oil and fuel pumps, and what belongs to them. Common practice. */
export const oilChecks = {
  'oil pump': {
    clean: ['joint face', 'relief valve and its bore', 'strainer'],
    look: [
      'score in the body or on the cover',
      'chipped rotors or gears',
      'worn drive',
      'sticking relief valve',
      'cracks',
    ],
    measure: [
      'clearance between the rotor tips',
      'clearance of the rotor in the body',
      'clearance at the end',
      'flatness of the cover',
    ],
  },
  'pump rotor': {
    look: ['score', 'chips', 'pitting', 'worn drive', 'its mark for the side'],
    measure: ['clearance between the rotor tips', 'clearance in the body', 'clearance at the end'],
  },
  pump: {
    clean: ['joint face', 'ports'],
    look: ['leaks', 'cracks', 'rough or loose shaft', 'worn drive', 'thread damage'],
  },
  'relief valve': {
    clean: ['bore'],
    look: ['sticking piston', 'score', 'worn seat', 'weak or broken spring'],
    measure: ['free length of the spring'],
  },
  strainer: { clean: ['mesh', 'bore'], look: ['torn mesh', 'cracks', 'loose pipe', 'metal in the mesh'] },
} as const satisfies ChecksTable
