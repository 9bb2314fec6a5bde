import type { Todo } from '../../session/views.ts'
import { passUnit, wrenchSetting } from '../../session/wrench-settings.ts'
import { quarterMarks } from '../../trade/tightening-passes/turn.ts'
import { durationWords } from '../../words/durations.ts'
import { torqueText, wrenchBrief } from '../../words/joint-questions.ts'
import { passName } from '../../words/names.ts'
import { passVerb } from '../../words/pass-work.ts'
import { behindCount, countedPiece, pieceName } from '../../words/pieces.ts'
import { blank, type Line, line, strong } from '../text/line.ts'
import { besideLetters } from './beside.ts'
import { placesText } from './next.ts'
import type { State } from './scene.ts'
import { todoLetters } from './todo-in-large.ts'

/** The next thing: what hands look for in large letters, the rest beside it. */
export function nextRows(state: State, todo: Todo, width: number): Line[] {
  const { letters, under } = nextTold(state, todo)
  return [
    ...besideLetters(
      letters,
      [line(strong(isInDoubt(todo) ? 'IN DOUBT' : `NEXT: ${verbOf(todo)}`)), ...under],
      width,
    ),
    blank,
  ]
}

function isInDoubt(todo: Todo): boolean {
  return todo.kind === 'turn' && todo.next.suspect
}

function verbOf(todo: Todo): string {
  if (todo.kind !== 'turn') return VERBS[todo.kind]
  const { tightening, next } = todo
  const pass = tightening.passes[next.pass]
  const verb = pass ? passVerb(pass).toUpperCase() : 'TURN'
  return next.pass > 0 && next.through === 0 ? `${verb}, A NEW PASS` : verb
}

const VERBS = {
  fit: 'FIT',
  'take-out': 'TAKE OUT',
  confirm: 'SEE',
  fill: 'FILL',
  apply: 'PUT ON',
  settle: 'PUT RIGHT',
  'turn-over': 'TURN IT OVER',
} as const

/** What to set on the wrench, where one was named; what a share of a torque comes to; how far an angle goes by the quarters of a mark. */
function howRows(tightening: Turn['tightening'], pass: number): Line[] {
  const setting = wrenchSetting(tightening, pass)
  if (setting !== null) {
    const { setting: said, note } = wrenchBrief(setting)
    return [line(strong(said)), ...(note === '' ? [] : [line(note)])]
  }
  const at = tightening.passes[pass]
  // A share of a torque is no figure that a wrench has.
  if (at && 'newtonMetres' in at && at.typed.includes('%'))
    return [line(strong(`that is ${torqueText(at.newtonMetres, passUnit(at.typed))}`))]
  if (at?.kind !== 'angle') return at?.kind === 'witness' ? [line('a stripe from its head to the part')] : []
  const { quarters, rest } = quarterMarks(at.degrees)
  const turns = quarters === 0 ? '' : `${quarters} quarter ${quarters === 1 ? 'turn' : 'turns'}`
  const further = rest === 0 ? '' : `${rest} deg`
  return [line(`${[turns, further].filter(Boolean).join(' and ')} on from its mark`)]
}

type Turn = Extract<Todo, { kind: 'turn' }>

/** What its numbers on the step's page stand for, where they may be out of sight. */
function answersText({ tightening, next }: Turn): Line | string {
  if (next.suspect) return [strong('may have been turned already: 1 yes, 2 no')]
  const pass = tightening.passes[next.pass]
  return pass && 'newtonMetres' in pass ? 'type 2 if it does not come to its torque' : tightening.name
}

/** What a step asks for next: what hands look for, and all there is to know of it. */
export function nextTold(state: State, todo: Todo): { letters: string; under: Line[] } {
  return { letters: todoLetters(todo), under: underLetters(state, todo) }
}

function underLetters(state: State, todo: Todo): Line[] {
  switch (todo.kind) {
    case 'turn': {
      const { tightening, next } = todo
      return [
        line(strong(passName(tightening, next.pass))),
        ...howRows(tightening, next.pass),
        line(`${next.through} of ${tightening.order.length} through`),
        line(answersText(todo)),
      ]
    }
    case 'fit': {
      const { account, lies, owed } = todo
      const name = pieceName(state, account.piece.id)
      return [
        line(strong(account.home.position === undefined ? behindCount(state, account.piece.id, owed) : name)),
        ...(account.home.alikeAt ? [line(`at ${account.home.alikeAt.join(', ')}`)] : []),
        line(placesText(state, lies)),
      ]
    }
    case 'take-out':
      return [line(strong(countedPiece(state, todo.account.piece.id, todo.count)))]
    case 'confirm': {
      const { text, piece } = todo.mark
      const on = piece === undefined ? [] : [line(`on ${pieceName(state, piece)}`)]
      return [line(strong(text)), ...on]
    }
    case 'settle':
      return [
        line(strong('never came to its torque')),
        line(todo.fault.in?.says ?? ''),
        line('no other is turned on'),
      ]
    case 'turn-over':
      return [
        line(strong('full turns by hand, in one go')),
        line('the way the machine runs, never back'),
        line('stop at any hard point: look, do not force it'),
      ]
    case 'apply': {
      const { name, side, workMinutes } = todo.consumable
      return [
        line(strong(side === undefined ? name : `up, ${name}`)),
        ...(workMinutes === undefined ? [] : [line(`together within ${durationWords(workMinutes)}`)]),
      ]
    }
    case 'fill':
      return [line(strong(todo.fluid.name)), line(`${todo.fluid.typed} came out`)]
    default:
      return todo satisfies never
  }
}
