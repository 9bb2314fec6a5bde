import type { PartKind } from './name-ends.ts'

const pumpFeatures = ['ports', 'bolt holes', 'threads', 'shaft and drive', 'connectors', 'studs']
const boltFeatures = ['thread', 'length', 'head', 'class']
const discFeatures = ['outer diameter', 'thickness', 'tabs or splines']
const gearFeatures = ['teeth', 'width', 'bore', 'keyway or splines', 'marks']
const sealFeatures = ['outer diameter', 'inner diameter', 'width']

/**
 * What two parts of a kind are held side by side for. Common practice; that the old part is kept until then is a rule of
 * service manuals. A kind that is not here has what any part has.
 */
export const featuresByKind: Partial<Record<PartKind, readonly string[]>> = {
  gasket: ['outline', 'bolt holes', 'water and oil holes', 'thickness'],
  seal: [...sealFeatures, 'way of the lip'],
  'o-ring': ['inner diameter', 'thickness of the cord', 'material'],
  washer: ['inner diameter', 'outer diameter', 'thickness', 'material'],
  filter: ['thread', 'seal', 'diameter', 'length'],

  'cylinder head': [
    'outline',
    'ports',
    'bolt holes',
    'water and oil holes',
    'threads',
    'sensor and plug holes',
  ],
  block: ['outline', 'bores', 'bolt holes', 'water and oil holes', 'threads', 'mounts'],
  liner: ['bore', 'outer diameter', 'length', 'flange', 'seal grooves'],
  cover: ['outline', 'bolt holes', 'ports', 'threads', 'seal seats', 'connectors'],
  manifold: ['ports', 'outline of the flanges', 'bolt holes', 'threads', 'brackets'],

  valve: ['diameter of the head', 'diameter of the stem', 'length', 'lock groove', 'angle of the face'],
  'valve spring': ['length', 'diameter', 'wire', 'number of coils', 'way it is wound', 'colour mark'],
  'spring retainer': ['diameter', 'height', 'taper', 'groove'],
  follower: ['diameter', 'height', 'face', 'oil holes'],
  shim: ['diameter', 'thickness', 'mark'],
  camshaft: ['lobes', 'journals', 'length', 'drive end', 'sensor wheel', 'oil holes', 'marks'],

  crankshaft: [
    'journals',
    'stroke',
    'length',
    'drive end',
    'flywheel bolt holes',
    'oil holes',
    'sensor wheel',
  ],
  'bearing shell': ['width', 'thickness or colour mark', 'tang', 'oil holes', 'groove'],
  'thrust washer': ['thickness', 'diameter', 'tang', 'grooves'],
  'connecting rod': ['length', 'big end', 'small end', 'width', 'bolts', 'weight'],
  piston: ['diameter', 'crown', 'height above the pin', 'pin bore', 'ring grooves', 'marks'],
  'piston ring': ['diameter', 'width', 'thickness', 'profile', 'marks'],
  'piston pin': ['diameter', 'length', 'ends'],
  flywheel: ['bolt holes', 'ring gear', 'friction face', 'height', 'sensor marks', 'dowels'],
  pulley: ['grooves', 'diameter', 'bore', 'offset', 'keyway', 'marks'],

  chain: ['number of links', 'pitch', 'width', 'type of link', 'marked links'],
  belt: ['number of teeth or ribs', 'width', 'length', 'shape of the teeth'],
  sprocket: [...gearFeatures, 'offset'],
  tensioner: ['bolt holes', 'length of the plunger', 'oil hole', 'seal', 'lock pin'],
  idler: ['diameter', 'width', 'bolt hole', 'offset'],
  'chain guide': ['length', 'curve', 'bolt holes', 'width'],

  'water pump': pumpFeatures,
  'oil pump': pumpFeatures,
  pump: pumpFeatures,
  thermostat: ['temperature on it', 'diameter of the flange', 'length', 'vent', 'seal'],
  radiator: ['ports', 'mounts', 'size of the core', 'filler neck', 'sensor threads', 'brackets'],
  hose: ['bends', 'bores', 'length', 'branches', 'kind for oil or water or fuel'],
  pipe: ['bends', 'ends', 'bore', 'length', 'brackets'],
  clamp: ['range', 'width', 'type'],

  injector: ['connector', 'tip', 'length', 'seals', 'number on it'],
  'spark plug': ['thread', 'reach', 'seat', 'hex', 'gap', 'heat range'],
  'glow plug': ['thread', 'length', 'tip', 'terminal', 'voltage'],
  sensor: ['connector', 'thread', 'length', 'seal', 'number on it'],
  connector: ['pins', 'shape', 'key', 'colour', 'seal'],

  'friction plate': discFeatures,
  'steel plate': discFeatures,
  'pressure plate': ['diameter', 'bolt holes', 'height', 'spring fingers', 'dowels'],
  gear: gearFeatures,
  shaft: ['length', 'diameters', 'splines', 'grooves', 'threads'],
  bearing: ['number on it', 'bore', 'outer diameter', 'width', 'shields or seals', 'groove'],
  bush: ['bore', 'outer diameter', 'length', 'oil hole'],

  'stretch bolt': boltFeatures,
  bolt: boltFeatures,
  stud: ['thread at both ends', 'length', 'length of both threads', 'class'],
  nut: ['thread', 'height', 'flats', 'lock', 'class'],
  'threaded plug': ['thread', 'length', 'head', 'sealing face', 'magnet'],
  dowel: ['diameter', 'length', 'hollow or solid'],
  circlip: ['diameter', 'thickness', 'inside or outside'],
  spring: ['length', 'diameter', 'wire', 'number of coils', 'ends'],
}
