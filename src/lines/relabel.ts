import type { Command, Into } from '../journal/command.ts'
import type { ContainerState, State } from '../journal/state.ts'
import { holdingsIn } from '../ledger/ledger.ts'
import { slotOf } from '../ledger/place.ts'

/**
 * What has to be recorded when a container gets another label: all that lies in it, stands in it, or is in pictures of
 * it goes to the container of that label, which is opened as one of the same kind where the label is unused; then the
 * old label is made void. Of a container that is not there, the last command alone, which is refused.
 */
export function relabelling(state: State, from: number, to: number, reason: string): Command[] {
  const container = state.containers.get(from)
  const voiding: Command = { do: 'void-container', container: from, insteadOf: to, reason }
  if (!container || container.voided !== null || from === to) return [voiding]
  const isNew = state.blanks.has(to)
  const holdings = holdingsIn(state.ledger, from)
  const opened = isNew && (container.kind === 'tray' || holdings.length === 0)
  const moves = holdings.map(({ piece, place, count }, index): Command => {
    const slot = slotOf(place) ?? undefined
    const into: Into =
      isNew && !opened && index === 0
        ? { kind: 'new', container: container.kind, name: container.name, no: to }
        : { kind: 'container', no: to, slot }
    return { do: 'move', piece, count, from: place, into, reason: undefined }
  })
  const outer = container.inside
  const stands: Command[] =
    isNew && !opened && outer !== null ? [{ do: 'put-container', container: to, inside: outer }] : []
  return [
    ...(opened ? [opening(container, to)] : []),
    ...moves,
    ...stands,
    ...insideOf(state, from).map((no): Command => ({ do: 'put-container', container: no, inside: to })),
    ...[...state.pictures.values()].flatMap(({ id, belongs }): Command[] =>
      belongs !== null && belongs !== 'none' && 'container' in belongs && belongs.container === from
        ? [{ do: 'sort-picture', picture: id, belongs: { container: to } }]
        : [],
    ),
    voiding,
  ]
}

function opening({ kind, slots, name, inside }: ContainerState, no: number): Command {
  return { do: 'open-container', kind, slots, name, inside: inside ?? undefined, no }
}

function insideOf({ containers }: State, no: number): number[] {
  return [...containers.values()].flatMap((each) =>
    each.inside === no && each.voided === null ? [each.no] : [],
  )
}
