import type { Where } from '../mistakes/mistake.ts'
import type { Gate } from './switches.ts'

/** The gates that stand one behind the other against one mistake, made at one thing of the machine with one of each. */
export interface Wall {
  mistake: string
  /** The thing that it is made at, a position of it, or a step. */
  at: string
  /** In the order in which it runs into them, and what is seen of it at each, those before it being off. */
  gates: readonly (readonly [gate: Gate, seen: Where | 'asked'])[]
  /**
   * What becomes of it with all of them off: it passes the last gate; something else is in its way that has no switch; or nobody sees
   * it, and the job comes to a stand over what follows from it.
   */
  then: 'passes' | 'unseen' | Where
  /** What is left to chance: which of several places, which digit. */
  seed: number
}

/** A line of a critical step, seen by somebody else. */
const SECOND_LOOK: Wall['gates'] = [
  ['second look, before the next step', 'second look'],
  ['second look, at the last gate', 'second look'],
]

export const WALLS: readonly Wall[] = [
  // Left out.
  wall('fastener left out', 'inner cam nuts', [
    ['home, to turn a bolt', 'next line'],
    ['home, to close a step', 'step closed'],
    ['home, at the last look', 'last look'],
    ['home, at the last gate', 'last gate'],
  ]),
  wall('fasteners not tightened', 'left chain bolts', [
    ['tightening, to close a step', 'step closed'],
    ...SECOND_LOOK,
    ['tightening, at the last gate', 'last gate'],
  ]),
  wall('bolt not turned in one pass', 'inner cam nuts', [
    ['turned in order', 'next line'],
    ['tightening, to close a step', 'step closed'],
    ['tightening, at the last gate', 'last gate'],
  ]),
  wall('whole pass left out', 'inner cam nuts', [
    ['tightening, to close a step', 'step closed'],
    ['tightening, at the last gate', 'last gate'],
  ]),
  wall('pin, plug or rag not taken out', 'outer intake rag', [
    ['aids out, to close a step', 'step closed'],
    ['aids out, at the last look', 'last look'],
    ['aids and tools, at the last gate', 'last gate'],
  ]),
  wall('pin, plug or rag not taken out', 'left chain pin', [
    ['aids out, of what hides them itself', 'last look'],
    ['aids out, to close a step', 'step closed'],
    ['aids and tools, at the last gate', 'last gate'],
  ]),
  wall('cap or cover left out', 'left chain cover', [
    ['home, to close a step', 'step closed'],
    ['home, at the last gate', 'last gate'],
  ]),
  wall('hose end left out', 'upper coil hose', [
    ['home, to close a step', 'step closed'],
    ['home, at the last look', 'last look'],
    ['home, at the last gate', 'last gate'],
  ]),
  wall('gasket, washer or seal left out', 'left chain gasket', [
    ['home, to close a step', 'step closed'],
    ['home, at the last gate', 'last gate'],
  ]),
  wall('gasket, washer or seal left out', 'rear gear crush washer', [
    ['home, to close a step', 'step closed'],
    ['home, at the last look', 'last look'],
    ['home, at the last gate', 'last gate'],
  ]),
  wall('new single-use piece not got', 'left chain gasket', [
    ['pieces at hand, to start', 'next step'],
    ['used once, to fit', 'next line'],
  ]),
  wall('tool not put back', 'left pump magnet', [['aids and tools, at the last gate', 'last gate']]),
  wall('oil, locker or sealant left out', 'grey sealant on the left chain face', [
    ['put on, to close a step', 'step closed'],
    ['put on, at the last gate', 'last gate'],
  ]),
  wall('matched piece left out', 'inner cam caps', [
    ['home, to confirm a mark', 'step closed'],
    ['home, to close a step', 'step closed'],
    ['home, at the last look', 'last look'],
    ['home, at the last gate', 'last gate'],
  ]),
  wall('part left out', 'inner cam carrier', [
    ['home, to close a step', 'step closed'],
    ['home, at the last look', 'last look'],
    ['home, at the last gate', 'last gate'],
  ]),
  wall('part not judged', 'inner cam carrier', [
    ['pieces at hand, to start', 'next step'],
    ['accepted, to fit', 'next line'],
    ['accepted, to close a step', 'step closed'],
    ['accepted, at the last gate', 'last gate'],
  ]),
  wall('mark not confirmed', 'paint line across the joint', [
    ['marks, to close a step', 'step closed'],
    ...SECOND_LOOK,
    ['marks, at the last gate', 'last gate'],
  ]),
  wall('fluid not filled', 'coolant', [
    ['fluids, to close a step', 'step closed'],
    ['fluids, at the last gate', 'last gate'],
  ]),
  wall('last look left out', 'step 2', [['last look, before it is hidden', 'next step']]),
  wall('added step left out', 'step 4', [
    ['steps before, to take the last look', 'last look'],
    ['steps before, to start', 'next step'],
    ['steps, at the last gate', 'last gate'],
  ]),
  wall('whole step left out', 'step 1', [
    ['steps before, to start', 'next step'],
    ['home, at the last gate', 'last gate'],
    ['fluids, at the last gate', 'last gate'],
    ['steps, at the last gate', 'last gate'],
    ['aids and tools, at the last gate', 'last gate'],
  ]),
  // Said to be done, and not done: found where somebody is made to look.
  wall('fasteners not tightened, ticked', 'left chain bolts', SECOND_LOOK),
  wall('mark not confirmed, ticked', 'paint line across the joint', SECOND_LOOK),
  // The last round is there only where it is taken from what is proposed, and is gone only because the last gate asks for it.
  ...(['the last round is proposed', 'steps, at the last gate'] as const).flatMap((gate) => [
    wall('fastener, ticked', 'left chain bolts', [...SECOND_LOOK, [gate, 'last round']]),
    wall('cap or cover, ticked', 'left chain cover', [...SECOND_LOOK, [gate, 'last round']]),
    wall('gasket, washer or seal, ticked', 'left chain gasket', [[gate, 'last round']]),
    wall('part, ticked', 'inner cam carrier', [[gate, 'last round']]),
    wall('matched piece, ticked', 'inner cam caps', [[gate, 'last round']]),
    wall('pin, plug or rag not taken out, ticked', 'outer intake rag', [[gate, 'last round']]),
    wall('tool not put back, ticked', 'left pump magnet', [[gate, 'last round']]),
    wall('whole step, ticked', 'step 1', [[gate, 'last round']]),
  ]),
  // Wrong.
  wall('matched piece at the place of another', 'inner cam caps', [['own position only', 'at once']]),
  wall('matched piece, by its number, at the place of another', 'inner cam caps', [
    ['own position only', 'at once'],
  ]),
  wall('hose ends crossed', 'upper coil hose', [['own position only', 'at once']]),
  wall('two hoses crossed', 'upper coil hose', [['own position only', 'at once']]),
  wall('bolt of another length', 'rear gear bolts', [['own position only', 'at once']], 'next line'),
  wall('bolt taken out of its order', 'left chain bolts', [['turned in order', 'at once']]),
  wall('matched piece turned round, its mark in the record', 'inner cam caps', [
    ['marks, to close a step', 'step closed'],
    ['marks, at the last gate', 'step closed'],
  ]),
  wall(
    'bag of another step',
    'inner cam nuts',
    [
      ['scanned for the step in hand', 'at once'],
      ['scanned for a step that could start', 'at once'],
      ['steps before, to start', 'at once'],
      ['last look, before it is hidden', 'at once'],
    ],
    'unseen',
  ),
  wall('piece of another step', 'inner cam nuts', [['own step only', 'at once']], 'next line'),
  wall('bag of another job', 'left chain bolts', [['label of this job', 'at once']]),
  // It is scrap: what is used, and what has no home, is refused by two names; behind these nothing lies there to be fitted.
  wall(
    'old single-use piece in place of the new one',
    'left chain gasket',
    [['replaced, to fit', 'at once']],
    'at once',
  ),
  wall('one too many said when it came off', 'front fan screws', [
    ['home, to close a step', 'step closed'],
    ['home, at the last gate', 'last gate'],
  ]),
  wall('one too few said when it came off', 'front fan screws', [
    ['no more than lie there, to fit', 'next line'],
  ]),
  wall('condemned part offered', 'inner cam carrier', [
    ['pieces at hand, to start', 'next step'],
    ['accepted, to fit', 'next line'],
    ['accepted, to close a step', 'step closed'],
    ['accepted, at the last gate', 'last gate'],
  ]),
  // Most numbers that are read wrongly no bag has; with this seed it is one that a bag has.
  wall('label: one digit wrong', 'rear gear bolts', [['check digits of a label', 'at once']], 'passes', 3),
  wall('label: two digits swapped', 'rear gear bolts', [['check digits of a label', 'at once']]),
  wall('one more said to be fitted than there is', 'front fan screws', [
    ['no more than lie there, to fit', 'at once'],
  ]),
  wall('step taken up too early', 'step 2', [['steps before, to start', 'at once']], 'next step'),
  wall('bag recounted, one too many', 'step 2', [
    ['counts settled, to start', 'next step'],
    ['counts settled, to close the last round', 'last round'],
    ['counts settled, at the last gate', 'last gate'],
  ]),
  wall('bag recounted, one too few', 'step 2', [
    ['counts settled, to start', 'next step'],
    ['counts settled, to close the last round', 'last round'],
    ['counts settled, at the last gate', 'last gate'],
  ]),
  // Broken off.
  wall(
    'broken off: on in the middle of a torque pass',
    'left chain bolts',
    [['a torque pass starts again', 'at once']],
    'next line',
  ),
  wall(
    'broken off: an angle once more',
    'inner cam nuts',
    [['an angle is in doubt', 'at once']],
    'next line',
  ),
  wall(
    'broken off: an angle once more',
    'inner cam nuts',
    [['angle in doubt, to turn', 'at once']],
    'next line',
  ),
  wall('broken off: one ahead in a pass', 'inner cam nuts', [
    ['turned in order', 'at once'],
    ['tightening, to close a step', 'step closed'],
    ['tightening, at the last gate', 'last gate'],
  ]),
  wall('broken off: one ahead of the next', 'inner cam caps', [
    ['home, to confirm a mark', 'step closed'],
    ['home, to close a step', 'step closed'],
    ['home, at the last look', 'last look'],
    ['home, at the last gate', 'last gate'],
  ]),
  // Never written down.
  wall('passes never set, and never turned', 'left chain bolts', [
    ['asked about passes that were never set', 'asked'],
  ]),
  // What no record can see, whatever gates there are: said to be done, and nobody is made to look; or never written down.
  wall('bolt not turned in one pass, ticked', 'inner cam nuts', []),
  wall('whole pass, ticked', 'inner cam nuts', []),
  wall('hose end, ticked', 'upper coil hose', []),
  wall('oil, locker or sealant, ticked', 'grey sealant on the left chain face', []),
  wall('part not judged, ticked', 'inner cam carrier', []),
  wall('fluid not filled, ticked', 'coolant', []),
  wall('last look, ticked', 'step 2', []),
  wall('added step, ticked', 'step 4', []),
  wall('matched piece turned round, no mark of it in the record', 'inner cam caps', []),
  wall('fasteners came off and were never recorded', 'inner cam nuts', []),
  wall('part came off and was never recorded', 'inner cam carrier', []),
  wall('pin, plug or rag put in and never recorded', 'outer intake rag', []),
  wall('mark never recorded', 'paint line across the joint', []),
  // A code has nine digits: so one is told from a word, and no switch changes that.
  wall('label: one digit missing', 'front fan screws', [], 'at once'),
  wall('label: one digit doubled', 'front fan screws', [], 'at once'),
  // What is done already has refusals of many names, and does no harm.
  wall('broken off: the last thing done once more', 'front fan panel', [], 'at once'),
]

function wall(
  mistake: string,
  at: string,
  gates: Wall['gates'],
  then: Wall['then'] = 'passes',
  seed = 1,
): Wall {
  return { mistake, at, gates, then, seed }
}
