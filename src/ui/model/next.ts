import { groupedCode } from '../../label/code.ts'
import { openLoosening } from '../../session/open-loosening.ts'
import { codeOf } from '../../session/scan.ts'
import type { NextThing, Todo } from '../../session/views.ts'
import { consumableName } from '../../words/consumables/names.ts'
import { fastenerCalled, faultName, markName, passName, stepName } from '../../words/names.ts'
import { passVerb } from '../../words/pass-work.ts'
import { countedPiece } from '../../words/pieces.ts'
import { containerPlace, whereName } from '../../words/places.ts'
import type { Choice } from '../page.ts'
import { goTo } from '../page.ts'
import { cardNow, type Scene, type State } from './scene.ts'

/** What comes next in the job, as a choice: what Enter does on the card. */
export function nextChoice(scene: Scene, next: NextThing = cardNow(scene.session).next): Choice {
  const { state } = scene.session
  switch (next.kind) {
    case 'begin':
      return goTo('take the first piece off', { at: 'off' })
    case 'strip':
      return goTo(goOnText(state, next.step), { at: 'off' })
    case 'todo':
      return goTo(`go on: ${todoText(state, next.todo)}`, { at: 'step', step: next.step })
    case 'close':
      return goTo(`finish ${stepName(state, next.step)}`, { at: 'step', step: next.step })
    case 'look':
      return goTo(`last look before ${stepName(state, next.step)}`, { at: 'step', step: next.step })
    case 'take':
      return takeUp(state, next.step)
    case 'blocked':
      return goTo(`see what blocks ${stepName(state, next.step)}`, { at: 'step', step: next.step })
    case 'check':
      return goTo(`check after the start: ${stepName(state, next.step)}`, { at: 'step', step: next.step })
    case 'leftovers':
      return goTo('see what is left over', { at: 'left' })
    case 'clear':
      return goTo('nothing is left over: clear it for the first start', { at: 'left' })
    case 'start':
      return goTo('it is cleared: the first start', { at: 'left' })
    case 'close-job':
      return goTo('the checks are done: close the job', { at: 'left' })
    case 'nothing':
      return goTo('the job is closed: look at its history', { at: 'log' })
    default:
      return next satisfies never
  }
}

/** A step that comes off; where its fasteners are half eased, the one that is next. */
function goOnText(state: State, step: number): string {
  const easing = openLoosening(state)
  if (easing?.loosening.step !== step) return `go on with ${stepName(state, step)}`
  const { loosening, next } = easing
  return `go on: ease ${fastenerCalled(next.fastener)}, ${passName(loosening, next.pass)}, ${loosening.name}`
}

/** Taking up a step of the way back, and going to it. */
export function takeUp(state: State, step: number): Choice {
  return {
    says: `take up ${stepName(state, step)}`,
    act: { do: 'send', commands: [{ do: 'begin-build', step }], to: { at: 'step', step } },
  }
}

/** One thing to do, in words: `fit cam cap I3, from bag 4`. */
export function todoText(state: State, todo: Todo): string {
  switch (todo.kind) {
    case 'take-out':
      return `take out ${countedPiece(state, todo.account.piece.id, todo.count)}`
    case 'fit': {
      const { piece, home } = todo.account
      const at = home.alikeAt ? ` at ${home.alikeAt.join(', ')}` : ''
      return `fit ${countedPiece(state, piece.id, todo.owed)}${at}, ${placesText(state, todo.lies)}`
    }
    case 'confirm':
      return `see ${markName(state, todo.mark.id)}`
    case 'turn': {
      const { tightening, next } = todo
      const doubt = next.suspect ? ', perhaps turned already' : ''
      const pass = tightening.passes[next.pass]
      return `${pass ? passVerb(pass) : 'turn'} ${fastenerCalled(next.fastener)}${doubt}, ${passName(tightening, next.pass)}, ${tightening.name}`
    }
    case 'settle':
      return `put right: ${faultName(state, todo.fault.id)}`
    case 'turn-over':
      return `turn it over by hand, ${todo.turned} of ${todo.turns} full turns made`
    case 'apply':
      return `put on ${consumableName(state, todo.consumable.id)}`
    case 'fill':
      return `fill ${todo.fluid.name}, ${todo.fluid.typed} came out`
    default:
      return todo satisfies never
  }
}

/** Where all of it lies: `1 on the bench and 7 in bag 5 (002 0005 29)`, `in bag 4 (017 0004 86)`. */
export function placesText(state: State, lies: Extract<Todo, { kind: 'fit' }>['lies']): string {
  if (lies.length === 0) return 'not within reach'
  const said = lies.map(
    ({ place, count }) => `${lies.length > 1 ? `${count} ` : ''}${liesText(state, place)}`,
  )
  return said.join(' and ')
}

/** Where a piece lies, with the number on the label: `in bag 4 (017 0004 86)`. */
function liesText(state: State, place: Parameters<typeof whereName>[1]): string {
  const inside = containerPlace(place)
  if (!inside) return whereName(state, place)
  return `${whereName(state, place)} (${groupedCode(codeOf(state, inside.container))})`
}
