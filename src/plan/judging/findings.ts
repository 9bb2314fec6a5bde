import { wordsOf } from '../../trade/bag-line/name-words.ts'
import type { PlanFacts } from '../facts.ts'
import type { TriggerFacts } from './judging-facts.ts'

/** The lists that a finding opens: all words of `when` are within it, in any order, singular or plural. */
export function triggersFor({ triggers }: PlanFacts, finding: string): TriggerFacts[] {
  const found = new Set(saidWords(finding))
  return [...triggers.values()].filter(({ when }) => {
    const asked = saidWords(when)
    return asked.length > 0 && asked.every((word) => found.has(word))
  })
}

const EMPTY_WORDS = new Set(['the', 'a', 'an', 'is', 'are', 'of', 'in', 'at', 'on', 'some', 'found', 'there'])

/** A sentence as a person says it, with its stops. */
function saidWords(text: string): string[] {
  return wordsOf(text.replace(/[;.()-]/g, ' '), EMPTY_WORDS)
}
