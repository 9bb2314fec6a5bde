import type { EntryBodyOf, EntryType } from '../entry.ts'

type Values<T, Key> = T extends unknown ? (Key extends keyof T ? T[Key] : never) : never
type Keys<T> = T extends unknown ? keyof T : never

/** Whether something in a fact is a number with its letter: such a fact cannot be called plain. */
type HasId<T> = T extends string
  ? string extends T
    ? false
    : T extends `${string}${number}` | `c${number}/${string}`
      ? true
      : false
  : T extends readonly (infer Item)[]
    ? HasId<Item>
    : T extends object
      ? { [Key in keyof T]-?: HasId<T[Key]> }[keyof T]
      : false

type Plain<T> = true extends HasId<T> ? never : 'plain'
type Leaf<T> =
  true extends HasId<T>
    ? 'id' | 'new id'
    : T extends number
      ? 'plain' | 'step' | 'new step' | 'container' | 'new container' | 'entry'
      : 'plain'

/** For each fact of a shape what its numbers stand for: a fact that is left out does not compile. */
type FieldsOf<T> = [NonNullable<T>] extends [readonly (infer Item)[]]
  ? readonly [FieldsOf<Item>] | Plain<Item>
  : [Extract<T, object>] extends [never]
    ? Leaf<NonNullable<T>>
    : { readonly [Key in Keys<Extract<T, object>>]: FieldsOf<Values<Extract<T, object>, Key>> } | Plain<T>

type Fields = {
  readonly [Type in EntryType]: {
    readonly [Fact in Exclude<keyof EntryBodyOf<Type>, 'type'>]: FieldsOf<EntryBodyOf<Type>[Fact]>
  }
}

const move = { piece: 'id', count: 'plain', from: 'id', to: 'id', position: 'plain' } as const
const opening = { piece: 'id', count: 'plain', at: 'plain' } as const
const piece = {
  id: 'new id',
  kind: 'plain',
  name: 'plain',
  home: 'plain',
  should: 'plain',
  set: 'plain',
  size: 'plain',
  singleUse: 'plain',
  replaces: 'id',
  step: 'step',
} as const
const container = {
  no: 'new container',
  kind: 'plain',
  slots: 'plain',
  name: 'plain',
  inside: 'container',
} as const
const stripStep = { no: 'new step', title: 'plain', after: ['step'], hides: 'plain' } as const
const fault = { id: 'new id', kind: 'plain', piece: 'id', count: 'plain' } as const
const belongs = { container: 'container', step: 'step' } as const
const check = { id: 'new id', piece: 'id', kind: 'plain', what: 'plain' } as const
const entering = { pieces: [piece], openings: [opening], moves: [move] } as const
const notes = { partNo: 'plain', price: 'plain', source: 'plain' } as const

