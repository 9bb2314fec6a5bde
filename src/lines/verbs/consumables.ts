import type { Command } from '../../journal/command.ts'
import type { ConsumableKind } from '../../plan/waiting/waiting-facts.ts'
import type { Line } from '../line.ts'
import { readConsumable } from '../read-consumable.ts'
import type { Verb } from '../verb.ts'

const TIMES = '[, within 5 min][, cures 24 h [before step 3, coolant, start]][, use by DATE][, amount 1 tube]'

export const consumableVerbs: readonly Verb[] = [
  putOn(
    'sealant',
    'sealant',
    'Asks for sealant in a step: with the times that its maker gives; without "before" the first start waits for it.',
    ['sealant 1: grey sealant on the sump face, within 5 min, cures 24 h before coolant, start'],
  ),
  putOn('locker', 'locker', 'Asks for thread locker in a step: with the times that its maker gives.', [
    'locker 2: medium locker on the cap bolts, cures 24 h, use by 2030-06-30',
  ]),
  putOn('lube', 'lubricant', 'Asks for oil, grease or assembly paste in a step.', [
    'lube 2: oil on the cam lobes and the caps',
  ]),
  putOn(
    'gasket side',
    'gasket',
    'Asks that a gasket goes in a certain way up; "applied" says that it lies so.',
    ['gasket side 3: head gasket, TOP mark up'],
    'WORDS, SIDE up',
  ),
  putOn('put on', 'other', 'Asks for anything else that is put on in a step.', [
    'put on 1: copper paste on the flange, amount 1 tube',
  ]),
  {
    words: ['applied'],
    topic: 'build-up',
    forms: ['applied s1'],
    says: 'Records that it is on: its times run from now.',
    examples: ['applied s1'],
    read(line) {
      const [no] =
        line.take(/^s?(\d{1,9})$/i) ??
        (line.rest === '' ? line.missing('s1') : line.notUnderstood(line.rest, 'applied s1'))
      return { do: 'apply', consumable: `s${Number(no)}` }
    },
  },
]

function putOn(
  word: string,
  kind: ConsumableKind,
  says: string,
  examples: readonly string[],
  what = 'WORDS',
): Verb {
  return {
    words: [word],
    topic: 'build-up',
    forms: [`${word} N: ${what}${TIMES}`],
    says,
    examples,
    // Where things come off, a bag line may begin with the same word.
    meant: /^(?:step )?\d+\s*:/i,
    read: (line) => asked(line, kind),
  }
}

function asked(line: Line, kind: ConsumableKind): Command {
  line.take(/^:/)
  const step = line.takeNumber()
  line.take(/^[:,] ?/)
  return { do: 'set-consumable', step, kind, ...readConsumable(line, kind) }
}
