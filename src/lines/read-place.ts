import type { ContainerKind, Into } from '../journal/command.ts'
import type { State } from '../journal/state.ts'
import { readCode } from '../label/code.ts'
import { NAMED_PLACES, type NamedPlace } from '../ledger/place.ts'

/**
 * A place as a person names it: `bag 3`, `3`, `label 14`, `tray 3/5`, a label code of this job, a container's own
 * name, `bench`, `out`, `hand`, or a container that is opened for it: `new` or `bag` for a bag, `a new tag`,
 * `new tray 12 slots cam caps`, `new tag hose label 14`. Null for anything else.
 */
export function readPlace(text: string, state: State): Into | null {
  const words = text.trim().replace(/^(?:the|in|into|on|onto) /i, '')
  const named = namedPlace(words)
  if (named) return { kind: 'place', place: named }
  if (/^(?:hand|the hand)$/i.test(words)) return { kind: 'hand' }
  if (/^(?:a )?new(?: one)?$/i.test(words)) return { kind: 'new', container: 'bag' }
  const opened = /^(?:(?:a )?new |an? |another )(.+)$/i.exec(words) ?? /^(bag|bin|tag|shelf)$/i.exec(words)
  if (opened) {
    const split = splitLabel(opened[1] ?? '', state)
    const container = split && readNewContainer(split.rest)
    return container && { kind: 'new', ...container, ...(split.no !== null && { no: split.no }) }
  }
  const slot = /^(?:(?:tray|bag|bin|tag|shelf|label) ?|c)?(\d{1,4}) ?(?:\/|,? slot) ?([^/\s]{1,12})$/i.exec(
    words,
  )
  if (slot) return { kind: 'container', no: Number(slot[1]), slot: slot[2] }
  const no = readContainer(words, state)
  if (no === null) return null
  // What an unused label is tied to or stuck on is said in the same breath: `into tag 14`.
  const as = state.blanks.has(no)
    ? /^(?:bag|bin|tray|tag|shelf)\b/i.exec(words)?.[0].toLowerCase()
    : undefined
  return { kind: 'container', no, ...(as !== undefined && { as: as as ContainerKind }) }
}

/**
 * A container as a person names it: `3`, `bag 3`, `label 3`, its label code, or its own name. Null for anything else.
 * The number may be that of an unused label.
 */
export function readContainer(text: string, state: State): number | null {
  const words = text.trim().replace(/^the /i, '')
  const bare = words.replace(/^c(?=\d)|^(?:(?:bag|bin|tray|tag|shelf|container) ?)?(?:label ?)?/i, '')
  const label = readLabel(bare, state)
  if (label !== null) return label
  const name = words.toLowerCase()
  const called = [...state.containers.values()].filter(
    ({ kind, name: own = '' }) =>
      own !== '' && [own, `${kind} ${own}`].some((each) => each.toLowerCase() === name),
  )
  return called.length === 1 ? (called[0]?.no ?? null) : null
}

/**
 * Takes the label that is to be used off the end: `exhaust nuts label 14`, also by its whole code. Null where digits
 * stand behind the word that are no label of this job: they are not part of a name.
 */
export function splitLabel(text: string, state: State): { rest: string; no: number | null } | null {
  const [, rest = '', said] = /^(|.* )label (\d[\d\s.-]*)$/i.exec(text.trim()) ?? []
  if (said !== undefined) {
    const no = readLabel(said, state)
    return no === null ? null : { rest: rest.trim().replace(/,$/, ''), no }
  }
  // A bare number behind a kind is a name, unless an unused label bears it: nobody calls another bag by that.
  const [, kind = '', number] = /^(bag|bin|tag|shelf) (\d{1,4})$/i.exec(text.trim()) ?? []
  if (number !== undefined && state.blanks.has(Number(number))) return { rest: kind, no: Number(number) }
  return { rest: text, no: null }
}

/** A number in this job, or a whole label code of it. */
function readLabel(text: string, state: State): number | null {
  const number = /^0{0,3}([1-9]\d{0,3})$/.exec(text.trim())?.[1]
  if (number !== undefined) return Number(number)
  const code = readCode(text)
  return code.kind === 'code' && code.job === state.job.no ? code.container : null
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
