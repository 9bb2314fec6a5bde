import type { Lot, Machine, Part, Thing } from './machine.ts'

/** A machine with one of everything that a mistake can be made at, in as few lines as will hold it. */
export const ONE_OF_EACH: Machine = {
  shape: 'one of everything',
  seed: 0,
  steps: [
    {
      title: 'front fan panel off',
      after: [],
      hides: false,
      critical: false,
      things: [
        part('front fan panel', { isCap: true }),
        lot('front fan screws', 2, null),
        { kind: 'fluid', name: 'coolant', litres: '2.5 L' },
        { kind: 'aid', name: 'left pump magnet', where: null },
      ],
    },
    {
      title: 'left chain cover off',
      after: [0],
      hides: true,
      critical: true,
      things: [
        part('left chain cover', { isCap: true }),
        lot('left chain bolts', 3, { text: '10 Nm, 20 Nm, dry', kinds: ['torque', 'torque'], layout: null }),
        part('left chain gasket', { isSingleUse: true }),
        { kind: 'put-on', verb: 'sealant', text: 'grey sealant on the left chain face' },
        { kind: 'mark', text: 'paint line across the joint' },
        { kind: 'aid', name: 'left chain pin', where: 'left chain bore' },
      ],
    },
    {
      title: 'inner cam carrier off',
      after: [1],
      hides: false,
      critical: false,
      things: [
        part('inner cam carrier', { check: 'look for cracks' }),
        {
          kind: 'set',
          name: 'inner cam caps',
          one: 'inner cam cap',
          positions: ['A1', 'A2', 'A3'],
          check: 'look for score',
          marked: ['A2'],
        },
        lot('inner cam nuts', 2, { text: '10 Nm, 90 deg, oiled', kinds: ['torque', 'angle'], layout: null }),
        mixed('rear gear bolts', 'M6x25', ['1', '3']),
        mixed('rear gear bolts', 'M6x40', ['2']),
        part('rear gear crush washer', { isSingleUse: true, isPlain: true }),
        hose('upper coil hose', 'upper coil inlet', 'upper coil outlet'),
        hose('lower coil hose', 'lower coil inlet', 'lower coil outlet'),
        { kind: 'aid', name: 'outer intake rag', where: 'outer intake port' },
      ],
    },
  ],
  extra: [{ kind: 'inspect', title: 'what lies beneath', after: 2, before: 1 }],
}

function part(name: string, own: Partial<Omit<Part, 'kind' | 'name'>>): Part {
  return { kind: 'part', name, isSingleUse: false, isPlain: false, isCap: false, check: null, ...own }
}

function lot(name: string, count: number, passes: Lot['passes']): Lot {
  const one = name.replace(/s$/, '')
  return {
    kind: 'lot',
    name,
    one,
    count,
    size: 'M6x20',
    drive: 'hex 10',
    at: null,
    isSingleUse: false,
    passes,
  }
}

/** One length of two of the same name: each place takes its own. */
function mixed(name: string, size: string, at: string[]): Lot {
  return { ...lot(name, at.length, null), size, drive: 'hex 8', at }
}

function hose(name: string, from: string, to: string): Thing {
  return { kind: 'hose', name, ends: [from, to] }
}
