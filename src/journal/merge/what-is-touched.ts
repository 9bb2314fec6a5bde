import { beneath, buildNeeds } from '../../plan/order.ts'
import type { Entry, EntryOf, EntryType } from '../entry.ts'
import { interruption } from './interruption.ts'
import type { Touches } from './touches.ts'

/** Notes what an entry touches, beyond the things that it names by number. */
export function noteTouches(touches: Touches, entry: Entry): void {
  const rule = rules[entry.type] as Rule<EntryType>
  rule(touches, entry)
}

type Rule<Type extends EntryType> = (touches: Touches, entry: EntryOf<Type>) => void

/** A rule for entries that change nothing that another entry could rest on. */
const nothing = () => {}

const rules: { [Type in EntryType]: Rule<Type> } = {
  opened: nothing,
  described: ({ changes }, { name, machine, units }) => {
    if (name !== undefined) changes.add('job name')
    if (machine !== undefined) changes.add('job machine')
    if (units !== undefined) changes.add('job units')
  },
  archived: ({ changes }) => changes.add('job put away'),

  'strip-began': (touches, { step }) => touches.strip(step),
  // It ends with the next one anyway.
  'strip-ended': nothing,
  'step-added': (touches, { step, before }) => {
    touches.changes.add(`plan ${step.title.toLowerCase()}`)
    for (const upper of before) {
      touches.reads.add(touches.of('step', upper, 'built'))
      touches.stirs.add(touches.of('step', upper, 'needs'))
    }
  },
  'step-changed': (touches, { step, title, after, needs, hides, minutes, critical }) => {
    const changed = { title, order: after ?? needs, hides, minutes, critical }
    for (const [what, value] of Object.entries(changed))
      if (value !== undefined) touches.changes.add(touches.of('step', step, what))
    if (after === undefined && needs === undefined) return
    // They are said whole: what came before the step since then would be forgotten.
    touches.sees.add(touches.of('step', step, 'needs'))
    for (const no of [step, ...(after ?? [])]) {
      touches.stirs.add(touches.of('step', no, 'needs'))
      touches.reads.add(touches.of('step', no, 'built'))
    }
    touches.stirs.add('machine')
  },
  noted: nothing,

  'container-opened': nothing,
  'container-put': (touches, { container }) => {
    touches.changes.add(touches.of('container', container, 'inside'))
  },
  'container-voided': (touches, { container }) => {
    touches.changes.add(touches.of('container', container))
    for (const { no, inside } of touches.state.containers.values())
      if (inside === container) touches.changes.add(touches.of('container', no, 'inside'))
  },
  'labels-dealt': nothing,
  'labels-voided': (touches, { labels }) => {
    for (const label of labels) touches.changes.add(touches.of('container', label))
  },

  'came-off': (touches, { step, began, pieces, moves }) => {
    beginOrAdd(touches, step, began)
    touches.enter(pieces)
    touches.moves(moves)
    touches.stirs.add(touches.of('step', step, 'touched'))
  },
  drained: (touches, { fluid, began }) => {
    beginOrAdd(touches, fluid.step, began)
    touches.changes.add(`fluid ${fluid.name.toLowerCase()}`)
  },
  filled: (touches, { fluid }) => {
    touches.changes.add(touches.of('fluid', fluid, 'state'))
    touches.buildIn(touches.state.fluids.get(fluid)?.step)
  },
  marked: (touches, { mark, began }) => {
    beginOrAdd(touches, mark.step, began)
    const on = mark.piece === undefined ? touches.of('step', mark.step) : touches.of('piece', mark.piece)
    if (mark.piece !== undefined) touches.ask(mark.piece)
    touches.changes.add(`${on} mark ${mark.text.toLowerCase()}`)
  },
  'put-in': (touches, { step, began, pieces, moves }) => {
    beginOrAdd(touches, step, began)
    touches.enter(pieces)
    touches.looseMoves(moves)
  },
  moved: (touches, { moves }) => touches.looseMoves(moves),
  supplied: (touches, { pieces, moves, retired, order, compare = [] }) => {
    touches.enter(pieces)
    touches.moves(moves)
    for (const piece of retired) {
      touches.changes.add(touches.of('piece', piece, 'place'))
      const step = touches.state.ledger.accounts.get(piece)?.piece.step
      if (step !== undefined) touches.stirs.add(touches.of('step', step, 'touched'))
    }
    for (const { old } of compare) touches.reads.add(touches.of('piece', old, 'place'))
    if (order) touches.changes.add(touches.of('order', order.id, 'state'))
  },

  decided: (touches, { piece }) => touches.changes.add(touches.of('piece', piece, 'place')),
  rehomed: (touches, { homes }) => {
    for (const { piece, position } of homes) {
      touches.changes.add(touches.of('piece', piece, 'place'))
      const account = touches.state.ledger.accounts.get(piece)
      if (account) touches.home(account.home.at, account.piece.name, position)
    }
  },
  renamed: (touches, { mates, name }) => {
    for (const piece of mates) {
      touches.changes.add(touches.of('piece', piece, 'name'))
      const home = touches.state.ledger.accounts.get(piece)?.home
      if (home) touches.home(home.at, name, home.position)
    }
  },
  settled: (touches, { fault }) => touches.changes.add(touches.of('fault', fault, 'state')),

  'build-began': (touches, { step }) => {
    touches.changes.add(touches.of('step', step, 'begun'))
    takeUp(touches, step)
  },
  fitted: (touches, { step, began, moves }) => {
    workIn(touches, step, began)
    touches.moves(moves)
    touches.stirs.add(touches.of('step', step, 'touched'))
  },
  confirmed: (touches, { mark }) => {
    touches.changes.add(touches.of('mark', mark, 'state'))
    touches.buildIn(touches.state.marks.get(mark)?.step)
  },
  'tightening-set': (touches, { tightening: { id, piece, with: others = [], step } }) => {
    touches.addTo(step)
    for (const what of ['state', 'condition', 'wrench'])
      touches.changes.add(touches.of('tightening', id, what))
    for (const each of [piece, ...others]) {
      touches.changes.add(touches.of('piece', each, 'tightening'))
      touches.ask(each)
    }
  },
  'condition-said': (touches, { tightening }) =>
    touches.changes.add(touches.of('tightening', tightening, 'condition')),
  'wrench-chosen': (touches, { tightening }) =>
    touches.changes.add(touches.of('tightening', tightening, 'wrench')),
  tightened: (touches, { tightening }) => turn(touches, tightening),
  'torque-missed': (touches, { tightening }) => turn(touches, tightening),
  'angle-settled': (touches, { tightening }) => turn(touches, tightening),
  slackened: (touches, { tightening }) => turn(touches, tightening),
  'loosening-set': (touches, { loosening: { name, step }, began }) => {
    beginOrAdd(touches, step, began)
    touches.changes.add(`loosen ${inLower(name)}`)
  },
  loosened: (touches, { loosening }) => touches.changes.add(touches.of('loosening', loosening, 'state')),
  'laid-out': (touches, { of: pieces }) => {
    for (const piece of pieces) {
      touches.changes.add(touches.of('piece', piece, 'drawing'))
      touches.ask(piece)
    }
  },
  'turned-over': (touches, { step }) => {
    workIn(touches, step, true)
    touches.changes.add(touches.of('step', step, 'turns'))
  },
  measured: (touches, { measure }) => {
    touches.changes.add(`measure ${inLower(measure.name)}`)
    if (measure.measurement.kind !== 'valve-clearance') return
    // It keeps the shims that were in there.
    touches.sees.add('positions')
    for (const { piece, home } of touches.state.ledger.accounts.values())
      if (home.position !== undefined) touches.sees.add(touches.of('piece', piece.id, 'place'))
  },
  sized: (touches, { sizes }) => {
    for (const { piece } of sizes) touches.changes.add(touches.of('piece', piece, 'size'))
  },
  looked: (touches, { step }) => {
    touches.changes.add(touches.of('step', step, 'look'))
    touches.buildIn(step)
    touches.sees.add('machine')
    for (const no of [step, ...beneath(buildNeeds(touches.state.steps), step)])
      touches.sees.add(touches.of('step', no, 'touched'))
  },
  'build-done': (touches, { step }) => {
    touches.buildIn(step)
    touches.changes.add(touches.of('step', step, 'built'))
    for (const what of ['critical', 'turns']) touches.sees.add(touches.of('step', step, what))
    for (const { piece } of touches.state.ledger.accounts.values()) {
      if (piece.step !== step) continue
      touches.sees.add(touches.of('piece', piece.id, 'place')).add(touches.of('piece', piece.id, 'judged'))
    }
    for (const thing of thingsOf(touches, new Set([step]))) touches.sees.add(thing)
  },
  failed: (touches, { step, steps, moves }) => {
    touches.moves(moves)
    reopen(touches, [...steps, step])
  },
  reopened: (touches, { steps, moves }) => {
    touches.moves(moves)
    reopen(touches, steps)
  },
  overridden: (touches, { target }) => {
    const [, gate, no] = /^(start|finish|look|check) (\d+)$/.exec(target) ?? []
    if (gate !== undefined) {
      touches.changes.add(touches.of('step', Number(no), `gate ${gate}`))
      touches.buildIn(Number(no))
    } else touches.changes.add(touches.ofId(target, 'state'))
  },

  counted: (touches, { container, lines }) => {
    touches.changes.add(touches.of('container', container, 'count'))
    touches.sees.add(touches.of('container', container, 'contents'))
    for (const { piece } of lines) if (piece !== null) touches.sees.add(touches.of('piece', piece, 'place'))
  },
  explained: (touches, { difference, pieces, moves }) => {
    touches.changes.add(touches.of('difference', difference, 'state'))
    touches.enter(pieces)
    touches.looseMoves(moves)
  },

  'pictures-added': ({ changes }, { pictures }) => {
    // A file whose name is taken here gets another one when it is copied.
    for (const { sha256 } of pictures) changes.add(`picture ${sha256}`)
  },
  'picture-sorted': (touches, { picture }) => touches.changes.add(touches.of('picture', picture, 'state')),

  'checks-set': (touches, { checks }) => ask(touches, checks),
  'checks-done': (touches, { checks }) => {
    for (const check of checks) {
      answer(touches, check)
      const piece = touches.state.checks.get(check)?.piece
      if (piece !== undefined) touches.reads.add(touches.of('piece', piece, 'judged'))
    }
  },
  'check-dropped': (touches, { check }) => {
    touches.changes.add(touches.of('check', check))
    answer(touches, check)
  },
  judged: (touches, { of: pieces, along, checks, moves }) => {
    touches.looseMoves(moves)
    for (const piece of [...pieces, ...along]) touches.changes.add(touches.of('piece', piece, 'judged'))
    for (const check of checks) answer(touches, check)
  },
  bound: (touches, { of: pieces }) => {
    const together = pieces.map((piece) => touches.of('piece', piece)).sort()
    touches.changes.add(`together ${together.join(', ')}`)
    for (const piece of pieces) touches.ask(piece)
  },
  compared: (touches, { piece, old, moves, order }) => {
    touches.moves(moves)
    touches.changes.add(touches.of('piece', piece, 'judged'))
    touches.reads.add(touches.of('piece', old, 'place'))
    if (order !== undefined) touches.changes.add(touches.of('order', order, 'state'))
  },
  'trigger-set': ({ changes }, { trigger }) => changes.add(`when ${inLower(trigger.when)}`),
  'trigger-dropped': (touches, { trigger }) => touches.changes.add(touches.of('trigger', trigger)),
  'found-out': (touches, { finding, checks, condemned }) => {
    touches.changes.add(`found ${inLower(finding.text)}`)
    ask(touches, checks)
    for (const piece of condemned) touches.changes.add(touches.of('piece', piece, 'judged'))
  },
  carrying: (touches, { on, pieces, moves }) => {
    touches.reads.add(touches.of('piece', on, 'place'))
    touches.enter(pieces)
    touches.moves(moves)
  },

  'order-lined': (touches, { orders }) => {
    for (const { piece, name } of orders)
      touches.changes.add(`order of ${piece === undefined ? inLower(name) : touches.of('piece', piece)}`)
  },
  'order-changed': (touches, { order }) => touches.changes.add(touches.of('order', order, 'state')),
  'order-returned': (touches, { order, moves }) => {
    touches.changes.add(touches.of('order', order, 'state'))
    touches.moves(moves)
  },
  'part-noted': (touches, { piece }) => touches.changes.add(touches.of('piece', piece, 'part')),
  'sent-out': (touches, { moves }) => touches.moves(moves),
  'came-back': (touches, { outing, pieces, moves }) => {
    touches.changes.add(touches.of('outing', outing, 'state'))
    touches.enter(pieces)
    touches.moves(moves)
  },
  'consumable-set': (touches, { consumable: { step, name, before } }) => {
    touches.addTo(step)
    touches.changes.add(`${touches.of('step', step)} gets ${inLower(name)}`)
    for (const upper of before)
      if (typeof upper === 'number') touches.stirs.add(touches.of('step', upper, 'needs'))
  },
  'consumable-dropped': (touches, { consumable }) => {
    touches.changes.add(touches.of('consumable', consumable))
    touches.changes.add(touches.of('consumable', consumable, 'state'))
  },
  applied: (touches, { consumable, began }) => {
    touches.changes.add(touches.of('consumable', consumable, 'state'))
    const step = touches.state.consumables.get(consumable)?.step
    if (step !== undefined) workIn(touches, step, began)
  },
  'seen-again': (touches, { step, line }) => {
    touches.changes.add(`${touches.of('step', step)} seen ${touches.ofId(line)}`)
    touches.reads.add(touches.of('step', step, 'built'))
  },

  stopped: (touches, { abrupt }) => {
    const { doubted, begunAgain, uncounted } = interruption(touches.state, abrupt)
    for (const id of doubted) touches.changes.add(touches.of('tightening', id, 'state'))
    // A pass that begins again may go on with what the copy says of it; that of the copy may not end what stands here.
    const again = touches.side === 'there' ? touches.changes : touches.stirs
    for (const id of begunAgain) again.add(touches.of('tightening', id, 'state'))
    for (const no of uncounted) again.add(touches.of('step', no, 'turns'))
  },
  cleared: ({ changes, sees }) => {
    changes.add('clearance')
    sees.add('work')
  },
  started: ({ changes, sees }) => {
    changes.add('start')
    sees.add('work')
  },
  closed: ({ changes, sees }) => {
    changes.add('start')
    sees.add('work')
  },
  // What these take back or bring back is touched where that is known.
  undone: nothing,
  redone: nothing,

  merged: nothing,
  'left-out-settled': (touches, { leftOut }) => touches.changes.add(touches.of('leftOut', leftOut, 'state')),
}

