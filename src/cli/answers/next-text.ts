import { findsOut } from '../../session/finds-out.ts'
import { proposedRound } from '../../session/last-round.ts'
import type { OpenLoosening } from '../../session/open-loosening.ts'
import type { Session } from '../../session/session.ts'
import type { NextThing, Todo } from '../../session/views.ts'
import { wrenchSetting } from '../../session/wrench-settings.ts'
import { consumableName } from '../../words/consumables/names.ts'
import { wrenchText } from '../../words/joint-questions.ts'
import {
  fastenerCalled,
  faultName,
  looseningName,
  markName,
  passName,
  stepName,
  tighteningName,
} from '../../words/names.ts'
import { passVerb } from '../../words/pass-work.ts'
import { countedPiece } from '../../words/pieces.ts'
import { placeWithLabel } from './labels.ts'

type State = Session['state']

/** What comes next in the job, with the words to say when it is done. */
export function nextText(state: State, next: NextThing): string {
  switch (next.kind) {
    case 'begin':
      return 'take the first piece off: off COUNT SIZE NAME'
    case 'strip':
      return next.ease === undefined ? stripText(state, next.step) : easeText(state, next.ease)
    case 'todo':
      return todoText(state, next.todo)
    case 'close':
      return closeText(state, next.step)
    case 'look':
      return `the last look before ${stepName(state, next.step)}: look ${next.step}`
    case 'take':
      return `${stepName(state, next.step)} can start: take ${next.step}`
    case 'blocked':
      return `${stepName(state, next.step)} is blocked: step ${next.step} says by what`
    case 'clear':
      return clearText(state)
    case 'leftovers':
      return `${next.leftovers.length} left over: left`
    case 'start':
      return 'cleared for the first start: started, when it has run'
    case 'check':
      return `after the start, ${stepName(state, next.step)}: done ${next.step}: RESULT`
    case 'close-job':
      return 'all checks are done: close'
    case 'nothing':
      return 'nothing: the job is closed'
    default:
      return next satisfies never
  }
}

function closeText(state: State, no: number): string {
  const step = state.steps.get(no)
  return step && findsOut(step)
    ? `${stepName(state, no)}, say what was found: done ${no}: RESULT`
    : `${stepName(state, no)} is complete: done`
}

function stripText(state: State, step: number): string {
  return `go on with ${stepName(state, step)}: off ..., and end when all of it is off`
}

function easeText(state: State, { loosening, next }: OpenLoosening): string {
  const through = `${next.through} of ${loosening.order.length} eased`
  const where = `${looseningName(state, loosening.id)}, ${passName(loosening, next.pass)}, ${through}`
  return `ease ${fastenerCalled(next.fastener)} (${where}): turn ${next.fastener} of ${loosening.id}`
}

function clearText(state: State): string {
  const round = proposedRound(state)
  return `nothing is left over: clear${round === null ? '' : `; before that, accept ${round}, a last round`}`
}

/** One thing to do in a step, with the words to say when it is done. */
export function todoText(state: State, todo: Todo): string {
  switch (todo.kind) {
    case 'take-out': {
      const { id } = todo.account.piece
      return `take out ${countedPiece(state, id, todo.count)}: take out ${id}`
    }
    case 'fit': {
      const { piece, home } = todo.account
      const lies = todo.lies.map(({ place, count }) => `${count} ${placeWithLabel(state, place)}`)
      const where = lies.length === 0 ? 'not within reach' : lies.join(', ')
      const at = home.position === undefined ? '' : ` at ${home.position}`
      return `fit ${countedPiece(state, piece.id, todo.owed)} (${where}): fit ${piece.id}${at}`
    }
    case 'confirm':
      return `see ${markName(state, todo.mark.id)}: confirm ${todo.mark.id}`
    case 'turn': {
      const { tightening, next } = todo
      const { id } = tightening
      const where = `${tighteningName(state, id)}, ${passName(tightening, next.pass)}, ${next.through} of ${tightening.order.length} through`
      const view = wrenchSetting(tightening, next.pass)
      const setting = view === null ? '' : `; ${wrenchText(view)}`
      return next.suspect
        ? `say whether ${next.fastener} was turned (${where}): turned ${id} yes|no because ...`
        : `${verbOf(tightening, next)} ${next.fastener} (${where}${setting}): turn ${next.fastener}`
    }
    case 'settle':
      return `put right ${faultName(state, todo.fault.id)}: settle ${todo.fault.id}: HOW`
    case 'turn-over':
      return `turn it over by hand, ${todo.turned} of ${todo.turns} full turns made: turned over ${todo.step}`
    case 'apply':
      return `put on ${consumableName(state, todo.consumable.id)}: applied ${todo.consumable.id}`
    case 'fill':
      return `fill ${todo.fluid.name}, ${todo.fluid.typed} came out: fill ${todo.fluid.id} AMOUNT`
    default:
      return todo satisfies never
  }
}

function verbOf({ passes }: Turn['tightening'], { pass }: Turn['next']): string {
  const at = passes[pass]
  return at ? passVerb(at) : 'turn'
}

type Turn = Extract<Todo, { kind: 'turn' }>
