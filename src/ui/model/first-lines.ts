import { type Line, line, strong } from '../text/line.ts'
import { headed } from './rows.ts'
import type { State } from './scene.ts'

const FIRST = [
  ['8 M6x25 hex 10 valve cover bolts', ''],
  ['cam caps I1..I4', 'each to its own place'],
  ['cylinder head onto the bench', 'too big for a bag'],
  ['fuel hose: tank > rail', 'both ends'],
  ['rag > inlet port 1', 'what must come out again'],
] as const

/** What lines look like, until the first is written; the practice job says so itself. */
export function firstLines(state: State): Line[] {
  if (state.ledger.accounts.size > 0 || state.fluids.size > 0 || state.job.practice) return []
  return headed(
    'TYPE WHAT COMES OFF, AS YOU WOULD WRITE IT ON A BAG',
    FIRST.map(([text, why]) => line('     ', strong(text.padEnd(why === '' ? 0 : 34)), why)),
  )
}
