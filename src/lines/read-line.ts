import type { Into } from '../journal/command.ts'
import type { State } from '../journal/state.ts'
import { readCode } from '../label/code.ts'
import { plainText } from '../label/plain-text.ts'
import { readBagLine } from '../trade/bag-line/read-bag-line.ts'
import { Line } from './line.ts'
import { nearestWord } from './nearest.ts'
import { offReading } from './read-off.ts'
import type { Reading } from './reading.ts'
import { misread, Stopped } from './stopped.ts'
import type { Verb } from './verb.ts'
import { verbs } from './verbs.ts'

/**
 * Reads what a person wrote: a verb with what it takes, or a label code alone. Never throws; the state is only
 * looked at, to know pieces, places and fluids by their names.
 */
export function readLine(line: string, state: State): Reading {
  return reading(line, (text) => {
    if (isScan(text)) return { kind: 'ask', ask: { ask: 'scan', text } }
    const found = verbNamed(text)
    if (!found) {
      misreadBegun(text)
      misread({
        code: 'unknown-word',
        part: firstWord(text),
        nearest: nearestVerb(text) ?? (isOffLine(text) ? 'off' : null),
      })
    }
    const { verb, word, rest } = found
    const result = verb.read(new Line(text, { verb: word, rest, form: formFor(verb.forms, rest), state }))
    if (Array.isArray(result)) return { kind: 'commands', commands: result, bag: null }
    if ('errand' in result && !('kind' in result)) return { kind: 'errand', errand: result }
    if ('do' in result) return { kind: 'commands', commands: [result], bag: null }
    return 'ask' in result && !('kind' in result) ? { kind: 'ask', ask: result } : (result as Reading)
  })
}

/** Reads a bag line that needs no verb, as on the screen of the strip-down. `into`: where its pieces go. */
export function readOff(line: string, state: State, into?: Into): Reading {
  return reading(line, (text) => offReading(text.replace(/^off /i, ''), state, into))
}

/** The verb that a line begins with, by the longest of its words: `take out` before `take`. */
export function findVerb(text: string): Found | null {
  return begins(text, ({ meant }, rest) => meant === undefined || meant.test(rest))
}

/** The same by its words alone: as help asks for it, and where nothing else is meant. */
export function verbNamed(text: string): Found | null {
  return findVerb(text) ?? begins(text, () => true)
}

interface Found {
  verb: Verb
  word: string
  rest: string
}

function begins(text: string, isMeant: (verb: Verb, rest: string) => boolean): Found | null {
  const lower = text.toLowerCase()
  for (const { word, verb } of byLength) {
    const after = lower.charAt(word.length)
    const ends = after === '' || after === ' ' || after === ':' || word === '='
    if (!lower.startsWith(word) || !ends) continue
    const rest = text.slice(word.length).trim()
    if (isMeant(verb, rest)) return { verb, word, rest }
  }
  return null
}

/** The first words of a verb that a mistyped line was most likely meant to begin with. */
export function nearestVerb(text: string): string | null {
  return nearestWord(firstWord(text), firstWords)
}

const MOST_CHARACTERS = 500

/** How it is written, for a line that is not: about the thing that it names where a form is about one of its kind. */
function formFor(forms: Verb['forms'], rest: string): string {
  const id = /^[a-z]\d+\b/.exec(rest)?.[0]
  if (id === undefined) return forms[0]
  const kind = new RegExp(`(?<= )${id[0]}\\d+\\b`)
  return forms.find((form) => kind.test(form))?.replace(kind, id) ?? forms[0]
}

/** A verb of two words of which only the first is there: `leave camshaft` for `leave off camshaft`. */
function misreadBegun(text: string): void {
  const first = firstWord(text).toLowerCase()
  const begun = byLength.findLast(({ word }) => word.startsWith(`${first} `))
  if (begun)
    misread({ code: 'not-understood', verb: first, part: text, nearest: null, form: begun.verb.forms[0] })
}

function reading(line: string, read: (text: string) => Reading): Reading {
  try {
    const text = plainText(line)
    if (text === '') misread({ code: 'empty' })
    // Beyond that, plainText cuts: a line of which the end went missing must not pass for whole.
    if ([...text].length >= MOST_CHARACTERS) misread({ code: 'too-long', limit: MOST_CHARACTERS - 1 })
    return read(text)
  } catch (error) {
    if (error instanceof Stopped) return error.reading
    throw error
  }
}

/** A bag line without its verb, where it can hardly be anything else: any words at all may name a part. */
export function isOffLine(text: string): boolean {
  const bag = readBagLine(text, { units: 'metric' })
  return bag.understood && (/^\d/.test(text) || bag.items.some(({ kind }) => kind !== 'part'))
}

function isScan(text: string): boolean {
  return readCode(text).kind !== 'not-a-code' || /^\d{1,4}$/.test(text)
}

function firstWord(text: string): string {
  return text.split(/[ :]/, 1)[0] ?? ''
}

const byLength = verbs
  .flatMap((verb) => verb.words.map((word) => ({ word, verb })))
  .sort((a, b) => b.word.length - a.word.length)

// A sign is near to any single letter.
const firstWords = [...new Set(byLength.map(({ word }) => firstWord(word)))].filter((word) =>
  /^\w/.test(word),
)
