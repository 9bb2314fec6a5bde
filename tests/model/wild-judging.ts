import type { Command } from '../../src/journal/command.ts'
import type {
  CheckId,
  Likeness,
  TriggerId,
  TriggerItem,
  VerdictKind,
} from '../../src/plan/judging/judging-facts.ts'
import type { Pick } from './pick.ts'

type Make = (pick: Pick) => Command

const verdicts: VerdictKind[] = ['fit-again', 'machine', 'replace', 'clean', 'replace', 'replace']
const kinds = ['look', 'measure', 'clean', 'look', 'compare'] as const
const finds = ['metal in the oil', 'rust', '']

/** A check that is not done, where there is one. */
const check = (pick: Pick, by: number): CheckId => {
  const open = [...pick.state.checks.values()].filter(({ done }) => done === null)
  const one = open[by % (open.length || 1)]
  return by % 5 > 0 && one ? one.id : pick.numbered('k', pick.state.dealt.check, by)
}

/** A new piece that is still to be compared, where there is one. */
const uncompared = (pick: Pick, by: number) => {
  const due = [...pick.state.comparisons.values()].filter(({ verdict }) => verdict !== 'right')
  return due[by % (due.length || 1)]?.piece ?? pick.piece(by)
}

/** What is asked of pieces while a machine is apart, what is said of them, and what sits on what. */
export const wildJudging = {
  'ask-checks': (pick) => ({
    do: 'ask-checks',
    checks: [
      {
        piece: pick.piece(pick.a),
        kind: pick.some(kinds, pick.b),
        what: pick.some([['score'], [], ['run-out', ' ']], pick.c),
      },
      { piece: pick.piece(pick.b), kind: 'look' as const, what: ['cracks'] },
    ].slice(0, pick.c % 9 === 0 ? 0 : 1 + (pick.c % 2)),
  }),
  'pass-checks': (pick) => ({
    do: 'pass-checks',
    checks: [check(pick, pick.a), ...(pick.c % 4 === 0 ? [check(pick, pick.b)] : [])].slice(
      0,
      pick.b % 15 === 0 ? 0 : 2,
    ),
    says: pick.some([undefined, 'good', ' '], pick.b),
  }),
  'drop-check': (pick) => ({ do: 'drop-check', check: check(pick, pick.a), reason: pick.reason(pick.b) }),
  judge: (pick) => ({
    do: 'judge',
    pieces: [pick.piece(pick.a), ...(pick.c % 5 === 0 ? [pick.piece(pick.b)] : [])],
    count: pick.c % 6 === 1 ? 1 + (pick.b % 3) : undefined,
    verdict: pick.some(verdicts, pick.b),
    reason: pick.reason(pick.c),
    picture: pick.a % 16 === 0 ? pick.numbered('g', pick.state.dealt.picture, pick.b) : undefined,
  }),
  bind: (pick) => ({
    do: 'bind',
    pieces: [pick.piece(pick.a), pick.piece(pick.b)].slice(0, pick.c % 9 === 0 ? 1 : 2),
    reason: pick.some(['bored together', undefined], pick.c),
  }),
  compare: (pick) => ({
    do: 'compare',
    piece: uncompared(pick, pick.a),
    features: pick.some(
      [
        [],
        [{ feature: 'bolt holes', how: 'alike' as const }],
        [{ feature: 'flange', how: 'differs' as const, says: 'thicker' }],
        [{ feature: 'flange', how: 'wrong' as const, says: 'one hole more' }],
      ],
      pick.b,
    ),
    rest: pick.some<Likeness | undefined>(['alike', undefined, 'alike', 'wrong'], pick.c),
    keep: pick.c % 8 === 0 || undefined,
  }),
  'set-trigger': (pick) => ({
    do: 'set-trigger',
    when: pick.some(finds, pick.a),
    items: [
      { do: 'replace', piece: pick.piece(pick.b) } satisfies TriggerItem,
      { do: 'check', piece: pick.piece(pick.c), kind: 'look', what: ['score'] } satisfies TriggerItem,
    ].slice(pick.c % 2, pick.a % 11 === 0 ? 1 : 2),
  }),
  'drop-trigger': (pick) => ({
    do: 'drop-trigger',
    trigger: pick.numbered('h', pick.state.dealt.trigger, pick.a),
    reason: pick.reason(pick.b),
  }),
  find: (pick) => {
    const lists = [...pick.state.triggers.keys()]
    return {
      do: 'find',
      text: pick.some(finds, pick.a),
      piece: pick.b % 3 === 0 ? pick.piece(pick.b) : undefined,
      triggers: pick.some<TriggerId[]>([lists.slice(0, 1), lists, [], ['h9']], pick.c),
    }
  },
  carry: (pick) => ({
    do: 'carry',
    on: pick.piece(pick.a),
    items: [
      {
        kind: 'fastener' as const,
        name: pick.some(['stud', 'M6 bolt', 'plug'], pick.b),
        count: pick.b % 16 === 0 ? 0 : 1 + (pick.c % 3),
        size: pick.some([undefined, 'M6x25'], pick.b),
      },
      { kind: 'part' as const, name: 'seal ring', count: 1, singleUse: pick.a % 2 === 0 },
    ].slice(pick.c % 2, pick.b % 13 === 0 ? 1 : 2),
  }),
  'move-over': (pick) => ({
    do: 'move-over',
    from: pick.piece(pick.a),
    to: pick.piece(pick.b),
    pieces: pick.c % 3 === 0 ? [pick.piece(pick.c)] : undefined,
  }),
} satisfies Record<string, Make>
