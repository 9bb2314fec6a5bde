import { singular } from '../trade/bag-line/nouns.ts'
import type { PlanFacts } from './facts.ts'
import type { TriggerFacts } from './judging-facts.ts'

/** The lists that a finding opens: all words of `when` are within it, in any order, singular or plural. */
export function triggersFor({ triggers }: PlanFacts, finding: string): TriggerFacts[] {
  const found = new Set(wordsOf(finding))
  return [...triggers.values()].filter(({ when }) => {
    const asked = wordsOf(when)
    return asked.length > 0 && asked.every((word) => found.has(word))
  })
}

const EMPTY_WORDS = new Set(['the', 'a', 'an', 'is', 'are', 'of', 'in', 'at', 'on', 'some', 'found', 'there'])

function wordsOf(text: string): string[] {
  return text
    .split(/[\s,/:;.()-]+/u)
    .map(singular)
    .filter((word) => word !== '' && !EMPTY_WORDS.has(word))
}
