import type { Entry } from '../../journal/entry.ts'
import type { UnknownThing } from '../../journal/refusal.ts'
import type { State } from '../../journal/state.ts'
import type { PieceId } from '../../ledger/piece.ts'
import { say } from '../cures.ts'
import { entryText } from '../entries.ts'
import { counted, isAre, numberRanges } from '../grammar.ts'
import { fluidName, markName, stepName } from '../names.ts'
import { pieceName } from '../pieces.ts'
import { type Told, told } from '../told.ts'
import { leftoverLines, toldLeftovers } from '../told-leftovers.ts'
import { putRight } from './put-right.ts'
import type { RefusalOf, Tellers } from './tellers.ts'

/** What concerns the job as a whole, the first start, and what is typed in general. */
export const jobRefusals: Tellers<
  | 'no-job'
  | 'job-open-already'
  | 'job-closed'
  | 'unknown'
  | 'count-wrong'
  | 'text-missing'
  | 'already'
  | 'not-clear'
  | 'nothing-recorded'
  | 'not-cleared'
  | 'not-started'
  | 'checks-open'
  | 'nothing-to-undo'
  | 'nothing-to-redo'
  | 'merge-stays'
  | 'written-since'
> = {
  'no-job': () => told('no job is open, so nothing can be recorded', 'open a job or start a new one first'),
  'job-open-already': ({ job }) =>
    told(`this job is open already: ${job.name}`, 'go on with it, or start the other as a job of its own'),
  'job-closed': ({ job }) =>
    told(
      `this job is closed: ${job.name}`,
      `notes can still be added; to open it again, ${say('undo')} until the closing is taken back`,
    ),
  unknown: (state, { what, id }) => {
    const known = knownIds(state, what)
    return told(
      `there is no ${NAMES[what] ?? what} ${id} in this job`,
      known.length === 0 ? `there is none yet: ${FIRST[what]}` : LOOK_UP[what],
      known.length === 0 ? [] : [`known: ${shortList(known)}`],
    )
  },
  'count-wrong': (_, { count }) =>
    told(`${count} cannot be right here`, 'count once more and say the number', [
      'pieces are whole numbers up to 9999, and no more come off than belong there; litres are more than 0',
    ]),
  'text-missing': (_, { what }) => told(`the ${what} is missing`, MISSING[what]),
  already: alreadyTold,
  'not-clear': (state, { leftovers }, code) => {
    const [first] = toldLeftovers(state, leftovers, code)
    const count = leftovers.length
    return told(
      count === 1
        ? 'not cleared: 1 thing is not as it must be at the first start'
        : `not cleared: ${count} things are not as they must be at the first start`,
      first ? `begin with the first: ${first.cure}` : say('left'),
      leftoverLines(state, leftovers, code),
    )
  },
  'nothing-recorded': ({ job }) =>
    told(
      `not cleared: nothing is recorded in this job yet, ${job.name}`,
      `look whether this is the job that you mean; ${say('off ...')} records what comes off`,
    ),
  'not-cleared': () =>
    told(
      'the first start is not cleared, or something was touched since',
      `${say('clear')} goes through everything once more, ${say('left')} shows what is in the way`,
    ),
  'not-started': ({ cleared }) =>
    told(
      'the machine has not had its first start, so the job cannot be closed',
      cleared ? `when it has run: ${say('started')}` : `${say('clear')}, then ${say('started')}`,
    ),
  'checks-open': (state, { steps }) =>
    told(
      `${counted(steps.length, 'check')} after the first start ${isAre(steps.length)} open`,
      `${say(`done ${steps[0]}`)} when it is done, or hand over what is open in words: ${say('close because ...')}`,
      steps.map((no) => {
        const due = state.steps.get(no)?.due
        return due ? `${stepName(state, no)}, due ${due}` : stepName(state, no)
      }),
    ),
  'nothing-to-undo': () =>
    told('nothing is left to take back', 'the opening of the job itself is never taken back'),
  'nothing-to-redo': () =>
    told('nothing was taken back since the last new entry', 'say again what is to be recorded'),
  'merge-stays': (_, { entry }) =>
    told(
      `entry ${entry} merged a copy of the job into this record, and a merge is not taken back`,
      `${say('log')} shows what came with it; put right with new lines what is not so`,
    ),
  'written-since': (state, refusal) => {
    const { entry, last } = refusal
    if (entry < 1 || entry > state.seq)
      return told(`there is no entry ${entry}, the last is ${last}`, `${say('undo')} takes that back`)
    if (!state.inForce.includes(entry))
      return told(
        `entry ${entry} is not in force: it was taken back, or it is one that cannot be`,
        `the last is ${last}: ${say('undo')} takes that back`,
        refusal.was ? meantLines(state, refusal.was) : [],
      )
    return told(
      `entry ${entry} is not the last any more: entry ${last} was written since`,
      sinceWords(refusal),
      refusal.was ? meantLines(state, refusal.was, refusal.standing) : [],
    )
  },
}

/** What the entry was, which others are about the same, and what puts it right. */
function meantLines(state: State, was: Entry, standing: readonly number[] = []): string[] {
  const others = standing.length === 1 ? 'entry' : 'entries'
  return [
    `${was.n}: ${entryText(state, was)}`,
    ...(standing.length === 0
      ? []
      : [`${others} ${numberRanges(standing)} after it ${isAre(standing.length)} about the same`]),
    ...putRight(state, was),
  ]
}