function inLower(text: string): string {
  return text.toLowerCase()
}

function beginOrAdd(
  touches: Touches,
  step: number,
  began: Parameters<Touches['strip']>[0] | undefined,
): void {
  if (began) touches.strip(began)
  else touches.addTo(step)
}

function takeUp(touches: Touches, step: number): void {
  touches.buildIn(step)
  // A count of turns begins again with it.
  touches.reads.add(touches.of('step', step, 'turns'))
}

function workIn(touches: Touches, step: number, began: boolean): void {
  if (began) takeUp(touches, step)
  else touches.buildIn(step)
}

function turn(touches: Touches, id: EntryOf<'tightened'>['tightening']): void {
  touches.changes.add(touches.of('tightening', id, 'state'))
  touches.buildIn(touches.state.tightenings.get(id)?.step)
}

/** A check is done with. One of a piece whose home went to another is that one's, or is no more. */
function answer(touches: Touches, id: EntryOf<'check-dropped'>['check']): void {
  touches.changes.add(touches.of('check', id, 'state'))
  const piece = touches.state.checks.get(id)?.piece
  if (piece !== undefined) touches.reads.add(touches.of('piece', piece, 'heir'))
}

function ask(touches: Touches, checks: EntryOf<'checks-set'>['checks']): void {
  for (const { piece, kind, what } of checks) {
    touches.changes.add(`${touches.of('piece', piece)} asked ${kind} ${inLower(what.join(', '))}`)
    touches.ask(piece)
  }
}

function reopen(touches: Touches, steps: readonly number[]): void {
  touches.stirs.add('machine')
  for (const no of steps)
    for (const what of ['built', 'begun', 'turns']) touches.changes.add(touches.of('step', no, what))
  for (const thing of thingsOf(touches, new Set(steps))) touches.changes.add(thing)
}

/** What is confirmed, turned, filled and put on in some steps. */
function thingsOf(touches: Touches, steps: ReadonlySet<number>): string[] {
  const { marks, tightenings, fluids, consumables } = touches.state
  const kinds = { mark: marks, tightening: tightenings, fluid: fluids, consumable: consumables } as const
  return (Object.keys(kinds) as (keyof typeof kinds)[]).flatMap((kind) =>
    [...kinds[kind].values()]
      .filter(({ step }) => steps.has(step))
      .map(({ id }) => touches.of(kind, id, 'state')),
  )
}
