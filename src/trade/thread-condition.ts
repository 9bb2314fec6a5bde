import { tidy } from './number.ts'
import { notUnderstood, type Reading, understood } from './reading.ts'

/** What people write of the threads of a joint, and how it is kept. The words are the trade's. */
const conditions: readonly [RegExp, string][] = [
  [/^(?:clean (?:and )?dry|dry (?:and )?clean|dry|unlubricated)$/, 'dry'],
  [/^(?:lightly |light )?(?:oiled|engine oil|motor oil|oil)$/, 'oiled'],
  [/^(?:lubricated|lubed|assembly lube|lube)$/, 'lubricated'],
  [/^(?:greased|grease)$/, 'greased'],
  [/^(?:moly(?:bdenum)?(?: disulphide| disulfide)?|mos2)(?: grease| paste)?$/, 'moly grease'],
  [/^(?:copper|nickel|ceramic) (?:grease|paste)$/, 'anti-seize'],
  [/^anti-?seize(?: paste| compound)?$/, 'anti-seize'],
  [/^thread[- ]?lock(?:er|ing)?(?: compound| agent)?$/, 'thread locker'],
  [/^(?:thread )?(?:sealant|sealer)$/, 'sealant'],
]

export type ConditionFault = 'empty' | 'form'

/** Reads how the threads of a joint are: `dry`, `oiled`, `greased`, `anti-seize`, `thread locker`, `sealant`. */
export function readCondition(text: string): Reading<string, ConditionFault> {
  const form = tidy(text).toLowerCase()
  if (form === '') return notUnderstood('empty', '', 'dry')
  const said = form
    .replace(/^oil (?:the )?threads$/, 'oiled')
    .replace(/^with |^threads? (?!lock|seal)/, '')
    .replace(/ threads$/, '')
  const known = conditions.find(([pattern]) => pattern.test(said))?.[1]
  return known === undefined ? notUnderstood('form', text.trim(), 'oiled') : understood(known)
}

/**
 * Takes the condition of the threads off the passes of a tightening, whether it stands alone between commas or behind
 * the last pass: `20 Nm, 90 deg, oiled`, `oiled: 20 Nm`, `20 Nm dry`. One condition only; a second one stays.
 */
export function splitCondition(text: string): { passes: string; condition?: string } {
  return standingAlone(text) ?? behindTheLast(text) ?? { passes: text.trim() }
}

function standingAlone(text: string): { passes: string; condition: string } | null {
  const parts = text.split(/([,;:])/)
  for (let index = 0; index < parts.length; index += 2) {
    const read = readCondition(parts[index] ?? '')
    if (!read.understood) continue
    // With the sign before it, or the one behind it where it comes first.
    const passes = parts
      .toSpliced(Math.max(0, index - 1), 2)
      .join('')
      .trim()
    return { passes, condition: read.value }
  }
  return null
}

function behindTheLast(text: string): { passes: string; condition: string } | null {
  const words = text.trim().split(' ')
  for (let used = Math.min(4, words.length); used > 0; used -= 1) {
    const read = readCondition(words.slice(-used).join(' '))
    if (read.understood) return { passes: words.slice(0, -used).join(' ').trim(), condition: read.value }
  }
  return null
}
