import type { Command, Into } from '../journal/command.ts'
import type { State } from '../journal/state.ts'
import type { AidItem, BagLine } from '../trade/bag-line/bag-item.ts'
import { readBagLine } from '../trade/bag-line/read-bag-line.ts'
import { itemCommand } from './item-command.ts'
import { readPlace } from './read-place.ts'
import type { Reading } from './reading.ts'
import { misread } from './stopped.ts'

/** A bag line without its verb, which may end in `into bag 3`. Stops when it is not understood. */
export function offReading(text: string, state: State, asked?: Into): Reading {
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
  return { kind: 'commands', commands, bag }
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
  if (/^\s*(?:note|caution|used|mark)\b/i.test(text)) return { line: text, into: asked }
  const [, line = '', place = ''] = /^(.*) into (.+)$/i.exec(text) ?? []
  const into = place === '' ? null : readPlace(place, state)
  // A container that is not known would become part of a name, and the piece would lie elsewhere.
  if (!into && CONTAINER_WORD.test(place)) misread({ code: 'no-such-place', part: place, form: FORM })
  const [, other] = / into ((?:bag|bin|tray|tag|shelf)\b[^;]*)/i.exec(into ? line : '') ?? []
  if (other !== undefined)
    misread({ code: 'not-understood', verb: 'off', part: `into ${other}`, nearest: null, form: FORM })
  return into ? { line, into } : { line: text, into: asked }
}

const FORM = 'off COUNT SIZE NAME [into PLACE]'
const CONTAINER_WORD = /^(?:the )?(?:bag|bin|tray|tag|shelf)\b/i
const CONTAINER = /^(?:the )?(?:bag|bin|tray|tag|shelf) ?\d{1,4}(?: ?\/.*)?$/i

/** `cover > bin 2` says where a piece lies, not where an aid sits on the machine. */
function intoContainer({ name, count, where }: AidItem): never {
  const nearest = `off ${count > 1 ? `${count} ` : ''}${name} into ${where}`
  misread({ code: 'not-understood', verb: 'off', part: `> ${where}`, nearest, form: FORM })
}
