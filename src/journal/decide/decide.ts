import type { Clock } from '../../plan/facts.ts'
import type { Command, CommandName } from '../command.ts'
import type { EntryBody } from '../entry.ts'
import type { Refusal } from '../refusal.ts'
import { LONGEST_TEXT } from '../shapes/parts.ts'
import type { State } from '../state.ts'
import {
  confirmMark,
  decideBuild,
  decideClose,
  decideFail,
  decideFit,
  decideLook,
  decideReopen,
  turnOver,
} from './build.ts'
import { compare } from './comparing.ts'
import { apply, dropConsumable, setConsumable } from './consumables.ts'
import { openContainer, putContainer, voidContainer } from './containers.ts'
import { count, explain } from './count.ts'
import { dropTrigger, find, setTrigger } from './findings.ts'
import { archive, clear, closeJob, describe, firstStart, openJob, redo, stop, undo } from './job.ts'
import { askChecks, bind, dropCheck, judge, passChecks } from './judging.ts'
import { countIn } from './kits.ts'
import { dealLabels, voidLabels } from './labels.ts'
import { setLoosening } from './loosening.ts'
import { measure, size } from './measure.ts'
import { noteMerge, settleLeftOut } from './merging.ts'
import { changeOrder, lineOrders, notePart, receive, returnOrder } from './orders.ts'
import { comeBack, sendOut } from './outings.ts'
import { override } from './overriding.ts'
import { addPictures, sortPicture } from './pictures.ts'
import { layOut, point } from './positions.ts'
import { Refused } from './refuse.ts'
import { renamePiece } from './rename.ts'
import { seeAgain } from './second-looks.ts'
import { setTightening } from './set-tightening.ts'
import { addStep, beginStrip, changeStep, endStrip, note } from './steps.ts'
import { drain, fill, mark, putIn, takeOff } from './strip.ts'
import { carry, moveOver } from './sub-parts.ts'
import { acceptLost, leaveOff, move, rehome, settleFault, supply, useAgain } from './supply.ts'
import { chooseWrench, missTorque, sayCondition, settleAngle, slacken, tighten } from './tightening.ts'

export type Decision = { ok: true; body: EntryBody } | { ok: false; refusal: Refusal }

/**
 * Decides a command on a state: the one entry that it makes, or why not. Changes nothing. `clock`: when and by whom it
 * is asked; the time of the last entry when not said.
 */
export function decide(state: State, command: Command, clock: Clock = state.clock): Decision {
  try {
    return { ok: true, body: fitting(dispatch({ ...state, clock }, fitting(command))) }
  } catch (error) {
    if (error instanceof Refused) return { ok: false, refusal: error.refusal }
    throw error
  }
}

function dispatch(state: State, command: Command): EntryBody {
  if (state.job.no === 0 && command.do !== 'open-job')
    throw new Refused({ code: 'no-job', command: command.do })
  if (state.closed && !WORKS_WHEN_CLOSED.has(command.do)) throw new Refused({ code: 'job-closed' })
  const decider = deciders[command.do] as (state: State, command: Command) => EntryBody
  return decider(state, command)
}

/** A command or an entry with its texts cut to what an entry takes, so that it can be read back. */
function fitting<Value>(value: Value): Value
function fitting(value: unknown): unknown {
  // A character of two halves is kept whole or left out.
  if (typeof value === 'string') return value.slice(0, LONGEST_TEXT).replace(/[\uD800-\uDBFF]$/, '')
  if (Array.isArray(value)) return value.map((item) => fitting(item))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, fitting(item)]))
}

const WORKS_WHEN_CLOSED = new Set<CommandName>([
  'undo',
  'redo',
  'archive',
  'describe',
  'rename-piece',
  'note',
  'add-pictures',
  'sort-picture',
  'stop',
  'note-merge',
  'settle-left-out',
])

type Deciders = {
  [Name in CommandName]: (state: State, command: Extract<Command, { do: Name }>) => EntryBody
}

const deciders: Deciders = {
  'open-job': openJob,
  describe,
  archive,
  'begin-strip': beginStrip,
  'end-strip': endStrip,
  'add-step': addStep,
  'change-step': changeStep,
  note,
  'take-off': takeOff,
  drain,
  fill,
  mark,
  'put-in': putIn,
  'open-container': openContainer,
  'put-container': putContainer,
  'void-container': voidContainer,
  'deal-labels': dealLabels,
  'void-labels': voidLabels,
  move,
  supply,
  'leave-off': leaveOff,
  'accept-lost': acceptLost,
  'use-again': useAgain,
  rehome,
  'rename-piece': renamePiece,
  'settle-fault': settleFault,
  'note-merge': noteMerge,
  'settle-left-out': settleLeftOut,
  'begin-build': decideBuild,
  fit: decideFit,
  confirm: confirmMark,
  'lay-out': layOut,
  point,
  'set-tightening': setTightening,
  'say-condition': sayCondition,
  'choose-wrench': chooseWrench,
  tighten,
  'settle-angle': settleAngle,
  slacken,
  'miss-torque': missTorque,
  'set-loosening': setLoosening,
  'turn-over': turnOver,
  measure,
  size,
  look: decideLook,
  'close-step': decideClose,
  fail: decideFail,
  reopen: decideReopen,
  override,
  count,
  explain,
  'ask-checks': askChecks,
  'pass-checks': passChecks,
  'drop-check': dropCheck,
  judge,
  bind,
  compare,
  'set-trigger': setTrigger,
  'drop-trigger': dropTrigger,
  find,
  carry,
  'move-over': moveOver,
  'line-orders': lineOrders,
  'change-order': changeOrder,
  receive,
  'return-order': returnOrder,
  'note-part': notePart,
  'count-in': countIn,
  'send-out': sendOut,
  'come-back': comeBack,
  'set-consumable': setConsumable,
  'drop-consumable': dropConsumable,
  apply,
  'see-again': seeAgain,
  'add-pictures': addPictures,
  'sort-picture': sortPicture,
  stop,
  clear,
  'first-start': firstStart,
  'close-job': closeJob,
  undo,
  redo,
}
