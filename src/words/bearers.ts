import type { State } from '../journal/state.ts'
import type { Bearer } from '../session/scan.ts'
import { stepName } from './names.ts'
import { containerName } from './places.ts'

/** What bears a label code: `bag 3 (cam caps)`, `label 14` while nothing has it, `step 4, valve cover`, `the machine`. */
export function bearerName(state: State, bearer: Bearer): string {
  switch (bearer.kind) {
    case 'container':
    case 'blank':
      return containerName(state, bearer.container)
    case 'step':
      return stepName(state, bearer.step)
    case 'machine':
      return 'the machine'
    default:
      return bearer satisfies never
  }
}

/** What bears a label code of another job, of which only the number is known: `container 3`, `step 4`. */
export function otherBearerName(bearer: Bearer): string {
  switch (bearer.kind) {
    case 'container':
    case 'blank':
      return `container ${bearer.container}`
    case 'step':
      return `step ${bearer.step}`
    case 'machine':
      return 'the machine'
    default:
      return bearer satisfies never
  }
}
