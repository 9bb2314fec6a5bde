import type { TakenOutThere } from '../journal/command.ts'
import type { PieceId } from '../ledger/piece.ts'
import { readBagLine } from '../trade/bag-line/read-bag-line.ts'
import { readWhole } from '../trade/number.ts'
import { sizeText } from '../trade/size-text.ts'
import { findPieces } from './find-piece.ts'
import type { Line } from './line.ts'

/**
 * What a shop took out: `nothing`, `2 gallery plugs back, 4 guides not back`. Whether it is back is said of each, or once
 * behind several. `there`: the pieces that it may have been taken out of.
 */
export function readTakenOut(
  line: Line,
  text: string,
  there: readonly PieceId[],
): { text: string; items: TakenOutThere[] } {
  const said = text.trim()
  if (said === '') line.missing('WHAT')
  if (/^(?:nothing|none)(?: at all)?$/i.test(said)) return { text: said, items: [] }
  const parts = said.split(/\s*[,;]\s*|\s+and\s+/i).filter((part) => part !== '')
  const items: TakenOutThere[] = []
  let back: boolean | null = null
  for (const part of parts.toReversed()) {
    const { words, isBack } = takeBack(part)
    back = isBack ?? back
    if (back === null) line.missing('back or not back')
    if (words === '') line.notUnderstood(part)
    items.unshift(readItem(line, words, back, there))
  }
  return { text: said, items }
}

function takeBack(part: string): { words: string; isBack: boolean | null } {
  const match =
    /^(.*?),? ?(?:\(?(?:(?:is|are|came|has come|have come) )?(not |still )?(back|here|there|missing)\)?)$/i.exec(
      part,
    )
  if (!match) return { words: part, isBack: null }
  const [, words = '', before = '', where = ''] = match
  const isHere = /^(?:back|here)$/i.test(where)
  return { words: words.trim(), isBack: isHere && before.trim().toLowerCase() !== 'not' }
}

function readItem(line: Line, text: string, back: boolean, there: readonly PieceId[]): TakenOutThere {
  const { words, from } = takeFrom(line, text, there)
  const bag = readBagLine(words, { units: line.state.job.units })
  const [item, another] = bag.understood ? bag.items : []
  const isPlain =
    item !== undefined && another === undefined && (item.kind === 'part' || item.kind === 'fastener')
  if (isPlain && item.positions === undefined) {
    const { kind, name, count, singleUse } = item
    return { kind, name, count, back, size: sizeText(item) || undefined, singleUse, from }
  }
  const [, number = '', name = words] = /^(\d{1,4}) (.+)$/.exec(words) ?? []
  return { name, count: readWhole(number) ?? 1, back, from }
}

/** `2 plugs from cylinder head`, where that went out. */
function takeFrom(
  line: Line,
  text: string,
  there: readonly PieceId[],
): { words: string; from?: PieceId | undefined } {
  const [, words, of] = /^(.+?) (?:out of|from|of) (?:the )?(.+)$/i.exec(text) ?? []
  if (words === undefined || of === undefined) return { words: text }
  const found = findPieces(of, line.state, ({ piece }) => there.includes(piece.id))
  const from = found.length === 1 ? found[0] : undefined
  return from !== undefined && there.includes(from) ? { words, from } : { words: text }
}
