import type { Dealt } from '../dealt.ts'
import type { Entry } from '../entry.ts'
import { REFERENCE_FIELDS } from './reference-fields.ts'

/** What is numbered in a job: the things that are dealt their numbers, and the entries themselves. */
export type Kind = keyof Dealt | 'entry'

/** One number in an entry: of what, and whether this entry dealt it. */
export interface Reference {
  kind: Kind
  no: number
  isNew: boolean
}

/** How a part of an entry is read: what a number in it stands for. `id`: a letter says it, as in `p3`, `c4/2` or `finish 7`. */
export type Field =
  | 'plain'
  | 'id'
  | 'new id'
  | 'step'
  | 'new step'
  | 'container'
  | 'new container'
  | 'entry'
  | readonly [Field]
  | { readonly [key: string]: Field }

/** Every number in an entry, in the order in which its fields are told. */
export function referencesOf(entry: Entry): Reference[] {
  const found: Reference[] = []
  rewritten(entry, (reference) => {
    found.push(reference)
    return reference.no
  })
  return found
}

/** An entry with each of its numbers as `renumber` says. Texts stay as they are. */
export function rewritten(entry: Entry, renumber: (reference: Reference) => number): Entry {
  return through(REFERENCE_FIELDS[entry.type] as Field, entry, renumber) as Entry
}

function through(field: Field, value: unknown, renumber: (reference: Reference) => number): unknown {
  if (field === 'plain' || value === undefined || value === null) return value
  if (typeof field === 'string') return number(field, value as number | string, renumber)
  if (isList(field)) return (value as unknown[]).map((item) => through(field[0], item, renumber))
  if (typeof value !== 'object') return value
  const facts = { ...value } as Record<string, unknown>
  for (const [key, each] of Object.entries(field))
    if (each !== 'plain' && key in facts) facts[key] = through(each, facts[key], renumber)
  return facts
}

function isList(field: Field): field is readonly [Field] {
  return Array.isArray(field)
}

/** What a number with its letter stands for: `p3` for the third piece. Null for what is none. */
export function numberOf(id: string): { kind: Kind; no: number } | null {
  const [, letter = '', no] = NUMBERED.exec(id) ?? []
  const kind = KINDS[letter]
  return no === undefined || !kind ? null : { kind, no: Number(no) }
}

function number(
  field: string,
  value: number | string,
  renumber: (reference: Reference) => number,
): number | string {
  const isNew = field.startsWith('new ')
  // A step in a list that has fluids in it, too.
  if (field === 'id' && typeof value === 'number') return renumber({ kind: 'step', no: value, isNew })
  if (typeof value === 'number')
    return renumber({ kind: field.replace('new ', '') as Kind, no: value, isNew })
  const found = numberOf(value)
  if (!found) return value
  return value.replace(/\d+/, String(renumber({ ...found, isNew })))
}

const NUMBERED = /^([a-z]|(?:start|finish|look|check) )(\d+)(?:\/.*)?$/

const KINDS: Record<string, Kind> = {
  p: 'piece',
  c: 'container',
  f: 'fluid',
  m: 'mark',
  t: 'tightening',
  l: 'loosening',
  q: 'measure',
  x: 'fault',
  d: 'difference',
  g: 'picture',
  k: 'check',
  o: 'order',
  b: 'outing',
  s: 'consumable',
  h: 'trigger',
  y: 'finding',
  w: 'leftOut',
  'start ': 'step',
  'finish ': 'step',
  'look ': 'step',
  'check ': 'step',
}
