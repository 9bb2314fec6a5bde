import type { PieceId } from '../ledger/piece.ts'
import { readDateSaid } from '../trade/calendar/date-said.ts'
import { isOff } from './find-piece.ts'
import { namesAny, piecesOf } from './find-pieces.ts'
import type { Line } from './line.ts'
import { readDay } from './read-said.ts'

/** What is said of pieces that go out, behind the words for them. */
export interface Going {
  to: string
  why?: string | undefined
  due?: string | undefined
  expects?: string | undefined
  aside?: PieceId[] | undefined
}

type Clause = 'to' | 'for' | 'due' | 'expect' | 'without'

/** Reads `Miller for skimming due Friday expect flat without plugs`: to whom, and what follows in any order. */
export function readGoing(line: Line, text: string): Going {
  const said = clausesOf(line, text)
  const to = said.get('to') ?? ''
  if (to === '') line.missing('to WHOM')
  const aside = said.get('without')
  const due = said.get('due')
  return {
    to,
    why: said.get('for'),
    due: due === undefined ? undefined : readDay(line, due),
    expects: said.get('expect'),
    aside: aside === undefined ? undefined : piecesOf(line, aside, isOff),
  }
}

function clausesOf(line: Line, text: string): Map<Clause, string> {
  const said = new Map<Clause, string>()
  const words = text.split(' ')
  let clause: Clause = 'to'
  let own: string[] = []
  for (const [index, word] of words.entries()) {
    const next = clauseOf(word)
    const rest = words.slice(index + 1)
    if (next !== null && !said.has(next) && next !== clause && begins(line, next, { in: clause, rest })) {
      said.set(clause, own.join(' ').replace(/,$/, ''))
      clause = next
      own = []
    } else own.push(word)
  }
  return said.set(clause, own.join(' '))
}

/** Words within what is said freely are no clause: `flat for the whole length`, `without a scratch`. */
function begins(line: Line, next: Clause, { in: clause, rest }: { in: Clause; rest: string[] }): boolean {
  if (next === 'for') return clause === 'to'
  if (next === 'without')
    return clause === 'to' || namesAny(line, rest.slice(0, 3).join(' ').split(',')[0] ?? '')
  if (next === 'due') return clause === 'to' || isDate(rest)
  return next === 'expect'
}

function clauseOf(word: string): Clause | null {
  const bare = word.toLowerCase().replace(/,$/, '')
  if (/^expect(?:s|ed|ing)?$/.test(bare)) return 'expect'
  return bare === 'for' || bare === 'due' || bare === 'without' ? bare : null
}

/** Whether words begin with a date, or with one that may be two days. */
function isDate(words: readonly string[]): boolean {
  return [1, 2, 3, 4].some((length) => {
    const read = readDateSaid(words.slice(0, length).join(' ').replace(/,$/, ''))
    return read.understood || read.code === 'two-ways' || read.code === 'past'
  })
}