/** What the numbers in each kind of entry stand for. */
export const REFERENCE_FIELDS: Fields = {
  opened: { job: 'plain' },
  described: { name: 'plain', machine: 'plain', units: 'plain' },
  archived: { archived: 'plain' },

  'strip-began': { step: stripStep },
  'strip-ended': { step: 'step' },
  'step-added': {
    step: {
      no: 'new step',
      title: 'plain',
      way: 'plain',
      kind: 'plain',
      needs: ['step'],
      due: 'plain',
      turns: 'plain',
    },
    before: ['step'],
  },
  'step-changed': {
    step: 'step',
    title: 'plain',
    after: ['step'],
    needs: ['step'],
    hides: 'plain',
    minutes: 'plain',
    critical: 'plain',
  },
  noted: { step: 'step', kind: 'plain', text: 'plain', minutes: 'plain' },

  'container-opened': { container },
  'container-put': { container: 'container', inside: 'container' },
  'container-voided': { container: 'container', insteadOf: 'container', reason: 'plain' },
  // What was printed cannot get another number.
  'labels-dealt': { from: 'plain', to: 'plain' },
  'labels-voided': { labels: ['container'], inUse: 'plain', reason: 'plain' },

  'came-off': { step: 'step', began: stripStep, opened: container, ...entering, faults: [fault] },
  drained: {
    fluid: { id: 'new id', name: 'plain', litres: 'plain', typed: 'plain', step: 'step' },
    began: stripStep,
  },
  filled: { fluid: 'id', litres: 'plain', typed: 'plain' },
  marked: { mark: { id: 'new id', text: 'plain', piece: 'id', step: 'step' }, began: stripStep },
  'put-in': { step: 'step', began: stripStep, ...entering },
  moved: { moves: [move], reason: 'plain', opened: container },
  supplied: {
    ...entering,
    retired: ['id'],
    opened: container,
    order: { id: 'id', count: 'plain' },
    compare: [{ piece: 'id', old: 'id' }],
    // The number of another job.
    borrowed: 'plain',
    kit: {
      name: 'plain',
      lines: [{ name: 'plain', pieces: ['id'], count: 'plain', spare: 'plain', short: 'plain' }],
    },
  },

  decided: { piece: 'id', what: 'plain', count: 'plain', reason: 'plain' },
  rehomed: { homes: [{ piece: 'id', position: 'plain' }], reason: 'plain' },
  renamed: { mates: ['id'], name: 'plain' },
  settled: { fault: 'id', how: 'plain' },

  'build-began': { step: 'step' },
  fitted: { step: 'step', began: 'plain', moves: [move] },
  confirmed: { mark: 'id' },
  'tightening-set': {
    tightening: {
      id: 'new id',
      name: 'plain',
      piece: 'id',
      step: 'step',
      passes: 'plain',
      order: 'plain',
      with: ['id'],
      orderBy: 'plain',
      condition: 'plain',
      because: 'plain',
    },
  },
  'condition-said': { tightening: 'id', condition: 'plain' },
  'wrench-chosen': { tightening: 'id', wrench: 'plain' },
  tightened: { tightening: 'id', pass: 'plain', fastener: 'plain' },
  'torque-missed': { tightening: 'id', fastener: 'plain', fault, says: 'plain' },
  'angle-settled': { tightening: 'id', fastener: 'plain', turned: 'plain', reason: 'plain' },
  slackened: { tightening: 'id', reason: 'plain' },
  'loosening-set': {
    loosening: {
      id: 'new id',
      name: 'plain',
      step: 'step',
      passes: 'plain',
      order: 'plain',
      layout: 'plain',
    },
    began: stripStep,
  },
  loosened: { loosening: 'id', pass: 'plain', fastener: 'plain' },
  'laid-out': { of: ['id'], shape: 'plain', places: 'plain' },
  'turned-over': { step: 'step', began: 'plain' },
  measured: {
    measure: { id: 'new id', name: 'plain', piece: 'id', step: 'step', measurement: 'plain' },
  },
  sized: { sizes: [{ piece: 'id', size: 'plain' }] },
  looked: { step: 'step' },
  'build-done': { step: 'step', result: 'plain' },
  failed: { step: 'step', result: 'plain', steps: ['step'], moves: [move] },
  reopened: { steps: ['step'], moves: [move], reason: 'plain' },
  overridden: { target: 'id', reason: 'plain', gates: 'plain' },

  counted: {
    container: 'container',
    lines: [{ piece: 'id', expected: 'plain', counted: 'plain', difference: 'new id' }],
  },
  explained: { difference: 'id', how: 'plain', ...entering, opened: container, reason: 'plain' },

  'pictures-added': {
    pictures: [{ id: 'new id', file: 'plain', sha256: 'plain', taken: 'plain', belongs }],
  },
  'picture-sorted': { picture: 'id', belongs },

  'checks-set': { checks: [check] },
  'checks-done': { checks: ['id'], says: 'plain', measure: 'id' },
  'check-dropped': { check: 'id', reason: 'plain' },
  judged: {
    of: ['id'],
    along: ['id'],
    verdict: 'plain',
    reason: 'plain',
    checks: ['id'],
    measure: 'id',
    picture: 'id',
    count: 'plain',
    moves: [move],
  },
  bound: { of: ['id'], reason: 'plain' },
  compared: { piece: 'id', old: 'id', features: 'plain', verdict: 'plain', moves: [move], order: 'id' },
  'trigger-set': {
    trigger: {
      id: 'new id',
      when: 'plain',
      items: [{ do: 'plain', piece: 'id', kind: 'plain', what: 'plain' }],
    },
  },
  'trigger-dropped': { trigger: 'id', reason: 'plain' },
  'found-out': {
    finding: { id: 'new id', text: 'plain', piece: 'id', step: 'step', triggers: ['id'] },
    checks: [check],
    condemned: ['id'],
  },
  carrying: { on: 'id', ...entering },

  'order-lined': {
    orders: [
      {
        id: 'new id',
        name: 'plain',
        piece: 'id',
        count: 'plain',
        unit: 'plain',
        size: 'plain',
        due: 'plain',
        ordered: 'plain',
        ...notes,
      },
    ],
    since: 'plain',
  },
  'order-changed': {
    order: 'id',
    ordered: 'plain',
    since: 'plain',
    count: 'plain',
    due: 'plain',
    cancelled: 'plain',
    ...notes,
  },
  'order-returned': { order: 'id', count: 'plain', reason: 'plain', moves: [move] },
  'part-noted': { piece: 'id', ...notes },
  'sent-out': {
    outing: {
      id: 'new id',
      to: 'plain',
      why: 'plain',
      due: 'plain',
      expects: 'plain',
      // The number of another job.
      job: 'plain',
      since: 'plain',
      pieces: [{ piece: 'id', count: 'plain' }],
      aside: ['id'],
    },
    moves: [move],
  },
  'came-back': {
    outing: 'id',
    ...entering,
    tookOut: { text: 'plain', pieces: ['id'] },
    result: 'plain',
    opened: container,
  },
  'consumable-set': {
    consumable: {
      id: 'new id',
      step: 'step',
      kind: 'plain',
      name: 'plain',
      side: 'plain',
      workMinutes: 'plain',
      cureMinutes: 'plain',
      before: ['id'],
      expires: 'plain',
      amount: 'plain',
    },
  },
  'consumable-dropped': { consumable: 'id', reason: 'plain' },
  applied: { consumable: 'id', began: 'plain' },
  'seen-again': { step: 'step', line: 'id', says: 'plain' },

  stopped: { step: 'step', note: 'plain', abrupt: 'plain' },
  cleared: {},
  started: {},
  closed: { note: 'plain' },
  undone: { entry: 'entry' },
  redone: { entry: 'entry' },

  // `there` is a number in a copy, and stays what was written on its bag.
  merged: {
    copy: 'plain',
    kept: 'plain',
    taken: 'plain',
    leftOut: [{ id: 'new id', entry: 'plain', at: 'plain', by: 'plain', says: 'plain' }],
    renumbered: [{ there: 'plain', here: 'container' }],
    inHand: { strip: 'step', build: 'step', hand: 'container' },
  },
  'left-out-settled': { leftOut: 'id', how: 'plain' },
}
