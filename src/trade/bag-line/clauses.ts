import { isPositionList } from './position-words.ts'

const stateInBrackets =
  / ?\(((?:\d{1,4}|all|one|two|three|four) (?:missing|lost|snapped|sheared|broken|cracked|stripped)[^()]{0,60})\)/gi

/**
 * Splits an item into clauses at its commas, and each clause into words. A comma within a decimal number or a list of
 * positions is none: `M8x1,25x45`, `@1..3,5`.
 */
export function splitClauses(text: string): string[][] {
  const clauses: string[][] = [[]]
  for (const word of text.replace(stateInBrackets, ', $1').split(' ')) {
    const pieces =
      isPositionList(word) || word.startsWith('@') ? splitLastComma(word) : word.split(/,(?!\d)|(?<!\d),/)
    for (const [i, piece] of pieces.entries()) {
      if (i > 0) clauses.push([])
      if (piece !== '') clauses.at(-1)?.push(piece)
    }
  }
  const [first = [], ...rest] = clauses
  return [first, ...rest.filter((clause) => clause.length > 0)]
}

/** Clauses as text again. */
export function clausesText(clauses: readonly (readonly string[])[]): string {
  return clauses
    .filter((clause) => clause.length > 0)
    .map((clause) => clause.join(' '))
    .join(', ')
}

function splitLastComma(word: string): string[] {
  return word.endsWith(',') ? [word.slice(0, -1), ''] : [word]
}
