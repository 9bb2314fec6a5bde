import type { Entry, EntryOf, EntryType } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { Move } from '../../ledger/account.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { say } from '../cures.ts'
import { containerPlace } from '../places.ts'

/** What puts an entry right that is not the last any more, one line for each thing that may be wrong in it. */
export function putRight(state: State, entry: Entry): string[] {
  const words = ways[entry.type] as Ways<EntryType> | undefined
  return words?.(entry, state) ?? []
}

type Ways<Type extends EntryType> = (entry: EntryOf<Type>, state: State) => string[]

/** Where a kind is missing, nothing shorter is known than to take back what came after it. */
const ways: { [Type in EntryType]?: Ways<Type> } = {
  opened: () => [
    `another name: ${say('rename job NAME')}`,
    `another machine: ${say('describe machine ...')}`,
  ],
  described: () => [
    `another name: ${say('rename job NAME')}`,
    `another machine: ${say('describe machine ...')}`,
  ],
  archived: ({ archived }) => [say(archived ? 'unarchive' : 'archive')],

  'strip-began': ({ step }) => [
    `another title: ${say(`rename step ${step.no} TITLE`)}`,
    `another order: ${say(`step ${step.no} after N`)}`,
  ],
  'step-added': ({ step }) => [`another title: ${say(`rename step ${step.no} TITLE`)}`],
  'step-changed': ({ step, title, after, needs, hides, minutes, critical }) => [
    ...(title === undefined ? [] : [`another title: ${say(`rename step ${step} TITLE`)}`]),
    ...(after === undefined ? [] : [`another order: ${say(`step ${step} after N`)}`]),
    ...(needs === undefined ? [] : [`another order: ${say(`step ${step} needs N`)}`]),
    ...(hides === undefined ? [] : [say(`step ${step} hides ${hides ? 'no' : 'yes'}`)]),
    ...(minutes === undefined ? [] : [`another time: ${say(`step ${step} minutes N`)}`]),
    ...(critical === undefined
      ? []
      : [say(`step ${step} ${critical === null ? 'critical' : 'not critical'}`)]),
  ],
  noted: () => [`what it should say: ${say('note: ...')}`],

  'container-opened': ({ container }) => [
    `what it stands in: ${say(`put ${container.no} in N`)}`,
    `never used: ${say(`void ${container.no} because ...`)}`,
  ],
  'container-put': ({ container }) => [`where it stands: ${say(`put ${container} in N`)}`],
  'labels-dealt': ({ from, to }) => [`not to be used: ${say(`void ${from}..${to} because ...`)}`],

  'came-off': ({ pieces, moves }, state) => ofNew(state, pieces, moves),
  supplied: ({ pieces, moves, order }, state) => [
    ...(order ? [`it goes back: ${say(`send back ${order.id} because ...`)}`] : []),
    ...ofNew(state, pieces, moves),
  ],
  carrying: ({ pieces, moves }, state) => ofNew(state, pieces, moves),
  'put-in': ({ pieces }, state) => {
    const [piece] = pieces
    return piece ? [`not in there: ${say(`take out ${piece.id}`)}`, ...anotherName(state, piece.id)] : []
  },
  moved: ({ moves }) => {
    const [move] = moves
    return move ? [`where it is: ${say(`move ${move.piece} to PLACE`)}`] : []
  },
  renamed: ({ mates }, state) => (mates[0] === undefined ? [] : anotherName(state, mates[0])),
  sized: ({ sizes }) => (sizes[0] ? [`the right size: ${say(`size ${sizes[0].piece} ...`)}`] : []),

  'build-began': ({ step }) => again(step),
  fitted: ({ step }) => again(step),
  'turned-over': ({ step }) => again(step),
  'build-done': ({ step }) => again(step),
  applied: (_, state) => (state.build === null ? [] : again(state.build)),
  reopened: ({ steps }) => (steps[0] === undefined ? [] : [`on with it: ${say(`take ${steps[0]}`)}`]),
  'tightening-set': ({ tightening }) => [`as the manual has it: ${say(`tighten ${tightening.piece}: ...`)}`],
  'condition-said': ({ tightening }) => [`as they are: ${say(`threads ${tightening} ...`)}`],
  'wrench-chosen': ({ tightening }) => [`the right one: ${say(`wrench ${tightening}`)}`],
  tightened: ({ tightening }) => [loosed(tightening)],
  'angle-settled': ({ tightening }) => [loosed(tightening)],
  'torque-missed': ({ fault }) => [`it is good: ${say(`settle ${fault.id}: ...`)}`],
  'laid-out': ({ of }) => (of[0] === undefined ? [] : [`as they lie: ${say(`layout ${of[0]}: row`)}`]),

  counted: ({ container }) => [`count anew: ${say(`count ${container} = ...`)}`],
  'pictures-added': ({ pictures }) =>
    pictures[0] ? [`what one shows: ${say(`photo ${pictures[0].id} to bag N`)}`] : [],
  'picture-sorted': ({ picture }) => [`what it shows: ${say(`photo ${picture} to bag N`)}`],

  'checks-set': ({ checks }) => checks.slice(0, 1).map(({ id }) => notNeeded(id)),
  judged: ({ of }) =>
    of.slice(0, 1).map((id) => `the last verdict counts: ${say(`judge ${id} fit again because ...`)}`),
  'trigger-set': ({ trigger }) => [notNeeded(trigger.id)],
  'order-lined': ({ orders }) =>
    orders
      .slice(0, 1)
      .flatMap(({ id }) => [
        `another number: ${say(`buy ${id} N`)}`,
        `not wanted: ${say(`cancel ${id} because ...`)}`,
      ]),
  'order-changed': ({ order }) => [`another number: ${say(`buy ${order} N`)}`],
  'order-returned': ({ order }) => [`it is here: ${say(`arrived ${order}`)}`],
  'part-noted': ({ piece }) => [`what is known of it: ${say(`part ${piece} from ...`)}`],
  'sent-out': ({ outing }) => [`it is here: ${say(`came back ${outing.id}`)}`],
  'consumable-set': ({ consumable }) => [notNeeded(consumable.id)],
}

/** Pieces that an entry brought into the record; the words are about the first of them. */
function ofNew(state: State, pieces: readonly { id: PieceId }[], moves: readonly Move[]): string[] {
  const id = pieces[0]?.id ?? moves[0]?.piece
  if (id === undefined) return []
  const into = moves.find(({ piece }) => piece === id)?.to
  const container = into === undefined ? null : containerPlace(into)
  const isOff = (state.ledger.accounts.get(id)?.at.get('machine') ?? 0) === 0
  return [
    ...anotherName(state, id),
    ...(isOff ? [`another place: ${say(`move ${id} to PLACE`)}`] : []),
    ...(container === null ? [] : [`another number: ${say(`count ${container.container} = ...`)}`]),
  ]
}

/** The ends of a hose share its name; what each of them sits on is its home. */
function anotherName(state: State, id: PieceId): string[] {
  const rename = say(`rename ${id} to NAME`)
  return state.ledger.accounts.get(id)?.piece.kind === 'connection'
    ? [`another name of the hose: ${rename}`, `of this end: ${say(`rehome ${id} to NAME because ...`)}`]
    : [`another name: ${rename}`]
}

function again(step: number): string[] {
  return [`take the step back and do it again: ${say(`reopen ${step} because ...`)}`]
}

function loosed(tightening: string): string {
  return `back all of it off and begin anew: ${say(`slacken ${tightening} because ...`)}`
}

function notNeeded(id: string): string {
  return `not needed: ${say(`drop ${id} because ...`)}`
}
