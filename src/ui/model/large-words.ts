import type { Large } from '../page.ts'
import { type Line, line, strong, textOf } from '../text/line.ts'

/** More words than these take more than a glance. */
const MOST_WORDS = 12

type Part = string | Line

/**
 * Large letters with at most twelve words under them, in the parts in which they are read; the first `more` of them are
 * large too where there is room. Where it is too much, the longest part gives way from its end.
 */
export function inLarge(letters: string, parts: readonly Part[], more = 0): Large {
  const under = shortened(parts.filter((part) => wordsIn(part).length > 0))
  return { letters, under: under.map((part) => (typeof part === 'string' ? line(strong(part)) : part)), more }
}

/** As many of the parts from the first as can stand there whole. */
export function inWhole(parts: readonly string[]): string[] {
  let count = 0
  return parts.filter((part) => {
    count += wordsIn(part).length
    return count <= MOST_WORDS
  })
}

function shortened(parts: readonly Part[]): readonly Part[] {
  const counts = parts.map((part) => wordsIn(part).length)
  if (counts.reduce((sum, count) => sum + count, 0) <= MOST_WORDS) return parts
  // A sign with its word stays whole.
  const most = Math.max(...counts.filter((_, index) => typeof parts[index] === 'string'))
  const longest = parts.findLastIndex((part, index) => typeof part === 'string' && counts[index] === most)
  const part = parts[longest]
  if (part === undefined) return parts
  const kept = wordsIn(part).slice(0, -1).join(' ')
  return shortened(
    kept === '' ? parts.toSpliced(longest, 1) : parts.with(longest, `${kept.replace(/[.,;:]+$/, '')}..`),
  )
}

/** A sign by itself, as the × of a count, is none; it stays with the word behind it. */
const WORD = /(?:[^\s\p{L}\p{N}]+ +)?\S*[\p{L}\p{N}]\S*/gu

function wordsIn(part: Part): string[] {
  return (typeof part === 'string' ? part : textOf(part)).match(WORD) ?? []
}
