import type { Account } from '../../ledger/account.ts'
import { openChecks } from '../../plan/judging/judging.ts'
import type { CheckId, VerdictKind } from '../../plan/judging/judging-facts.ts'
import { checksFor } from '../../trade/inspection/checks-for.ts'
import { oneThing, piecesOf } from '../find-pieces.ts'
import type { Line } from '../line.ts'
import { readChecks } from '../read-checks.ts'
import type { Verb } from '../verb.ts'

export const judgingVerbs: readonly Verb[] = [
  {
    words: ['check'],
    topic: 'checking and judging',
    forms: ['check PIECE: look for WHAT, WHAT; measure WHAT; clean', 'check PIECE'],
    says: 'Asks for checks of a piece or a set before it goes back; without words, those that are usual for it.',
    examples: [
      'check cam caps: look for score, cracks; measure oil clearance',
      'check shim E2: look for a wear step',
    ],
    // A check valve comes off like any other part.
    meant: /:/,
    read(line) {
      const [words = '', asked] = line.take(/^([^:]*)(?:: ?(.*))?$/) ?? []
      const pieces = piecesOf(line, words, isWanted)
      const checks = asked
        ? pieces.flatMap((piece) => readChecks(line, asked).map((check) => ({ piece, ...check })))
        : pieces.flatMap((piece) =>
            checksFor(line.account(piece)?.piece.name ?? '').map((check) => ({ piece, ...check })),
          )
      if (checks.length === 0) line.missing('look for WHAT')
      return { do: 'ask-checks', checks }
    },
  },
  {
    words: ['ok'],
    topic: 'checking and judging',
    forms: ['ok k1,k2[: WORDS]', 'ok PIECE[: WORDS]'],
    says: 'Checks turned out well: those named, or all that are open on a piece or a set.',
    examples: ['ok k1', 'ok k1..k3: no marks at all'],
    read(line) {
      const [named = '', says] = line.take(/^([^:]*)(?:: ?(.*))?$/) ?? []
      if (named.trim() === '') line.missing('k1')
      const checks = checkIds(named) ?? openOn(line, named)
      return { do: 'pass-checks', checks, says: says || undefined }
    },
  },
  {
    words: ['drop'],
    topic: 'checking and judging',
    forms: ['drop k1|h1|s1 because REASON'],
    says: 'Drops what is not needed after all: a check, a list or something to put on.',
    examples: ['drop k1 because the part is new'],
    // Drop links come off like any other part.
    meant: /^[khs]\d/i,
    read(line) {
      const reason = line.reason()
      const [letter = '', number = ''] = line.take(/^([khs])(\d{1,9})$/i) ?? line.missing('k1')
      const no = Number(number)
      switch (letter.toLowerCase()) {
        case 'k':
          return { do: 'drop-check', check: `k${no}`, reason }
        case 'h':
          return { do: 'drop-trigger', trigger: `h${no}`, reason }
        default:
          return { do: 'drop-consumable', consumable: `s${no}`, reason }
      }
    },
  },
  {
    words: ['judge'],
    topic: 'checking and judging',
    forms: ['judge [COUNT] PIECES fit again|machine|replace|clean because REASON [picture g1]'],
    says: 'Decides about pieces, by name and with the ground: they go back, are machined, replaced, or cleaned and looked at again.',
    examples: [
      'judge cam caps fit again because no marks',
      'judge shim E2 replace because pitted',
      'judge cam caps I1, I2 clean because varnish on them',
    ],
    read(line) {
      const picture = line.take(/(?:^|,? )picture g(\d{1,9})(?= because |$)/i)?.[0]
      const reason = line.reason()
      // Bad alone does not say what is to become of it.
      const [bad] = line.take(/(?:^|,? )(bad|no good|not good|scrap)$/i) ?? []
      if (bad !== undefined)
        line.notUnderstood(bad, `judge ${line.rest || 'PIECES'} replace because ${reason}`)
      const [verdict] =
        line.take(/(?:^|,? )(fit again|fit|good|machine|replace|clean)$/i) ??
        line.missing('fit again|machine|replace|clean')
      const { count, pieces } = countedPieces(line)
      return {
        do: 'judge',
        pieces,
        count,
        verdict: VERDICTS[(verdict ?? '').toLowerCase()] ?? 'clean',
        reason,
        picture: picture === undefined ? undefined : `g${Number(picture)}`,
      }
    },
  },
  {
    words: ['together'],
    topic: 'checking and judging',
    forms: ['together PIECES [because REASON]'],
    says: 'Says that pieces belong together: as caps with the head they are bored in. To be replaced, one takes the others along.',
    examples: ['together cylinder head, cam caps because they are bored as one'],
    read(line) {
      const reason = line.reasonIfAny()
      return { do: 'bind', pieces: piecesOf(line, line.takeRest('PIECES'), isWanted), reason }
    },
  },
  {
    words: ['checks'],
    topic: 'questions',
    forms: ['checks'],
    says: 'Shows the checks to do before pieces go back; and what was decided about them.',
    examples: ['checks'],
    read: () => ({ ask: 'checks' }),
  },
]

const VERDICTS: Record<string, VerdictKind> = {
  'fit again': 'fit-again',
  fit: 'fit-again',
  good: 'fit-again',
  machine: 'machine',
  replace: 'replace',
  clean: 'clean',
}

const isWanted = ({ should }: Account) => should > 0

/** `k1,k2`, `k1 and k2`, `k1..k3`; null for other words. */
function checkIds(text: string): CheckId[] | null {
  const parts = text.split(/(?:\s*,\s*|\s+and\s+|\s+)/i).filter((part) => part !== '')
  const ids: CheckId[] = []
  for (const part of parts) {
    const [, first, last = first] = /^k(\d{1,6})(?:(?:\.{2,3}|…|-)k?(\d{1,6}))?$/i.exec(part) ?? []
    if (first === undefined) return null
    const [from, to] = [Number(first), Number(last)]
    if (to - from > MOST_AT_ONCE) return null
    for (let no = from; no <= to; no += 1) ids.push(`k${no}`)
  }
  return ids.length > 0 ? ids : null
}

const MOST_AT_ONCE = 500

/** What is open on the pieces that words name. */
function openOn(line: Line, words: string): CheckId[] {
  const pieces = piecesOf(line, words, (account) => openChecks(line.state, account.piece.id).length > 0)
  const open = pieces.flatMap((piece) => openChecks(line.state, piece).map(({ id }) => id))
  return open.length > 0 ? open : line.missing('k1')
}

/** A number in front is so many of one lot; else all that the list names. */
function countedPieces(line: Line) {
  const words = line.takeRest('PIECES')
  const [, number, after = ''] = /^(\d{1,4}) (.+)$/.exec(words) ?? []
  if (number === undefined) return { count: undefined, pieces: piecesOf(line, words, isWanted) }
  return { count: Number(number), pieces: oneThing(line, after, [isWanted]) }
}
