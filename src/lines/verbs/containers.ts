import type { ContainerKind } from '../../journal/command.ts'
import type { Line } from '../line.ts'
import { readNewContainer, splitLabel } from '../read-place.ts'
import { relabelling } from '../relabel.ts'
import type { Verb } from '../verb.ts'

export const containerVerbs: readonly Verb[] = [
  opens('bag', {
    forms: ['bag [NAME] [in 3] [label 14]'],
    says: 'Opens a bag, which is then in hand: what comes off goes into it. An unused label may be named for it.',
    examples: ['bag', 'bag exhaust nuts', 'bag in bin 2', 'bag exhaust nuts label 14'],
  }),
  opens('bin', {
    forms: ['bin [NAME] [in 3] [label 14]'],
    says: 'Opens a bin or a box.',
    examples: ['bin top end'],
  }),
  opens('tray', {
    forms: ['tray N slots [NAME] [in 3] [label 14]'],
    says: 'Opens a tray with numbered slots: each matched piece has a slot of its own.',
    examples: ['tray 12 slots', 'tray 8 slots cam caps in shelf 2', 'tray 12 slots cam caps label 14'],
  }),
  opens('tag', {
    forms: ['tag [NAME] [label 14]'],
    says: 'Opens a tag that is tied to one thing.',
    examples: ['tag', 'tag coolant hose'],
  }),
  opens('shelf', {
    forms: ['shelf [NAME] [label 14]'],
    says: 'Opens a shelf that bags, bins and trays stand on.',
    examples: ['shelf above the bench'],
  }),
  {
    words: ['put'],
    topic: 'containers',
    forms: ['put 3 in 2', 'put 3 out'],
    says: 'Says what a container stands in: another, or none any more.',
    examples: ['put 3 in 2', 'put bag 3 in bin 2', 'put 3 out'],
    read(line) {
      if (line.take(/(?:^| )out$/i))
        return { do: 'put-container', container: line.container(line.takeRest('N')), inside: null }
      const [outer] = line.take(/ (?:in|into|on|onto) (.+)$/i) ?? line.missing('in N')
      return {
        do: 'put-container',
        container: line.container(line.takeRest('N')),
        inside: line.container(outer ?? ''),
      }
    },
  },
  {
    words: ['relabel'],
    topic: 'containers',
    forms: ['relabel 3 to 14 [because REASON]'],
    says: 'Gives a bag another label, most often an unused one: all it holds goes with it, and the old label is void.',
    examples: ['relabel 3 to 14', 'relabel bag 3 to 14 because oil has got at it'],
    read(line) {
      const reason = line.reasonIfAny() ?? 'relabelled'
      const [to = ''] = line.take(/ (?:to|as|into|with) (.+)$/i) ?? line.missing('to N')
      const from = line.container(line.takeRest('N'))
      return relabelling(line.state, from, line.container(to.replace(/^label /i, '')), reason)
    },
  },
  {
    words: ['void'],
    topic: 'containers',
    forms: ['void 3 because REASON[, see 4]', 'void 5..28 because REASON'],
    says: 'Voids a label that is gone or wrong; names what took its place. The container must be empty. Of several, those that are unused.',
    examples: ['void 3 because torn', 'void 3 because torn, see 4', 'void 5..28 because the sheet is lost'],
    read(line) {
      const run = /^(?:labels? )?(\d{1,4}) ?(?:\.\.| to ) ?(\d{1,4})(?=,? because\b|$)/i.exec(line.rest)
      if (run) {
        const reason = line.reason()
        const [from, to] = [Number(run[1]), Number(run[2])]
        return { do: 'void-labels', from: Math.min(from, to), to: Math.max(from, to), reason }
      }
      const see = line.take(/,? see ((?:bag |bin |tray |tag |shelf )?\d{1,4})$/i)?.[0]
      const reason = line.reason()
      return {
        do: 'void-container',
        container: line.container(line.takeRest('N')),
        insteadOf: see === undefined ? undefined : line.container(see),
        reason,
      }
    },
  },
]

function opens(kind: ContainerKind, about: Pick<Verb, 'forms' | 'says' | 'examples'>): Verb {
  return { words: [kind], topic: 'containers', ...about, read: (line) => opening(kind, line) }
}

function opening(kind: ContainerKind, line: Line) {
  let no = takeLabel(line)
  const outer = line.take(/(?:^| )(?:in|on) ((?:bag |bin |tray |shelf )?\d{1,4})$/i)?.[0]
  no ??= takeLabel(line)
  // A bare number is somebody who means the container of that number, not a name.
  if (kind !== 'tray' && /^\d+$/.test(line.rest)) {
    const isUnused = line.state.blanks.has(Number(line.rest))
    line.notUnderstood(line.rest, isUnused ? `${kind} label ${line.rest}` : `scan ${line.rest}`)
  }
  if (kind === 'tray' && line.rest === '') line.missing('N slots')
  if (
    kind === 'tray' &&
    /^\d+$/.test(line.rest) &&
    line.state.containers.get(Number(line.rest))?.kind === 'tray'
  )
    line.notUnderstood(line.rest, `scan ${line.rest}`)
  const { rest } = line
  const opened = readNewContainer(`${kind} ${rest}`.trim()) ?? line.notUnderstood(rest, 'tray 12 slots')
  return {
    do: 'open-container' as const,
    kind,
    slots: opened.slots,
    name: opened.name,
    inside: outer === undefined ? undefined : line.container(outer),
    no: no ?? undefined,
  }
}

function takeLabel(line: Line): number | null {
  // Only behind the word: a number alone is told apart above.
  if (!/(?:^| )label \d/i.test(line.rest)) return null
  const split = splitLabel(line.rest, line.state) ?? line.notUnderstood(line.rest)
  line.rest = split.rest
  return split.no
}
