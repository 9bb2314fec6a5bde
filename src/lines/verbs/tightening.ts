import type { LooseningId, TighteningId } from '../../plan/facts.ts'
import { readPositions } from '../../trade/positions.ts'
import { readCondition, splitCondition } from '../../trade/thread-condition.ts'
import { readPasses } from '../../trade/tightening-passes/read-passes.ts'
import { hasOnlyFiguresOf } from '../figures.ts'
import type { Line } from '../line.ts'
import { takeLots } from '../take-pattern.ts'
import { takeRule } from '../take-rule.ts'
import { lineOfTheirs } from '../take-wrench.ts'
import type { Verb } from '../verb.ts'

export const tighteningVerbs: readonly Verb[] = [
  {
    words: ['tighten'],
    topic: 'tightening',
    forms: ['tighten PIECE: 20 Nm, 40 Nm, 90 deg [, oiled|dry] [order 3,1,2 | by star] [because REASON]'],
    says: "Sets the passes and the order of a tightening: as the machine's service manual gives them.",
    examples: [
      'tighten head bolts: 20 Nm, 40 Nm, 90 deg, oiled order 3,1,2,4,5,6,7,8',
      'tighten valve cover bolts: 10 Nm, dry',
      'tighten head bolts: 30%, 70%, 100% of 60 Nm, mark by spiral',
    ],
    read(line) {
      const because = line.reasonIfAny()
      const by = takeRule(line)
      const order = line.take(/,? (?:in )?order:? (.+)$/i)?.[0]
      const [words = '', typed = ''] = line.take(/^([^:]*?) ?: ?(.*)$/) ?? []
      if (words === '') line.missing(line.rest === '' ? 'PIECE' : ': PASSES')
      if (typed === '') line.missing('PASSES')
      const { passes: text, condition } = splitCondition(typed)
      const passes = readPasses(text)
      if (!passes.understood)
        return line.notPasses(
          passes,
          hasOnlyFiguresOf(passes.nearest, typed) ? again(line, text, passes.nearest) : null,
        )
      const [piece, ...others] = takeLots(line, words)
      return {
        do: 'set-tightening',
        piece,
        ...(others.length > 0 && { with: others }),
        passes: passes.value,
        order: order === undefined ? undefined : positions(line, order),
        ...(by !== undefined && { by }),
        ...(condition !== undefined && { condition }),
        ...(because !== undefined && { because }),
      }
    },
  },
  {
    words: ['turn'],
    topic: 'tightening',
    forms: ['turn [FASTENER] [of t1 | of l1]'],
    says: 'One fastener is through its pass, or eased: the next in order; named, it is checked against the order.',
    examples: ['turn', 'turn 3', 'turn 3 of t1'],
    read(line) {
      const tightening = takeOf(line)
      const fastener = line.rest === '' ? undefined : line.takeRest('FASTENER')
      return { do: 'tighten', tightening, fastener: fastener && asWritten(line, fastener, tightening) }
    },
  },
  {
    words: ['no torque'],
    topic: 'tightening',
    forms: ['no torque [FASTENER] [of t1] because WHAT'],
    says: 'A fastener never comes to its torque, or lets go of it: a fault that blocks until it is put right.',
    examples: ['no torque because it keeps turning', 'no torque 3 of t1 because the thread gives way'],
    read(line) {
      const says = line.reason()
      const id = takeOf(line)
      if (id?.startsWith('l')) line.notUnderstood(id)
      const tightening = id as TighteningId | undefined
      const fastener = line.rest === '' ? undefined : line.takeRest('FASTENER')
      return {
        do: 'miss-torque',
        tightening,
        fastener: fastener && asWritten(line, fastener, tightening),
        says,
      }
    },
  },
  {
    words: ['threads'],
    topic: 'tightening',
    forms: ['threads t1 dry|oiled|...'],
    says: "Says how the threads of a tightening are: dry, oiled, with thread locker, as the manual's torque asks for.",
    examples: ['threads t1 oiled', 'threads t2 dry'],
    read(line) {
      const tightening = takeId(line)
      const typed = line.takeRest('dry or oiled')
      const condition = readCondition(typed)
      if (!condition.understood)
        return line.notUnderstood(typed, `threads ${tightening} ${condition.nearest}`)
      return { do: 'say-condition', tightening, condition: condition.value }
    },
  },
  {
    words: ['turned'],
    topic: 'tightening',
    forms: ['turned t1 yes|no because REASON'],
    says: 'Settles whether a fastener was turned; through its angle, before an interruption.',
    examples: [
      'turned t1 yes because the paint mark has moved',
      'turned t1 no because the paint marks are in line',
    ],
    read(line) {
      const reason = line.reason()
      const tightening = takeId(line)
      const [yes] =
        line.take(/^(?:(yes)|no)$/i) ??
        (line.rest === ''
          ? line.missing('yes or no')
          : line.notUnderstood(line.rest, `turned ${tightening} yes because ...`))
      return { do: 'settle-angle', tightening, turned: yes !== '', reason }
    },
  },
  {
    words: ['slacken'],
    topic: 'tightening',
    forms: ['slacken t1 because REASON'],
    says: 'All fasteners of a tightening are backed off: every pass is to be done again.',
    examples: ['slacken t1 because a bolt turned without gaining torque'],
    read(line) {
      const reason = line.reason()
      const tightening = takeId(line)
      line.end()
      return { do: 'slacken', tightening, reason }
    },
  },
]

function positions(line: Line, text: string): string[] {
  const read = readPositions(text)
  if (read.understood) return read.value
  const wrong = read.code === 'duplicate' ? text : read.part || text
  return line.notUnderstood(read.part || text, lineOfTheirs(line, wrong, read.nearest))
}

/** The name of a fastener as it was set, whatever the case it was typed in. */
function asWritten(line: Line, fastener: string, id: TighteningId | LooseningId | undefined): string {
  const { tightenings, loosenings, build, strip } = line.state
  const orders = [...tightenings.values(), ...loosenings.values()].filter((each) =>
    id ? each.id === id : each.step === (build ?? strip),
  )
  const names = orders.flatMap(({ order }) => order)
  return names.find((name) => name.toLowerCase() === fastener.toLowerCase()) ?? fastener
}

/** `of t1`, `of l1`, or the id alone. */
function takeOf(line: Line): TighteningId | LooseningId | undefined {
  const [kind, number] = line.take(/(?:^| )of ([tl])(\d{1,9})$/i) ?? line.take(/^([tl])(\d{1,9})$/i) ?? []
  if (kind === undefined) return undefined
  return kind.toLowerCase() === 't' ? `t${Number(number)}` : `l${Number(number)}`
}

function takeId(line: Line): TighteningId {
  const [number] =
    line.take(/^t(\d{1,9})(?= |$)/i) ??
    (line.rest === '' ? line.missing('t1') : line.notUnderstood(line.rest, null))
  return `t${Number(number)}`
}

/** The line once more, with what would be understood in the place of its passes. */
function again(line: Line, passes: string, nearest: string): string | null {
  return passes !== '' && line.whole.includes(passes) ? line.whole.replace(passes, () => nearest) : null
}
