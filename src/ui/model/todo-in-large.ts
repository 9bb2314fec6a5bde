import type { Todo } from '../../session/views.ts'
import { durationWords } from '../../words/durations.ts'
import { behindCount, countedPiece, pieceName } from '../../words/pieces.ts'
import { whereName } from '../../words/places.ts'
import type { Large } from '../page.ts'
import { inLarge } from './large-words.ts'
import type { State } from './scene.ts'
import { turnInLarge } from './turn-in-large.ts'

/** The next thing of a step in large letters: where it is or what it is, and what hands must know of it. */
export function todoInLarge(state: State, todo: Todo, times: readonly string[] = []): Large {
  const letters = todoLetters(todo)
  switch (todo.kind) {
    case 'turn':
      return turnInLarge(todo)
    case 'fit': {
      const { account, lies, owed } = todo
      const { position, alikeAt = [] } = account.home
      const name = pieceName(state, account.piece.id)
      const where = lies.map(({ place }) => whereName(state, place)).join(' and ') || 'not within reach'
      const what = position === undefined ? behindCount(state, account.piece.id, owed) : name
      const at = alikeAt.length === 0 ? '' : `at ${alikeAt.join(', ')}`
      // As large as each other, "TANK" and "ON THE BENCH" would say where the tank is, not the hose.
      return /\d/.test(letters)
        ? inLarge(letters, [where, what, at, ...times], 1)
        : inLarge(letters, [what, where, ...times])
    }
    case 'take-out':
      return inLarge(letters, [countedPiece(state, todo.account.piece.id, todo.count), ...times])
    case 'confirm': {
      const { text, piece } = todo.mark
      return inLarge(letters, [text, piece === undefined ? '' : `on ${pieceName(state, piece)}`, ...times])
    }
    case 'settle':
      return inLarge(letters, ['never came to its torque', 'no other is turned on'])
    case 'turn-over':
      return inLarge(letters, ['full turns by hand, never back', 'stop at any hard point'])
    case 'apply': {
      const { name, side, workMinutes } = todo.consumable
      return inLarge(letters, [
        side === undefined ? name : `up, ${name}`,
        // A time that runs says more than the one that was asked for.
        workMinutes === undefined || times.length > 0 ? '' : `together within ${durationWords(workMinutes)}`,
        ...times,
      ])
    }
    case 'fill':
      return inLarge(letters, [todo.fluid.name, `${todo.fluid.typed} came out`])
    default:
      return todo satisfies never
  }
}

/** What hands look for, in as few signs as there are: a position, a number, a word. The screens show it large. */
export function todoLetters(todo: Todo): string {
  switch (todo.kind) {
    case 'turn':
      return todo.next.fastener
    case 'fit':
      return todo.account.home.position ?? String(todo.owed)
    case 'take-out':
      return 'OUT'
    case 'confirm':
      return 'SEE'
    case 'settle':
      return todo.fault.in?.fastener ?? todo.fault.id.toUpperCase()
    case 'turn-over':
      return `${todo.turned} / ${todo.turns}`
    case 'apply':
      return todo.consumable.side?.toUpperCase() ?? 'PUT ON'
    case 'fill':
      return 'FILL'
    default:
      return todo satisfies never
  }
}
