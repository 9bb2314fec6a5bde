import type { Command, Into } from '../journal/command.ts'
import type { State } from '../journal/state.ts'
import type { AidItem, BagLine } from '../trade/bag-line/bag-item.ts'
import { readBagLine } from '../trade/bag-line/read-bag-line.ts'
import { itemCommand } from './item-command.ts'
import { readPlace } from './read-place.ts'
import type { Reading } from './reading.ts'
import { misread } from './stopped.ts'

/**
 * A bag line without its verb. `into bag 3` holds for what stands before it in the line, back to the last `into`.
 * Stops when it is not understood.
 */
export function offReading(text: string, state: State, asked?: Into): Reading {
  const lots = lotsOf(text, state)
  // After a place of its own the line goes on with what is in hand then.
  const read = lots.map((lot, index) => lotReading(lot, state, index === 0 ? asked : undefined))
  return {
    kind: 'commands',
    commands: read.flatMap(({ commands }) => commands),
    bag: { understood: true, items: read.flatMap(({ bag }) => bag.items) },
  }
}

/** The line cut behind each `into PLACE;`. Words kept as they are run to its end. */
function lotsOf(text: string, state: State): string[] {
  const lots: string[] = []
  let lot = ''
  const items = text.split(';')
  for (const [index, item] of items.entries()) {
    if (asWords(item.trim())) {
      const before = lot.replace(/;$/, '').trim()
      return [...lots, ...(before === '' ? [] : [before]), items.slice(index).join(';').trim()]
    }
    lot += item
    const { place } = placeSaid(item.trim())
    if (!readPlace(place, state)) lot += ';'
    else {
      lots.push(lot.trim())
      lot = ''
    }
  }
  const rest = lot.replace(/;$/, '').trim()
  return rest === '' && lots.length > 0 ? lots : [...lots, rest]
}

interface Lot {
  commands: Command[]
  bag: Extract<BagLine, { understood: true }>
}

function lotReading(text: string, state: State, asked?: Into): Lot {
  const { line, into } = splitInto(text, state, asked)
  const bag = asWords(line) ?? readBagLine(line, { units: state.job.units })
  if (!bag.understood) misread({ code: 'bag-line', bag })
  let next = into
  const commands: Command[] = []
  for (const item of bag.items) {
    if (item.kind === 'aid' && CONTAINER.test(item.where)) intoContainer(item)
    const command = itemCommand(item, state, next)
    commands.push(command)
    // What is opened for the first lot is in hand for the rest of the line.
    if (command.do === 'take-off' && next?.kind === 'new') next = { kind: 'hand' }
  }
  return { commands, bag }
}

/** Words kept as they are run to the end of the line, semicolons and all: what follows one is no piece. */
function asWords(line: string): Extract<BagLine, { understood: true }> | null {
  const [, prefix = '', on = '', text] =
    /^(notes?|caution|warning|used|marks?)(?: ([^:]{1,40}))? ?: ?(.+)$/i.exec(line) ?? []
  if (text === undefined) return null
  const word = prefix.toLowerCase()
  if (word.startsWith('mark'))
    return { understood: true, items: [{ kind: 'mark', text, ...(on !== '' && { on }) }] }
  if (on !== '') return null
  const kind = word.startsWith('note') ? 'note' : word === 'used' ? 'used' : 'caution'
  return { understood: true, items: [{ kind, text }] }
}

/** `into` only counts where a place follows: `note: oil ran into the sump` is all note. */
function splitInto(text: string, state: State, asked?: Into): { line: string; into: Into | undefined } {
  if (asWords(text) || /^(?:notes?|caution|warning|marks?)\b/i.test(text)) return { line: text, into: asked }
  const { line, place } = placeSaid(text)
  const into = place === '' ? null : readPlace(place, state)
  // A container that is not known would become part of a name, and the piece would lie elsewhere.
  if (!into && CONTAINER_WORD.test(place))
    misread({ code: 'no-such-place', part: place.replace(/;.*/, ''), form: FORM })
  return into ? { line, into } : { line: text, into: asked }
}

/**
 * `cover into bag 3`, `head onto the bench`. Behind a shorter word only the bench, a container by its number and a new
 * one are places: bolts sit in trays too.
 */
function placeSaid(text: string): { line: string; place: string } {
  const [, line = '', place = ''] =
    /^(.*) (?:into|onto) (.+)$/i.exec(text) ?? SHORTLY_SAID.exec(text) ?? ON_THE_BENCH.exec(text) ?? []
  return { line, place }
}

const FORM = 'off COUNT SIZE NAME [into PLACE]'
const CONTAINER_WORD =
  /^(?:the |an? )?(?:(?:new|same|another|next) )?(?:bag|bin|tray|tag|shelf|label)\b|^(?:the |a )?(?:new|same|another)\b/i
const SHORTLY_SAID =
  /^(.*) (?:in|on|to) ((?:(?:the )?(?:bag|bin|tray|tag|shelf|label) ?\d|(?:an? |new |another )+(?:bag|bin|tray|tag|shelf)\b).*)$/i
const ON_THE_BENCH = /^(.*) (?:in|on|to) ((?:the )?bench)$/i
const CONTAINER = /^(?:the )?(?:bench|(?:bag|bin|tray|tag|shelf) ?\d{1,4}(?: ?\/.*)?)$/i

/** `cover > bin 2` says where a piece lies, not where an aid sits on the machine. */
function intoContainer({ name, count, where }: AidItem): never {
  const nearest = `off ${count > 1 ? `${count} ` : ''}${name} into ${where}`
  misread({ code: 'not-understood', verb: 'off', part: `> ${where}`, nearest, form: FORM })
}
