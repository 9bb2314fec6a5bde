import { openLoosening } from '../../session/open-loosening.ts'
import type { NextThing } from '../../session/views.ts'
import type { Large } from '../page.ts'
import { chip, SIGNS } from '../signs.ts'
import { inLarge } from './large-words.ts'
import { looseningInLarge } from './loosening-rows.ts'
import { nextChoice } from './next.ts'
import type { Scene } from './scene.ts'
import { todoInLarge } from './todo-in-large.ts'
import { turnInLarge } from './turn-in-large.ts'

/** What comes next in the job, in large letters. */
export function nextInLarge(scene: Scene, next: NextThing): Large {
  const { state } = scene.session
  const { says } = nextChoice(scene, next)
  switch (next.kind) {
    case 'todo':
      // Only on the page of its step do numbers answer.
      return next.todo.kind === 'turn'
        ? turnInLarge(next.todo, 'was it turned?')
        : todoInLarge(state, next.todo)
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
