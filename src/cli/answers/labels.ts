import { groupedCode } from '../../label/code.ts'
import { bearerOf, codeOf } from '../../session/scan.ts'
import type { Session } from '../../session/session.ts'
import { bearerName } from '../../words/bearers.ts'
import { containerPlace, whereName } from '../../words/places.ts'

type State = Session['state']

/** The label code of a container as it stands on the label: `007 0003 42`. */
export function label(state: State): (container: number) => string {
  return (container) => groupedCode(codeOf(state, container))
}

/** What bears a label code of this job: a container, an unused label, a step or the machine; null for nothing. */
export function bearerText(state: State, number: number): string | null {
  const bearer = bearerOf(state, number)
  return bearer && bearerName(state, bearer)
}

/** Where a thing is, with the code on the label: `in bag 4 (007 0004 86)`. */
export function placeWithLabel(state: State, place: Parameters<typeof whereName>[1]): string {
  const inside = containerPlace(place)
  const where = whereName(state, place)
  return inside ? `${where} (${label(state)(inside.container)})` : where
}
