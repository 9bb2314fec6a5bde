import type { Command } from '../../src/journal/command.ts'
import type { Belongs } from '../../src/journal/entry.ts'
import type { State } from '../../src/journal/state.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import type { DecisionTarget } from '../../src/plan/facts.ts'
import { patternOf } from '../../src/plan/pattern.ts'
import type { Pass } from '../../src/plan/tightening.ts'
import { Pick } from './pick.ts'
import { wildJudging } from './wild-judging.ts'
import { wildWaiting } from './wild-waiting.ts'

/** What chance says: which kind of command, and three numbers for its particulars. */
export interface Whim {
  kind: keyof typeof wild
  a: number
  b: number
  c: number
}

/**
 * The command that a whim stands for on a job as it stands. Names and numbers come from a small alphabet, and
 * reach one past what is there, so that valid and invalid ones mix.
 */
export function wildCommand(state: State, { kind, a, b, c }: Whim): Command {
  return (wild[kind] as Make)(new Pick(state, a, b, c))
}

type Make = (pick: Pick) => Command

const passes: Pass[][] = [
  [{ kind: 'snug', typed: 'by hand' }],
  [{ kind: 'torque', newtonMetres: 20, typed: '20 Nm' }],
  [
    { kind: 'torque', newtonMetres: 20, typed: '20 Nm' },
    { kind: 'angle', degrees: 90, typed: '90 deg' },
  ],
  [
    { kind: 'angle', degrees: 60, typed: '60 deg' },
    { kind: 'angle', degrees: 90, typed: '90 deg' },
  ],
  [],
  [
    { kind: 'snug', typed: 'by hand' },
    { kind: 'back-off', degrees: 180, typed: 'back off 180 deg' },
    { kind: 'torque', newtonMetres: 20, typed: '20 Nm', round: true },
    { kind: 'check', newtonMetres: 20, typed: 'check 20 Nm' },
    { kind: 'witness', typed: 'mark' },
  ],
  [
    { kind: 'angle', degrees: 90, typed: '90 deg' },
    { kind: 'back-off', typed: 'back off' },
    { kind: 'angle', degrees: 90, typed: '90 deg' },
  ],
  [
    { kind: 'witness', typed: 'mark' },
    { kind: 'back-off', typed: 'back off' },
  ],
  [{ kind: 'torque', newtonMetres: 20, typed: '20 Nm' }],
]

const easings: Pass[][] = [
  [
    { kind: 'back-off', degrees: 90, typed: '90 deg' },
    { kind: 'back-off', typed: 'free' },
  ],
  [{ kind: 'back-off', typed: 'free' }],
  [{ kind: 'back-off', degrees: 0, typed: '0 deg' }],
  [{ kind: 'torque', newtonMetres: 20, typed: '20 Nm' }],
  [],
]

const stepNames = ['valve cover off', 'look inside', 'intake cams out', 'head off', '']
const positions = [['I1', 'I2'], ['I1', 'I2', 'I3'], ['4'], ['I3'], ['E1', 'E1']]
const targets = (pick: Pick): DecisionTarget =>
  pick.some<DecisionTarget>(
    [
      `start ${pick.step(pick.b)}`,
      `finish ${pick.step(pick.b)}`,
      `look ${pick.step(pick.b)}`,
      `check ${pick.step(pick.b)}`,
      pick.numbered('m', pick.state.dealt.mark, pick.b),
      pick.numbered('t', pick.state.dealt.tightening, pick.b),
      pick.numbered('f', pick.state.dealt.fluid, pick.b),
      pick.numbered('x', pick.state.dealt.fault, pick.b),
      pick.numbered('k', pick.state.dealt.check, pick.b),
      pick.numbered('b', pick.state.dealt.outing, pick.b),
      pick.numbered('s', pick.state.dealt.consumable, pick.b),
    ],
    pick.a,
  )

const belongings = (pick: Pick): Belongs | null =>
  pick.some([null, { container: pick.container(pick.b) }, { step: pick.step(pick.b) }], pick.c)

