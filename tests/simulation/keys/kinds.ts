import type { Machine, Thing } from '../machines/machine.ts'

/**
 * Keys by what they are for. `names`: what things are called and measured, and remarks of one's own; `words`: letters
 * that the language of the record asks for besides; `numbers`: digits, points, Enter and Backspace.
 */
export interface Keys {
  names: number
  words: number
  numbers: number
}

export function noKeys(): Keys {
  return { names: 0, words: 0, numbers: 0 }
}

export function addKeys(to: Keys, more: Keys): void {
  to.names += more.names
  to.words += more.words
  to.numbers += more.numbers
}

export function allKeys({ names, words, numbers }: Keys): number {
  return names + words + numbers
}

/** Tells names from words: all that the things of a machine are called. */
export class Names {
  readonly #names: string[]

  constructor({ steps, extra }: Machine) {
    const names = [
      ...steps.flatMap(({ title, things }) => [title.replace(/ off$/, ''), ...things.flatMap(namesOf)]),
      ...extra.map(({ title }) => title),
      ...REMARKS,
    ]
    // The longest first: "front chain bolt" stands in "front chain bolts".
    this.#names = [...new Set(names)].sort((a, b) => b.length - a.length)
  }

  /** What was pressed, by kind. */
  kindsOf(pressed: string): Keys {
    let rest = pressed
    let names = 0
    for (const name of this.#names) {
      const parts = rest.split(name)
      names += name.length * (parts.length - 1)
      rest = parts.join('\0')
    }
    // A space beside a name is a part of what is written.
    const left = rest.replace(/ ?\0 ?/g, '')
    names += rest.replaceAll('\0', '').length - left.length
    const numbers = left.match(/[\d.\r\x7f]/g)?.length ?? 0
    return { names, words: left.length - numbers, numbers }
  }
}

/** Said of one's own: what was seen, found or decided. */
const REMARKS = [
  'as it should be',
  'nothing found',
  'arrow to the front',
  'it was clamped for minutes only',
  'something was left out',
]

function namesOf(thing: Thing): string[] {
  switch (thing.kind) {
    case 'lot':
      return [
        thing.name,
        thing.one,
        `${thing.size} ${thing.drive}`,
        thing.size,
        ...(thing.passes ? [thing.passes.text] : []),
      ]
    case 'part':
      return [thing.name, ...(thing.check === null ? [] : [thing.check])]
    case 'set': {
      const { name, one, positions, check } = thing
      const range = `${positions[0]}..${positions.at(-1)}`
      return [name, one, range, ...positions.map((at) => `${one} ${at}`), ...(check === null ? [] : [check])]
    }
    case 'hose':
      return [thing.name, ...thing.ends]
    case 'aid':
      return thing.where === null ? [thing.name] : [thing.name, thing.where]
    case 'fluid':
      return [thing.name]
    case 'mark':
    case 'put-on':
      return [thing.text]
    default:
      return thing satisfies never
  }
}
