import { bareLayout } from '../bare-layout.ts'
import type { Ask } from '../reading.ts'
import { takePattern } from '../take-pattern.ts'
import { takeRule } from '../take-rule.ts'
import type { Verb } from '../verb.ts'

export const tighteningOrderVerbs: readonly Verb[] = [
  {
    words: ['order'],
    topic: 'arithmetic',
    forms: [
      'order PIECE [by star|spiral|crosswise|row|clockwise]',
      'order 2x5 | circle 12 | row 6 [by RULE]',
    ],
    says: 'Shows the order of tightening that a rule gives; and where the order that was set goes another way.',
    examples: [
      'order head bolts',
      'order valve cover bolts by clockwise',
      'order 2x5 by spiral',
      'order circle 12',
    ],
    read(line): Ask {
      const by = takeRule(line)
      const rule = by && { rule: by }
      const words = line.takeRest('PIECE')
      const layout = bareLayout(words)
      if (layout === null) return line.notUnderstood(words, 'order 2x5')
      const of = layout ? { layout } : { piece: takePattern(line, words) }
      return { ask: 'sum', sum: { sum: 'order', of, ...rule } }
    },
  },
]