/** One maker of commands for each whim. */
const wild = {
  'open-job': () => ({ do: 'open-job', no: 8, name: 'second', machine: '', units: 'us' }),
  describe: (pick) => ({ do: 'describe', name: pick.some(['twin', ' '], pick.a) }),
  archive: (pick) => ({ do: 'archive', archived: pick.a % 2 === 0 }),
  'begin-strip': (pick) => ({
    do: 'begin-strip',
    title: pick.some(stepNames, pick.a),
    after: pick.some([undefined, undefined, [], [pick.step(pick.b)]], pick.c),
  }),
  'end-strip': () => ({ do: 'end-strip' }),
  'add-step': (pick) => ({
    do: 'add-step',
    title: pick.some(['clean faces', 'turn by hand', 'leak check'], pick.a),
    kind: pick.some(['clean', 'turn', 'measure', 'check'], pick.a),
    way: pick.a % 5 === 0 ? 'after-start' : 'build',
    needs: pick.b % 3 === 0 ? [pick.step(pick.b >> 2)] : [],
    before: pick.c % 3 === 0 ? [pick.step(pick.c >> 2)] : [],
    due: pick.b % 4 === 1 ? 'last' : undefined,
    turns: pick.some([undefined, 2, 1, undefined, 0], pick.c),
  }),
  'change-step': (pick) => ({
    do: 'change-step',
    step: pick.step(pick.a),
    after: pick.b % 4 === 0 ? [pick.step(pick.c)] : undefined,
    needs: pick.b % 4 === 1 ? [pick.step(pick.c)] : undefined,
    hides: pick.b % 4 === 2 ? pick.c % 2 === 0 : undefined,
    minutes: pick.b % 8 === 3 ? 1 + pick.c : undefined,
    critical:
      pick.c % 4 === 3
        ? pick.some([{ afterMinutes: 0.02 }, null, { afterMinutes: 0.1 }, { afterMinutes: 30 }], pick.b)
        : undefined,
  }),
  note: (pick) => ({ do: 'note', kind: 'note', text: pick.reason(pick.a) }),
  'take-off': (pick) => ({
    do: 'take-off',
    item: {
      kind: pick.some(['fastener', 'part'], pick.a),
      name: pick.some(['M6 bolt', 'gasket', 'stud'], pick.a),
      found: 1 + (pick.b % 3) - (pick.c % 5 === 0 ? 1 : 0) + (pick.c % 23 === 0 ? 9 : 0),
      should: 1 + (pick.b % 3),
      broken:
        pick.c % 7 === 0
          ? { kind: pick.some(['broken', 'snapped'], pick.a), count: 1 + (pick.b % 16 === 0 ? 1 : 0) }
          : undefined,
      singleUse: pick.a % 3 === 1,
    },
    into: pick.into(pick.c),
  }),
  'take-matched': (pick) => {
    const held = pick.some(positions, pick.a)
    const count = held.length + (pick.b % 8 === 0 ? 1 : 0)
    return {
      do: 'take-off',
      item: {
        kind: 'part',
        name: 'cam cap',
        at: 'head',
        found: pick.b % 8 === 1 ? 0 : count,
        should: count,
        positions: held,
        broken: pick.b % 8 === 2 ? { kind: 'cracked', count: 1 } : undefined,
        singleUse: pick.b % 8 === 3,
      },
      into: pick.into(pick.c),
    }
  },
  drain: (pick) => ({ do: 'drain', name: 'coolant', litres: pick.a % 8, typed: `${pick.a % 8} l` }),
  fill: (pick) => ({
    do: 'fill',
    fluid: pick.numbered('f', pick.state.dealt.fluid, pick.a),
    litres: pick.b % 6,
    typed: 'l',
  }),
  mark: (pick) => ({
    do: 'mark',
    text: 'dot to the left',
    piece: pick.a % 3 === 0 ? undefined : pick.piece(pick.b),
  }),
  'put-in': (pick) => ({
    do: 'put-in',
    kind: pick.a % 3 === 0 ? 'tool' : 'aid',
    name: 'rag',
    count: pick.b % 8 === 0 ? 0 : 1 + (pick.b % 2),
    positions: pick.c % 5 === 0 ? ['port 1', 'port 2'] : undefined,
  }),
  'open-container': (pick) => ({
    do: 'open-container',
    kind: pick.some(['bag', 'tray', 'shelf'], pick.a),
    slots: pick.some([undefined, 3, 0, 500], pick.b),
    inside: pick.c % 3 === 0 ? pick.container(pick.c) : undefined,
    no: pick.c % 4 === 1 ? pick.label(pick.b) : undefined,
  }),
  'deal-labels': (pick) => ({
    do: 'deal-labels',
    count: pick.some([1, 2, 3, 2, 3, 0, 1001, 1.5], pick.a >> 2),
  }),
  'void-labels': (pick) => {
    const from = pick.blank(pick.a) ?? 1
    return { do: 'void-labels', from, to: from + (pick.b % 4) - 1, reason: pick.reason(pick.c) }
  },
  'add-pictures': (pick) => ({
    do: 'add-pictures',
    pictures: Array.from({ length: pick.a % 4 }, (_, index) => {
      const number = (pick.b % 8) + index * (pick.c % 3)
      return {
        file: pick.c % 8 === 0 ? '../../journal' : `${number}.${pick.some(['jpg', 'JPG'], pick.c)}`,
        sha256: `${number}`.padStart(pick.c % 9 === 0 ? 60 : 64, '0'),
        taken: pick.some([null, '2026-05-02T14:03:11', null, 'yesterday'], pick.a >> 2),
        belongs: belongings(pick),
      }
    }),
  }),
  'sort-picture': (pick) => ({
    do: 'sort-picture',
    picture: pick.numbered('g', pick.state.dealt.picture, pick.a),
    belongs: belongings(pick) ?? 'none',
  }),
  'put-container': (pick) => ({
    do: 'put-container',
    container: pick.container(pick.a),
    inside: pick.b % 4 === 0 ? null : pick.container(pick.b),
  }),
  'void-container': (pick) => ({
    do: 'void-container',
    container: pick.container(pick.a),
    insteadOf: pick.b % 2 === 0 ? undefined : pick.container(pick.b),
    reason: pick.reason(pick.c),
  }),
  move: (pick) => ({
    do: 'move',
    piece: pick.piece(pick.a),
    count: pick.some([undefined, 1, 2, 3], pick.c),
    into: pick.into(pick.b),
    reason: pick.c % 5 === 0 ? undefined : 'because it is so',
  }),
  supply: (pick) => ({
    do: 'supply',
    piece: pick.piece(pick.a),
    count: pick.b % 16 === 0 ? 0 : 1 + (pick.b % 3),
    into: pick.into(pick.c),
    instead: pick.b % 8 > 3,
  }),
  'leave-off': (pick) => ({
    do: 'leave-off',
    piece: pick.piece(pick.a),
    count: pick.some([undefined, 1, 2], pick.b),
    reason: pick.reason(pick.c),
  }),
  'accept-lost': (pick) => ({ do: 'accept-lost', piece: pick.piece(pick.a), reason: pick.reason(pick.b) }),
  'use-again': (pick) => ({ do: 'use-again', piece: pick.piece(pick.a), reason: pick.reason(pick.b) }),
  rehome: (pick) => {
    const [one, two] = [pick.piece(pick.a), pick.piece(pick.b)]
    return {
      do: 'rehome',
      homes: [
        { piece: one, position: pick.ownPosition(pick.b) ?? 'I1' },
        { piece: two, position: pick.ownPosition(pick.a) ?? 'I2' },
      ].slice(0, pick.c % 4 === 0 ? 1 : 2),
      reason: pick.reason(pick.c),
    }
  },
  // A name that others of the same home have, too.
  'rename-piece': (pick) => ({
    do: 'rename-piece',
    piece: pick.piece(pick.a),
    name: pick.some(['M6 bolt', 'gasket', 'cam caps', 'oil cap', ''], pick.b),
  }),
  'settle-fault': (pick) => ({
    do: 'settle-fault',
    fault: pick.numbered('x', pick.state.dealt.fault, pick.a),
    how: pick.reason(pick.b),
  }),
  'note-merge': (pick) => ({
    do: 'note-merge',
    copy: '/media/stick/blue-twin',
    taken: 0,
    leftOut: Array.from({ length: pick.a % 3 }, (_, index) => ({
      entry: `there-${pick.a}-${pick.b}-${index}`,
      at: '2026-05-02T14:03:11.000Z',
      says: 'came off: 2 × seat bolts',
    })),
    renumbered: pick.c % 2 === 0 ? [] : [{ there: 9, here: 14 }],
  }),
  'settle-left-out': (pick) => ({
    do: 'settle-left-out',
    leftOut: pick.numbered('w', pick.state.dealt.leftOut, pick.a),
    how: pick.reason(pick.b),
  }),
  'begin-build': (pick) => ({ do: 'begin-build', step: pick.step(pick.a) }),
  fit: (pick) => {
    const piece = pick.piece(pick.a)
    const own = pick.b % 4 === 0 ? pick.position(pick.b >> 2) : pick.ownPosition(pick.a)
    const one = { piece, position: own, count: pick.some([undefined, undefined, 1, 2], pick.c) }
    const more = pick.c % 6 === 0 ? [{ piece: pick.piece(pick.b), position: pick.ownPosition(pick.b) }] : []
    return {
      do: 'fit',
      step: pick.c % 5 === 0 ? pick.step(pick.c) : undefined,
      fittings: [one, ...more].slice(0, pick.a % 20 === 0 ? 0 : 2),
    }
  },
  confirm: (pick) => ({ do: 'confirm', mark: pick.numbered('m', pick.state.dealt.mark, pick.a) }),
  'set-tightening': (pick) => ({
    do: 'set-tightening',
    piece: pick.piece(pick.a),
    passes: pick.some(passes, pick.b),
    order: pick.c % 6 === 0 ? ['2', '1'] : undefined,
    with: pick.a % 5 === 0 ? [pick.piece(pick.c)] : undefined,
    by: pick.c % 8 === 1 ? pick.some(['row', 'crosswise', 'star'] as const, pick.b) : undefined,
    condition: pick.b % 3 === 0 ? 'oiled' : undefined,
    because: pick.c % 9 === 0 ? 'the manual has it so' : undefined,
  }),
  'say-condition': (pick) => ({
    do: 'say-condition',
    tightening: pick.tightening(pick.a),
    condition: pick.some(['dry', 'oiled', ''], pick.b),
  }),
  'choose-wrench': (pick) => ({
    do: 'choose-wrench',
    tightening: pick.tightening(pick.a),
    wrench: { typed: '5-25 Nm', leverMm: pick.some([undefined, 400, 0, Number.NaN], pick.b) },
  }),
  'miss-torque': (pick) => ({
    do: 'miss-torque',
    tightening: pick.b % 3 === 0 ? pick.tightening(pick.a) : undefined,
    fastener: pick.c % 2 === 0 ? pick.some(['1', '2', 'I2'], pick.a) : undefined,
    says: pick.reason(pick.c),
  }),
  'set-loosening': (pick) => ({
    do: 'set-loosening',
    name: pick.some(['head bolts', 'flange bolts', ''], pick.a >> 1),
    passes: pick.some(easings, pick.b % 8),
    order: pick.some([['1', '2'], ['2', '1', '3'], ['2', '1'], ['1', '1'], []], pick.c % 8),
  }),
  // The positions that a pattern has, in one row or more, and now and then one too many or two in one place.
  'lay-out': (pick) => {
    const piece = pick.piece(pick.a)
    const pattern = pick.state.ledger.accounts.has(piece) ? patternOf(pick.state, piece) : null
    const known = pattern && !('code' in pattern) ? pattern.places.map(({ position }) => position) : ['1']
    const names = pick.b % 8 === 0 ? [...known, 'I1'] : known
    const columns = pick.c % 9 === 0 ? 0 : 1 + (pick.c % 3)
    return {
      do: 'lay-out',
      piece,
      layout: {
        shape: pick.some(['grid', 'free', 'row'] as const, pick.b),
        places: names.map((position, index) => ({
          position,
          x: columns === 0 ? 0 : index % columns,
          y: columns === 0 ? 0 : Math.floor(index / columns),
        })),
      },
      arrow: pick.some([undefined, 'left', undefined, 'up'] as const, pick.c),
    }
  },
  point: (pick) => ({
    do: 'point',
    piece: pick.piece(pick.a),
    positions: [pick.ownPosition(pick.a) ?? '1', ...(pick.c % 5 === 0 ? ['I9'] : [])],
    arrow: pick.some(['up', 'right', 'down', 'left'] as const, pick.b),
  }),
  'turn-over': (pick) => ({
    do: 'turn-over',
    step: pick.b % 3 === 0 ? undefined : (turnStepOf(pick.state) ?? pick.step(pick.a)),
  }),
  measure: (pick) => ({
    do: 'measure',
    name: pick.some(['crank pin', 'deck', ''], pick.a >> 1),
    piece: pick.b % 2 === 0 ? pick.piece(pick.a) : undefined,
    step: pick.c % 4 === 0 ? pick.step(pick.c) : undefined,
    measurement: {
      kind: 'size',
      readings: pick
        .some<number[]>([[0.05], [35.98, 35.99], [], [Number.NaN], [1e12], [20.1]], pick.b)
        .map((mm) => ({
          mm,
          typed: `${mm}`,
        })),
      instrument:
        pick.c % 3 === 0 ? { resolutionMm: pick.some([0.01, 0], pick.a), typed: '0.01' } : undefined,
      limits: pick.c % 5 === 0 ? { typed: '1..2', leastMm: 1 + (pick.a % 3), mostMm: 2 } : undefined,
    },
  }),
  size: (pick) => ({
    do: 'size',
    sizes: [
      { piece: pick.piece(pick.a), size: pick.some(['2.45', 'M6x25', ' '], pick.b) },
      { piece: pick.piece(pick.b), size: '2.50' },
    ].slice(0, pick.c % 8 === 0 ? 0 : 1 + (pick.c % 2)),
  }),
  tighten: (pick) => ({
    do: 'tighten',
    tightening: pick.b % 3 === 0 ? pick.tightening(pick.a) : undefined,
    fastener: pick.c % 5 === 0 ? pick.some(['1', '2', 'I2'], pick.a) : undefined,
  }),
  'settle-angle': (pick) => ({
    do: 'settle-angle',
    tightening: pick.tightening(pick.a),
    turned: pick.b % 2 === 0,
    reason: pick.reason(pick.c),
  }),
  slacken: (pick) => ({
    do: 'slacken',
    tightening: pick.tightening(pick.a),
    reason: pick.reason(pick.b),
  }),
  look: (pick) => ({ do: 'look', step: pick.step(pick.a) }),
  'close-step': (pick) => ({
    do: 'close-step',
    step: pick.b % 3 === 0 ? undefined : pick.step(pick.a),
    result: pick.c % 2 === 0 ? '0.02 mm' : undefined,
  }),
  fail: (pick) => ({
    do: 'fail',
    step: pick.step(pick.a),
    result: pick.reason(pick.b),
    steps: pick.some([[], [pick.step(pick.b)], [pick.step(pick.b), pick.step(pick.c)]], pick.c),
  }),
  reopen: (pick) => ({ do: 'reopen', steps: [pick.step(pick.a)], reason: pick.reason(pick.b) }),
  override: (pick) => ({ do: 'override', target: targets(pick), reason: pick.reason(pick.c) }),
  count: (pick) => {
    const container = pick.container(pick.a)
    const inside = [...(pick.state.ledger.byContainer.get(container) ?? [])]
    const slip = pick.b % 3 === 0 ? (pick.c % 3) - 1 : 0
    const counts: { piece: PieceId | null; counted: number }[] = inside.map((piece) => ({
      piece,
      counted: countIn(pick.state, piece, container),
    }))
    if (counts[0]) counts[0].counted += slip
    if (counts.length === 0 || pick.c % 5 === 0) counts.push({ piece: null, counted: pick.c % 2 })
    if (pick.c % 11 === 0) counts.pop()
    return { do: 'count', container, counts }
  },
  explain: (pick) => ({
    do: 'explain',
    difference: pick.difference(pick.a),
    how: pick.some(
      [
        { kind: 'missing' } as const,
        { kind: 'unknown-piece', name: 'washer' } as const,
        { kind: 'moved', piece: pick.piece(pick.b), other: pick.into(pick.c) } as const,
        {
          kind: 'moved',
          piece: pick.state.differences.get(pick.difference(pick.a))?.piece ?? pick.piece(pick.b),
          other: pick.into(pick.c),
        } as const,
      ],
      pick.b,
    ),
    reason: pick.reason(pick.c),
  }),
  stop: (pick) => ({ do: 'stop', note: '', abrupt: pick.a % 2 === 0 }),
  clear: () => ({ do: 'clear' }),
  'first-start': () => ({ do: 'first-start' }),
  'close-job': (pick) => ({ do: 'close-job', note: pick.a % 2 === 0 ? 'handed over' : undefined }),
  undo: (pick) => ({ do: 'undo', entry: pick.a % 8 === 0 ? pick.a : undefined }),
  redo: () => ({ do: 'redo' }),
  ...wildJudging,
  ...wildWaiting,
} satisfies Record<string, Make>

