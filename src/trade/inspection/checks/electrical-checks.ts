import type { ChecksTable } from '../check.ts'

/**
 * Ignition, injection, sensors, wiring. Corroded pins of connectors: AC 43.13-1B, paragraph 6-77; chafed or burnt insulation
 * and loose terminals: TM 5-4210-233-14&P-1, paragraph 4-9.3. The rest is common practice.
 */
export const electricalChecks = {
  injector: {
    clean: ['outside before its caps come off', 'seat in the head'],
    look: ['leaks', 'carbon at the tip', 'damaged tip', 'cracked connector', 'worn seal grooves'],
    compare: ['spray and rate with the others on a test bench'],
  },
  'spark plug': {
    look: [
      'cracked insulator',
      'worn electrodes',
      'oil or soot or glaze on the tip',
      'thread damage',
      'damaged seat',
    ],
    measure: ['gap'],
    compare: ['colour of the tip with the other cylinders'],
  },
  'glow plug': {
    clean: ['carbon in its bore'],
    look: ['burnt or swollen tip', 'cracks', 'thread damage', 'loose terminal'],
    compare: ['resistance with the others'],
  },
  sensor: {
    clean: ['tip'],
    look: ['cracks', 'corroded pins', 'thread damage', 'rubbed tip', 'chafed lead'],
  },
  connector: {
    look: [
      'corroded or bent pins',
      'spread sockets',
      'missing seal',
      'broken latch',
      'chafed or burnt insulation',
    ],
  },
} as const satisfies ChecksTable
