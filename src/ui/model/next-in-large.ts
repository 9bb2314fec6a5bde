import { openLoosening } from '../../session/open-loosening.ts'
import type { NextThing, Todo } from '../../session/views.ts'
import { durationWords } from '../../words/durations.ts'
import { countedPiece, pieceName } from '../../words/pieces.ts'
import { whereName } from '../../words/places.ts'
import type { Large } from '../page.ts'
import { chip, SIGNS } from '../signs.ts'
import { inLarge } from './large-words.ts'
import { looseningInLarge } from './loosening-rows.ts'
import { nextChoice } from './next.ts'
import type { Scene, State } from './scene.ts'
import { turnInLarge } from './turn-in-large.ts'

/** The next thing of a step in large letters: where it is or what it is, and what hands must know of it. */
export function nextInLarge(state: State, todo: Todo, times: readonly string[] = []): Large {
  switch (todo.kind) {
    case 'turn':
      return turnInLarge(todo)
    case 'fit': {
      const { account, owed, lies } = todo
      const { position, alikeAt = [] } = account.home
      const name = pieceName(state, account.piece.id)
      const where = lies.map(({ place }) => whereName(state, place)).join(' and ')
      return inLarge(
        position ?? String(owed),
        [
          where || 'not within reach',
          position === undefined ? `× ${name}` : name,
          alikeAt.length === 0 ? '' : `at ${alikeAt.join(', ')}`,
          ...times,
        ],
        1,
      )
    }
    case 'take-out':
      return inLarge('OUT', [countedPiece(state, todo.account.piece.id, todo.count), ...times])
    case 'confirm': {
      const { text, piece } = todo.mark
      return inLarge('SEE', [text, piece === undefined ? '' : `on ${pieceName(state, piece)}`, ...times])
    }
    case 'settle': {
      const { id, in: where } = todo.fault
      return inLarge(where?.fastener ?? id, ['never came to its torque', 'no other is turned on'])
    }
    case 'turn-over':
      return inLarge(`${todo.turned} / ${todo.turns}`, [
        'full turns by hand, never back',
        'stop at any hard point',
      ])
    case 'apply': {
      const { name, side, workMinutes } = todo.consumable
      return inLarge(side ?? 'PUT ON', [
        side === undefined ? name : `up, ${name}`,
        // A time that runs says more than the one that was asked for.
        workMinutes === undefined || times.length > 0 ? '' : `together within ${durationWords(workMinutes)}`,
        ...times,
      ])
    }
    case 'fill':
      return inLarge('FILL', [todo.fluid.name, `${todo.fluid.typed} came out`])
    default:
      return todo satisfies never
  }
}

/** What comes next in the job, in large letters. */
export function thingInLarge(scene: Scene, next: NextThing): Large {
  const { state } = scene.session
  const { says } = nextChoice(scene, next)
  switch (next.kind) {
    case 'todo':
      // Only on the page of its step do numbers answer.
      return next.todo.kind === 'turn'
        ? turnInLarge(next.todo, 'was it turned?')
        : nextInLarge(state, next.todo)
    case 'blocked':
      return inLarge(`STEP ${next.step}`, [[chip(SIGNS.blocked)], says])
    case 'strip': {
      const easing = openLoosening(state)
      return easing?.loosening.step === next.step
        ? looseningInLarge(easing)
        : inLarge(`STEP ${next.step}`, [says])
    }
    case 'close':
    case 'look':
    case 'take':
    case 'check':
      return inLarge(`STEP ${next.step}`, [says])
    case 'leftovers':
      return inLarge(`${next.leftovers.length} LEFT`, [says])
    case 'begin':
      return inLarge('OFF', [says])
    case 'clear':
      return inLarge('CLEAR', [says])
    case 'start':
      return inLarge('START', [says])
    case 'close-job':
      return inLarge('CLOSE', [says])
    case 'nothing':
      return inLarge('CLOSED', [says])
    default:
      return next satisfies never
  }
}
