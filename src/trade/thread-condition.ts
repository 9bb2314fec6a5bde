import { tidy } from './number.ts'
import { notUnderstood, type Reading, understood } from './reading.ts'

/** What people write of the threads of a joint, and how it is kept. The words are the trade's. */
const conditions: readonly [RegExp, string][] = [
  [/^(?:clean (?:and )?dry|dry and clean|dry(?: threads?)?|unlubricated)$/, 'dry'],
  [/^(?:lightly |light )?(?:oiled(?: threads?)?|engine oil|motor oil|oil)$/, 'oiled'],
  [/^(?:lubricated|lubed|assembly lube|with lube)$/, 'lubricated'],
  [/^(?:greased|grease)$/, 'greased'],
  [
    /^(?:moly(?:bdenum)?(?: disulphide| disulfide)?(?: grease| paste)?|mos2(?: paste| grease)?)$/,
    'moly grease',
  ],
  [/^(?:copper|nickel|ceramic) (?:grease|paste)$/, 'anti-seize'],
  [/^anti-?seize(?: paste| compound)?$/, 'anti-seize'],
  [/^(?:with )?thread[- ]?lock(?:er|ing)?(?: (?:compound|agent))?$/, 'thread locker'],
  [/^(?:with )?(?:thread )?sealant$/, 'sealant'],
]

export type ConditionFault = 'empty' | 'form'

/** Reads how the threads of a joint are: `dry`, `oiled`, `greased`, `anti-seize`, `thread locker`, `sealant`. */
export function readCondition(text: string): Reading<string, ConditionFault> {
  const form = tidy(text).toLowerCase()
  if (form === '') return notUnderstood('empty', '', 'dry')
  const known = conditions.find(([pattern]) => pattern.test(form))?.[1]
  return known === undefined ? notUnderstood('form', text.trim(), 'oiled') : understood(known)
}

/** Takes the condition of the threads off the passes of a tightening: `20 Nm, 90 deg, oiled`, `20 Nm dry`. */
export function splitCondition(text: string): { passes: string; condition?: string } {
  const words = text.trim().split(/(?<=[\s,])/)
  for (let used = Math.min(4, words.length); used > 0; used -= 1) {
    const read = readCondition(words.slice(-used).join('').replace(/,\s*$/, ''))
    if (!read.understood) continue
    const passes = words
      .slice(0, -used)
      .join('')
      .replace(/[\s,]+$/, '')
    return { passes, condition: read.value }
  }
  return { passes: text.trim() }
}
