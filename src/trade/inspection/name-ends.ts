/** How a kind of thing is told by the words of its name, all in the singular, without hyphens. */
export interface NameEnds {
  /** How names of the kind end: `spring` is any name that ends so, where no longer end of another kind fits. */
  ends?: readonly string[]
  /** Words that mean the kind only as a whole name: `head` is a cylinder head, `bolt head` is not. */
  alone?: readonly string[]
}

/** The kinds of things that come off engines and gearboxes, in English trade words. Common practice. */
export const nameEnds = {
  'cylinder head': { ends: ['cylinder head', 'cyl head'], alone: ['head'] },
  block: { ends: ['engine block', 'cylinder block', 'crankcase', 'engine case'], alone: ['block'] },
  'gearbox case': {
    ends: [
      'gearbox case',
      'gearbox casing',
      'gearbox housing',
      'transmission case',
      'transmission housing',
      'bell housing',
      'bellhousing',
    ],
  },
  liner: {
    ends: ['cylinder liner', 'cylinder sleeve', 'wet liner', 'dry liner', 'cylinder barrel'],
    alone: ['cylinder', 'liner', 'barrel'],
  },
  cover: { ends: ['cover', 'housing', 'pump body', 'oil pan', 'sump', 'end plate'], alone: ['pan', 'lid'] },
  manifold: { ends: ['manifold', 'header', 'header pipe', 'exhaust pipe', 'down pipe', 'downpipe'] },

  valve: {
    ends: ['intake valve', 'inlet valve', 'exhaust valve', 'poppet valve', 'engine valve'],
    alone: ['valve'],
  },
  'valve spring': { ends: ['valve spring'] },
  'spring retainer': {
    ends: ['spring retainer', 'valve retainer', 'spring seat', 'collet', 'keeper', 'valve cotter'],
  },
  follower: { ends: ['bucket', 'lifter', 'tappet', 'follower', 'lash adjuster'] },
  shim: { ends: ['shim'] },
  rocker: { ends: ['rocker', 'rocker arm', 'rocker gear'] },
  'push rod': { ends: ['push rod', 'pushrod'] },
  'valve guide': { ends: ['valve guide'] },
  camshaft: { ends: ['camshaft', 'cam shaft', 'cam'] },
  'bearing cap': {
    ends: [
      'cam cap',
      'camshaft cap',
      'bearing cap',
      'main cap',
      'con rod cap',
      'connecting rod cap',
      'big end cap',
      'cam holder',
      'camshaft holder',
      'cam carrier',
    ],
    alone: ['rod cap'],
  },

  crankshaft: { ends: ['crankshaft', 'crank shaft'], alone: ['crank'] },
  'bearing shell': { ends: ['shell', 'bearing insert', 'bearing half'] },
  // A plain bearing in most engines, of balls or rollers in some.
  'crank bearing': {
    ends: [
      'main bearing',
      'crank bearing',
      'crankshaft bearing',
      'big end bearing',
      'con rod bearing',
      'connecting rod bearing',
    ],
    alone: ['rod bearing'],
  },
  'thrust washer': { ends: ['thrust washer', 'thrust plate'] },
  'connecting rod': { ends: ['connecting rod', 'con rod', 'conrod'], alone: ['rod'] },
  piston: { alone: ['piston'] },
  'piston ring': {
    ends: ['piston ring', 'compression ring', 'oil ring', 'oil control ring', 'scraper ring', 'ring set'],
  },
  'piston pin': { ends: ['piston pin', 'gudgeon pin', 'wrist pin'] },
  flywheel: { ends: ['flywheel', 'fly wheel', 'flexplate', 'flex plate'] },
  pulley: { ends: ['pulley', 'crank damper', 'vibration damper', 'harmonic balancer'] },

  chain: { ends: ['chain'] },
  belt: {
    ends: ['timing belt', 'cam belt', 'toothed belt', 'v belt', 'drive belt', 'fan belt', 'alternator belt'],
    alone: ['belt'],
  },
  sprocket: { ends: ['sprocket', 'chain wheel'] },
  tensioner: { ends: ['tensioner', 'tensioner body', 'tensioner lifter', 'chain adjuster'] },
  idler: { ends: ['idler', 'idler pulley', 'tensioner pulley', 'belt tensioner', 'tensioner roller'] },
  'chain guide': {
    ends: [
      'chain guide',
      'chain runner',
      'chain slipper',
      'chain blade',
      'guide rail',
      'tensioner blade',
      'tensioner arm',
      'tensioner rail',
      'tensioner guide',
    ],
  },

  'water pump': { ends: ['water pump', 'coolant pump'] },
  impeller: { ends: ['impeller'] },
  'oil pump': { ends: ['oil pump', 'scavenge pump'] },
  'pump rotor': { ends: ['pump rotor', 'oil pump gear'] },
  pump: { ends: ['pump'] },
  'relief valve': { ends: ['relief valve', 'bypass valve'] },
  strainer: { ends: ['strainer', 'oil pickup', 'oil pick up', 'pickup pipe', 'oil screen'] },
  thermostat: { ends: ['thermostat'] },
  radiator: { ends: ['radiator', 'oil cooler', 'intercooler', 'heat exchanger'] },
  hose: { ends: ['hose'] },
  pipe: { ends: ['pipe', 'fuel line', 'oil line', 'coolant line', 'injector line', 'injection line'] },
  clamp: { ends: ['hose clamp', 'hose clip', 'pipe clamp', 'pipe clip'], alone: ['clamp'] },

  injector: { ends: ['injector'] },
  'spark plug': { ends: ['spark plug', 'sparking plug'] },
  'glow plug': { ends: ['glow plug'] },
  sensor: {
    ends: [
      'sensor',
      'sender',
      'sending unit',
      'sender unit',
      'pressure switch',
      'temperature switch',
      'neutral switch',
      'fan switch',
    ],
  },
  connector: { ends: ['connector', 'wiring plug', 'harness', 'loom'] },

  'friction plate': {
    ends: ['clutch plate', 'clutch disc', 'clutch disk', 'friction plate', 'friction disc', 'driven plate'],
  },
  'steel plate': { ends: ['steel plate', 'plain plate'] },
  'pressure plate': { ends: ['pressure plate'] },
  'clutch basket': { ends: ['clutch basket', 'clutch drum', 'clutch hub'] },
  gear: { ends: ['gear', 'gear wheel', 'gearwheel', 'crown wheel', 'pinion'] },
  shaft: { ends: ['shaft', 'mainshaft', 'layshaft', 'countershaft', 'spindle'] },
  bearing: { ends: ['bearing'] },
  bush: { ends: ['bush', 'bushing'] },
  'selector fork': { ends: ['selector fork', 'shift fork', 'gear fork'] },
  'selector drum': { ends: ['selector drum', 'shift drum'] },
  'synchro ring': {
    ends: ['synchro ring', 'synchroniser ring', 'synchronizer ring', 'baulk ring', 'blocker ring'],
  },

  'stretch bolt': {
    ends: [
      'stretch bolt',
      'yield bolt',
      'cylinder head bolt',
      'con rod bolt',
      'conrod bolt',
      'connecting rod bolt',
      'big end bolt',
      'main cap bolt',
      'main bearing bolt',
    ],
    alone: ['head bolt', 'rod bolt'],
  },
  bolt: { ends: ['bolt', 'screw', 'capscrew', 'setscrew'] },
  stud: { ends: ['stud'] },
  nut: { ends: ['nut'] },
  'threaded plug': { ends: ['drain plug', 'sump plug', 'filler plug', 'level plug', 'gallery plug'] },
  dowel: { ends: ['dowel', 'dowel pin', 'locating pin'] },
  circlip: { ends: ['circlip', 'snap ring', 'retaining ring'] },
  spring: { ends: ['spring'] },
  bracket: { ends: ['bracket'] },
  'rubber mount': { ends: ['engine mount', 'gearbox mount', 'rubber mount'], alone: ['mount'] },

  gasket: { ends: ['gasket'] },
  seal: { ends: ['seal'] },
  'o-ring': { ends: ['o ring', 'oring'] },
  washer: { ends: ['washer'] },
  filter: { ends: ['filter'] },
} as const satisfies Record<string, NameEnds>

export type PartKind = keyof typeof nameEnds

/** Ends of names that look like one of these kinds, and are other things. */
export const otherEnds: readonly string[] = [
  'seat cover',
  'dust cover',
  'clutch lifter',
  'valve gear',
  'landing gear',
  'steering gear',
  'safety chain',
  'lifting chain',
  'snow chain',
  'suspension spring',
  'headlight washer',
  'screen washer',
]
