import { findVerb } from '../../lines/read-line.ts'

/** Whether a line on a list is words to look for: neither a number, a question nor a command. */
export function isSearch(text: string): boolean {
  return /^\s*[\p{L}\p{N}]/u.test(text) && /[^\p{N}\s]/u.test(text) && !findVerb(text.trim())
}