/** What is done while a machine comes apart, each kind as often as it is listed. */
export const STRIP_WHIMS: readonly (keyof typeof wild)[] = [
  'begin-strip',
  'begin-strip',
  'end-strip',
  'take-off',
  'take-off',
  'take-off',
  'take-matched',
  'take-matched',
  'put-in',
  'mark',
  'drain',
  'set-tightening',
  'set-tightening',
  'lay-out',
  'set-loosening',
  'tighten',
  'add-step',
  'open-container',
  'deal-labels',
  'ask-checks',
  'judge',
  'judge',
  'change-step',
  'change-step',
  'bind',
  'set-trigger',
  'carry',
  'set-consumable',
  'send-out',
  'line-orders',
]

/** The kinds of whims of any work, each as often as it is listed. */
export const WHIMS: readonly (keyof typeof wild)[] = [
  ...(Object.keys(wild) as (keyof typeof wild)[]),
  'take-off',
  'take-off',
  'take-matched',
  'take-matched',
  'begin-strip',
  'begin-strip',
  'put-in',
  'mark',
  'move',
  'move',
  'fit',
  'fit',
  'fit',
  'set-tightening',
  'tighten',
  'tighten',
  'tighten',
  'stop',
  'close-step',
  'close-step',
  'reopen',
  'reopen',
  'fail',
  'undo',
  'undo',
  'undo',
  'redo',
  'redo',
  'count',
  'count',
  'count',
  'explain',
  'explain',
  'slacken',
  'slacken',
  'slacken',
  'miss-torque',
  'miss-torque',
  'turn-over',
  'lay-out',
  'settle-angle',
  'rehome',
  'supply',
  'override',
  'deal-labels',
  'add-pictures',
  'judge',
  'pass-checks',
  'find',
  'compare',
  'carry',
  'receive',
  'receive',
  'line-orders',
  'send-out',
  'come-back',
  'come-back',
  'apply',
  'see-again',
  'see-again',
  'see-again',
  'change-step',
  'change-order',
  'return-order',
  'return-order',
  'drop-consumable',
]

/** A step in which turns are counted and that is not done. */
function turnStepOf(state: State): number | undefined {
  return [...state.steps.values()].find(({ kind, built }) => kind === 'turn' && built !== 'done')?.no
}

function countIn(state: State, piece: PieceId, container: number): number {
  let sum = 0
  for (const [place, count] of state.ledger.accounts.get(piece)?.at ?? []) {
    if (place === `c${container}` || place.startsWith(`c${container}/`)) sum += count
  }
  return sum
}
