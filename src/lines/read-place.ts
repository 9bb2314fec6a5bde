import type { ContainerKind, Into } from '../journal/command.ts'
import type { State } from '../journal/state.ts'
import { readCode } from '../label/code.ts'
import { NAMED_PLACES, type NamedPlace } from '../ledger/place.ts'

/**
 * A place as a person names it: `bag 3`, `3`, `tray 3/5`, a label code of this job, a container's own name,
 * `bench`, `out`, `hand`, or a container that is opened for it: `bag`, `new bag`, `new tray 12 slots cam caps`.
 * Null for anything else.
 */
export function readPlace(text: string, state: State): Into | null {
  const words = text.trim().replace(/^(?:the|in|into|on|onto) /i, '')
  const named = namedPlace(words)
  if (named) return { kind: 'place', place: named }
  if (/^(?:hand|the hand)$/i.test(words)) return { kind: 'hand' }
  const opened = /^(?:new |an? )(.+)$/i.exec(words) ?? /^(bag|bin|tag|shelf)$/i.exec(words)
  if (opened) {
    const container = readNewContainer(opened[1] ?? '')
    return container && { kind: 'new', ...container }
  }
  const slot = /^(?:(?:tray|bag|bin|tag|shelf) ?|c)?(\d{1,4}) ?(?:\/|,? slot) ?([^/\s]{1,12})$/i.exec(words)
  if (slot) return { kind: 'container', no: Number(slot[1]), slot: slot[2] }
  const no = readContainer(words, state)
  return no === null ? null : { kind: 'container', no }
}

/** A container as a person names it: `3`, `bag 3`, its label code, or its own name. Null for anything else. */
export function readContainer(text: string, state: State): number | null {
  const words = text.trim().replace(/^the /i, '')
  const number = /^(?:(?:bag|bin|tray|tag|shelf|container) ?|c)?0{0,3}([1-9]\d{0,3})$/i.exec(words)
  if (number) return Number(number[1])
  const code = readCode(words)
  if (code.kind === 'code' && code.job === state.job.no) return code.container
  const name = words.toLowerCase()
  const called = [...state.containers.values()].filter(
    ({ kind, name: own = '' }) =>
      own !== '' && [own, `${kind} ${own}`].some((each) => each.toLowerCase() === name),
  )
  return called.length === 1 ? (called[0]?.no ?? null) : null
}

/** What is opened: `bag`, `tray 12 slots`, `bin pump bolts`. Null when it is no container, or a tray of no size. */
export function readNewContainer(
  text: string,
): { container: ContainerKind; slots?: number; name?: string } | null {
  const [, kind, tail = ''] = /^(bag|bin|tray|tag|shelf)(?: (.+))?$/i.exec(text.trim()) ?? []
  if (!kind) return null
  const container = kind.toLowerCase() as ContainerKind
  if (container !== 'tray') return { container, ...(tail !== '' && { name: tail }) }
  const [, slots, name] = /^(\d{1,3})(?: slots?)?(?: (.+))?$/i.exec(tail) ?? []
  if (!slots || Number(slots) < 1 || Number(slots) > 200) return null
  return { container, slots: Number(slots), ...(name !== undefined && { name }) }
}

function namedPlace(words: string): NamedPlace | null {
  const name = words
    .toLowerCase()
    .replace(/^the /, '')
    .replace(/^spares$/, 'spare')
  return (NAMED_PLACES as readonly string[]).includes(name) ? (name as NamedPlace) : null
}
