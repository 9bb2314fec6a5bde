import type { State } from '../../src/journal/state.ts'
import { readLine } from '../../src/lines/read-line.ts'
import type { Reading } from '../../src/lines/reading.ts'

/** Words in double quotes are words to type. */
export function quoted(lines: readonly string[]): string[] {
  return lines.flatMap((line) => [...line.matchAll(/"([^"]+)"/g)].map(([, words = '']) => words))
}

/** What words to type come to, with something in each gap. */
export function readTyped(words: string, state: State): Reading {
  const [piece = ''] = [...state.ledger.accounts.keys()].slice(-1)
  const line = words
    .replace(/=\.\.\./g, '=4')
    .replace(/^off \.\.\.$/, 'off 8 bolts')
    .replace(/^(took out [^:]*): \.\.\.$/, '$1: 2 plugs back')
    .replace(/^(fill .*) \.\.\.$/, '$1 2 L')
    .replace(/^(count .* =) \.\.\.$/, '$1 4')
    .replace(/^(measure [^:]*): \.\.\.$/, '$1: 0.02')
    .replace(/^(tighten [^.]*) \.\.\./, '$1 20 Nm')
    .replace(/^(size p\d+) \.\.\.$/, '$1 2.45')
    .replace(/^(threads t\d+) \.\.\.$/, '$1 dry')
    .replace('...', 'seen by hand')
    .replace('TITLE', 'seat off')
    .replace('PIECE', piece)
    .replace('PLACE', 'bench')
    .replace('NAME', 'black washer')
    .replace('BAG', '1')
    .replace(/\bN\b/, '1')
  return readLine(line, state)
}