function sinceWords({ last, since }: RefusalOf<'written-since'>): string {
  const one = `${say('undo')} takes back the last one, entry ${last}`
  return since === undefined
    ? `look at entry ${last} first; ${say('undo')} takes back the last one`
    : `put it right with a new line; ${one}, and ${since + 1} times all of it down to this one`
}

/** What goes by another word at the bench. */
const NAMES: Partial<Record<UnknownThing, string>> = {
  trigger: 'list',
  consumable: 'thing to put on',
  'left-out': 'left-out entry',
}

const FIRST: Record<UnknownThing, string> = {
  step: `${say('begin TITLE')} starts one`,
  container: `${say('bag')} opens one`,
  piece: `${say('off ...')} records what comes off`,
  mark: 'marks are noted as parts come off',
  fluid: 'fluids are noted as they are drained',
  tightening: `${say('tighten PIECE: ...')} sets one, with the passes of the machine's manual`,
  loosening: `${say('loosen PIECE 2x4: ...')} sets one`,
  fault: 'faults are noted as parts come off',
  difference: `${say('count BAG = ...')} compares what is there with the record`,
  'left-out': `what does not fit of a copy is left out when the two are merged, ${say('merge PATH')}`,
  picture: `pictures come in from a folder, ${say('photos import FOLDER')}`,
  check: `${say('check PIECE: ...')} asks for one`,
  trigger: `${say('checks')} shows your lists, ${say('help when')} tells how one is made`,
  order: `${say('buy PIECE')} orders`,
  outing: `${say('out PIECE to WHOM')} sends pieces out`,
  consumable: `${say('sealant N: ...')} sets one for a step`,
}

const LOOK_UP: Record<UnknownThing, string> = {
  step: `${say('back')} shows every step`,
  container: `${say('where')} shows every container`,
  piece: `${say('where')} shows every piece`,
  mark: 'say one of these',
  fluid: 'say one of these',
  tightening: 'say one of these',
  loosening: 'say one of these',
  fault: 'say one of these',
  difference: 'say one of these',
  'left-out': `${say('left')} shows what is to be settled`,
  picture: `${say('photos')} shows every picture`,
  check: `${say('checks')} shows every check`,
  trigger: 'say one of these',
  order: `${say('to buy')} shows every order`,
  outing: 'say one of these',
  consumable: 'say one of these',
}

const MISSING: Record<RefusalOf<'text-missing'>['what'], string> = {
  title: `say what the work is: ${say('begin TITLE')}`,
  name: 'say what it is called',
  reason: 'say why, with the word because',
  text: 'say what is to be written down',
  result: `say what was found or measured: ${say('done N: ...')} or ${say('fail N: ...')}`,
}

const SHOWN = 12

function shortList(known: readonly string[]): string {
  if (known.length <= SHOWN) return known.join(', ')
  return `${known[0]} to ${known.at(-1)}, ${known.length} in all`
}

function knownIds(state: State, what: UnknownThing): string[] {
  const of = {
    step: state.steps,
    container: state.containers,
    piece: state.ledger.accounts,
    mark: state.marks,
    fluid: state.fluids,
    tightening: state.tightenings,
    loosening: state.loosenings,
    fault: state.faults,
    difference: state.differences,
    'left-out': state.leftOut,
    picture: state.pictures,
    check: state.checks,
    trigger: state.triggers,
    order: state.orders,
    outing: state.outings,
    consumable: state.consumables,
  }
  return [...of[what].keys()].map(String)
}

function alreadyTold(state: State, { what, id }: RefusalOf<'already'>): Told {
  switch (what) {
    case 'confirmed':
      return told(`${markName(state, id as `m${number}`)} is confirmed already`, 'go on with the next')
    case 'filled':
      return told(
        `${fluidName(state, id as `f${number}`)} is filled already`,
        `go on with the next; a wrong amount is taken back with ${say('undo')} if it was the last entry`,
      )
    case 'settled': {
      const how =
        state.faults.get(id as `x${number}`)?.settled ??
        state.differences.get(id as `d${number}`)?.settled ??
        state.leftOut.get(id as `w${number}`)?.settled
      return told(`${id} is settled already${how ? `: ${how}` : ''}`, 'nothing more is owed there')
    }
    case 'cleared':
      return told(
        'the first start is cleared already, and nothing was touched since',
        `when the machine has run: ${say('started')}`,
      )
    case 'started':
      return told('the first start is recorded already', `${say('close')} when the checks after it are done`)
    case 'looked':
      return told(
        `the last look before ${stepName(state, Number(id))}, is taken already`,
        'go on; when something beneath is touched, it is due again',
      )
    case 'voided':
      return told(`${id} is void already`, 'use another container')
    case 'archived':
      return told(
        state.job.archived ? `${id} is in the archive already` : `${id} is not in the archive`,
        'nothing needs doing',
      )
    case 'compared':
      return told(
        `${pieceName(state, id as PieceId)} is compared already, and is the right one`,
        `go on with the next; if it is wrong after all, ${say(`compare ${id}: wrong, ...`)}`,
      )
    default:
      return what satisfies never
  }
}
