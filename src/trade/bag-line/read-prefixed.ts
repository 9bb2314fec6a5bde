import type { UnitSystem } from '../quantity.ts'
import type { BagItem, NoteItem } from './bag-item.ts'
import { readCount } from './count.ts'
import { connectionNoun, isPlural } from './nouns.ts'
import { fault, isFault, type Outcome } from './outcome.ts'
import { readAid, readConnection, readEnds } from './read-ends.ts'
import { readFluid } from './read-fluid.ts'
import { readPiece } from './read-piece.ts'
import { type State, stateOf } from './state-words.ts'

const noteKinds: Record<string, NoteItem['kind']> = {
  note: 'note',
  notes: 'note',
  caution: 'caution',
  warning: 'caution',
  careful: 'caution',
  used: 'used',
  'tools used': 'used',
}

/**
 * Reads what has a word and a colon before it: `note: ...`, `mark I3: ...`, `tools: ...`, `missing: ...`,
 * `fuel hose: ...`. Undefined for a text without such a colon, unless it begins as one that lacks its colon.
 */
export function readPrefixed(text: string, units: UnitSystem): Outcome | undefined {
  // A colon between digits is a ratio or a time of day.
  const match = /^([^:]{1,80}?) ?:(?!(?<=\d:)\d) ?(.*)$/u.exec(text)
  if (!match) return readWithoutColon(text)
  const [, prefix = '', rest = ''] = match
  const key = prefix.toLowerCase()
  const noteKind = Object.hasOwn(noteKinds, key) ? noteKinds[key] : undefined
  if (noteKind) return readNote(noteKind, prefix, rest)
  if (/^marks?(?: |$)/.test(key)) return readMark(prefix, rest)
  if (/^tools?$/.test(key)) return readTools(prefix, rest)
  if (/^aids?$/.test(key)) return readEnds(rest) ?? readAid(rest, '')
  const state = stateOf(key)
  if (state) return readStated(state, prefix, rest)
  if (connectionNoun(prefix)) return readConnection(prefix, rest)
  const fluid = readFluid(`${prefix} ${rest}`.trim(), units)
  if (fluid) return fluid
  return fault(
    'kind',
    `${prefix}:`,
    ...intoName(prefix, rest),
    `note: ${prefix}${rest === '' ? '' : `: ${rest}`}`,
  )
}

/** `mark dot upright` is no piece of that name. */
function readWithoutColon(text: string): Outcome | undefined {
  const [, prefix, rest] = /^(note|mark|caution) (.+)$/i.exec(text) ?? []
  return prefix === undefined ? undefined : fault('kind', prefix, `${prefix}: ${rest}`)
}

function readStated(state: State, prefix: string, rest: string): Outcome {
  if (rest === '') return fault('text', `${prefix}:`, `${prefix}: 1 M6x20 cover bolt`)
  // The ends of a connection have no such state; its line is a note.
  if (rest.includes('>')) return fault('kind', `${prefix}:`, `note: ${prefix}: ${rest}`)
  const outcome = readPiece(rest, state)
  return isFault(outcome)
    ? { ...outcome, nearest: outcome.nearest.map((form) => `${prefix}: ${form}`) }
    : outcome
}

function readNote(kind: NoteItem['kind'], prefix: string, text: string): Outcome {
  return text === ''
    ? fault('text', `${prefix}:`, `${prefix}: ${noteExample[kind]}`)
    : { items: [{ kind, text }] }
}

const noteExample: Record<NoteItem['kind'], string> = {
  note: 'gasket stuck',
  caution: 'spring under load',
  used: '10 mm socket, magnet',
}

function readMark(prefix: string, text: string): Outcome {
  const on = prefix.replace(/^marks? ?/i, '')
  if (text === '') return fault('text', `${prefix}:`, `${prefix}: arrow to chain`)
  return { items: [{ kind: 'mark', text, ...(on !== '' && { on }) }] }
}

function readTools(prefix: string, rest: string): Outcome {
  const names = rest
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '')
  if (names.length === 0) return fault('text', `${prefix}:`, `${prefix}: torque wrench`)
  const items: BagItem[] = []
  for (const name of names) {
    const words = name.split(' ')
    const count = readCount(words)
    if (isFault(count)) return { ...count, nearest: [`${prefix}: ${count.nearest.at(-1)}`] }
    const tool = words.slice(count.used).join(' ')
    if (tool === '') return fault('text', name, `${prefix}: ${name} magnets`)
    const isGuess = !count.isStated && isPlural(tool) && !/(?:pliers|cutters|snips)$/i.test(tool)
    items.push({
      kind: 'tool',
      name: tool,
      count: count.found,
      questions: isGuess ? [{ code: 'count-assumed', count: count.found }] : [],
    })
  }
  return { items }
}

/** `valve cover: 8 M6x25 bolts` says the place first; on a bag it stands before the noun. */
function intoName(prefix: string, rest: string): string[] {
  if (rest.includes('>')) return [`${prefix} hose: ${rest}`]
  const words = rest.split(' ')
  return words.length > 1 ? [[...words.slice(0, -1), prefix, words.at(-1)].join(' ')] : []
}
