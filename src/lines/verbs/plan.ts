import type { Command } from '../../journal/command.ts'
import { takeCritical } from '../critical-step.ts'
import type { Line } from '../line.ts'
import { readHowLong } from '../read-said.ts'
import type { Verb } from '../verb.ts'

const KINDS = ['clean', 'inspect', 'measure', 'prime', 'align', 'fill', 'turn', 'check', 'other'] as const

/** Numbers at the end, behind a word: ` after 3,4`. */
const numbersAfter = (word: string) => new RegExp(`,? ${word} (?:steps? )?(\\d[\\d, ]*(?:and \\d+)?)$`, 'i')

export const planVerbs: readonly Verb[] = [
  {
    words: ['add'],
    topic: 'plan',
    forms: ['add KIND TITLE [turns 2] [after 3,4] [before 2]', 'add later KIND TITLE [due WHEN]'],
    says: `Adds a step that exists only on the way back; with "later", one after the first start. Kinds: ${KINDS.join(', ')}.`,
    examples: [
      'add measure valve clearances after 4 before 2',
      'add turn the crank over by hand turns 2 after 4 before 2',
      'add later check head bolts at 500 km due after 500 km',
    ],
    read(line) {
      return line.take(/^later(?= |$)/i) ? laterStep(line) : buildStep(line)
    },
  },
  {
    words: ['rename step'],
    topic: 'plan',
    forms: ['rename step 3 TITLE'],
    says: 'Gives a step another title.',
    examples: ['rename step 3 valve cover and coils off'],
    read(line) {
      const step = line.takeNumber()
      return { do: 'change-step', step, title: line.takeRest('TITLE') }
    },
  },
  {
    words: ['step'],
    topic: 'plan',
    forms: [
      'step 3',
      'step 3 after 1,2',
      'step 3 needs 4',
      'step 3 hides yes|no',
      'step 3 critical [after 30 min]',
      'step 3 not critical',
      'step 3 minutes 90',
    ],
    says: 'Shows a step; or says what came off before it, what must be built before it, whether it hides others, whether it is to be seen a second time, how long it takes.',
    examples: [
      'step 3',
      'step 3 after 1',
      'step 2 needs none',
      'step 1 hides no',
      'step 2 critical after 45 min',
      'step 1 minutes 90',
    ],
    read(line) {
      const step = line.takeNumber()
      if (line.rest === '') return { ask: 'step', step }
      const critical = takeCritical(line, step)
      if (critical) return critical
      const takes = takeMinutes(line)
      if (takes !== null) return { do: 'change-step', step, minutes: takes }
      const [word = '', what = ''] =
        line.take(/^(after|needs|hides)(?: (.*))?$/i) ?? line.notUnderstood(line.rest)
      if (what === '') line.missing(word === 'hides' ? 'yes or no' : 'N')
      return changed(line, step, word.toLowerCase(), what)
    },
  },
]

/** How long a step takes: `minutes 90`, `minutes 1 h 30 min`. Null for other words. */
function takeMinutes(line: Line): number | null {
  const [said] = line.take(/^(?:minutes|takes)(?: (.*))?$/i) ?? []
  if (said === undefined) return null
  if (said === '') line.missing('MINUTES')
  return readHowLong(line, /^\d{1,6}$/.test(said) ? `${said} min` : said).minutes
}

function changed(line: Line, step: number, word: string, what: string): Command {
  if (word === 'hides') {
    const said = /^(?:(yes)|(no))$/i.exec(what) ?? line.notUnderstood(what, `step ${step} hides yes`)
    return { do: 'change-step', step, hides: said[1] !== undefined }
  }
  const steps = /^(?:none|nothing|free)$/i.test(what) ? [] : line.numbers(what)
  return word === 'after'
    ? { do: 'change-step', step, after: steps }
    : { do: 'change-step', step, needs: steps }
}

function buildStep(line: Line): Command {
  const before = line.take(numbersAfter('before'))?.[0] ?? ''
  const needs = line.take(numbersAfter('after'))?.[0] ?? ''
  const turns = (line.take(/,? turns? (\d{1,9})$/i) ??
    line.take(/(?<=^turn .*) (\d{1,2}) (?:full )?turns?$/i))?.[0]
  const { kind, title } = kindAndTitle(line)
  return {
    do: 'add-step',
    title,
    kind,
    ...(turns !== undefined && { turns: Number(turns) }),
    way: 'build',
    needs: line.numbers(needs),
    before: line.numbers(before),
  }
}

function laterStep(line: Line): Command {
  const due = line.take(/,? due (.+)$/i)?.[0]
  const needs = line.take(numbersAfter('after'))?.[0] ?? ''
  const { kind, title } = kindAndTitle(line)
  return { do: 'add-step', title, kind, way: 'after-start', needs: line.numbers(needs), before: [], due }
}

/** The kind begins the title: `measure valve clearances`. Only `other` says nothing. */
function kindAndTitle(line: Line): { kind: (typeof KINDS)[number]; title: string } {
  const word = line.take(/^(\S+)/)?.[0] ?? line.missing('KIND')
  const kind = KINDS.find((known) => known === word.toLowerCase().replace(/:$/, ''))
  const rest = line.takeRest('TITLE')
  if (!kind) return line.notUnderstood(word, `add other ${word} ${rest}`)
  return { kind, title: kind === 'other' ? rest : `${kind} ${rest}` }
}
