import type { Command } from '../journal/command.ts'
import type { ConsumableKind, CureTarget } from '../plan/waiting/waiting-facts.ts'
import { findFluid } from './find-fluid.ts'
import type { Line } from './line.ts'
import { readDay, readHowLong } from './read-said.ts'

type Asked = Omit<Extract<Command, { do: 'set-consumable' }>, 'do' | 'step' | 'kind'>

// `within` and `before` may belong to the words as well: they part only before a figure, or behind a comma.
const PARTS =
  /,? +(?=within [\d½¼¾])|, *(?=within |before )|,? +(?=cures )|,? +(?=sets (?:in |for )?[\d½¼¾])|,? +(?=use by |amount )/i

/** Reads what is put on, where and which way up, with the times that its maker gives. */
export function readConsumable(line: Line, kind: ConsumableKind): Asked {
  const [words = '', ...parts] = ` ${line.takeRest('WORDS')}`.split(PARTS)
  const said = new Map<string, string>()
  for (const part of parts) {
    const [, key = '', rest = ''] = /^(within|cure|set|before|use by|amount)s? *(.*)$/i.exec(part) ?? []
    const name = key.toLowerCase() === 'set' ? 'cure' : key.toLowerCase()
    if (said.has(name) || rest === '') line.notUnderstood(part)
    said.set(name, rest)
  }
  const [cures, held = said.get('before')] = (said.get('cure') ?? '').split(/,? +before +/i)
  const within = said.get('within')
  const by = said.get('use by')
  return {
    ...named(line, kind, words),
    ...(within && { workMinutes: readHowLong(line, within).minutes }),
    ...(cures && { cureMinutes: readHowLong(line, cures.replace(/^(?:in|for) /i, '')).minutes }),
    ...(held && { before: targets(line, held) }),
    ...(by && { expires: readDay(line, by) }),
    ...(said.has('amount') && { amount: said.get('amount') }),
  }
}

function named(line: Line, kind: ConsumableKind, words: string): Pick<Asked, 'name' | 'side'> {
  if (words.trim() === '') line.missing('WORDS')
  if (kind !== 'gasket') return { name: words.trim() }
  const [, name, side] = /^(.+?), *(?:the )?(.+?)(?: side)? up$/i.exec(words.trim()) ?? []
  if (name === undefined || side === undefined) return line.missing('SIDE up')
  return { name, side }
}

/** `step 3, coolant, start`: steps by their numbers, fluids by their names or ids, and the first start. */
function targets(line: Line, text: string): CureTarget[] {
  return text
    .split(/,| and /i)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part): CureTarget => {
      if (/^(?:the )?(?:first )?start$/i.test(part)) return 'start'
      if (/^(?:steps? )?\d+$/i.test(part)) return line.number(part)
      return findFluid(part.replace(/^(?:the )?(?:filling of )?(?:the )?/i, ''), line.state)
    })
}
