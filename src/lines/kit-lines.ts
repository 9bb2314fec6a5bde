import type { Command } from '../journal/command.ts'
import { shortageOf } from '../plan/buying/short-pieces.ts'
import { readWhole } from '../trade/number.ts'
import { findPieces } from './find-piece.ts'
import type { Line } from './line.ts'

type KitLine = Extract<Command, { do: 'count-in' }>['lines'][number]

/** What a kit holds, thing by thing: `1 head gasket, 4 O-rings`. What no piece is called is a thing without a home. */
export function takeKitLines(line: Line): KitLine[] {
  const things = line
    .takeRest('COUNT THING')
    .split(/[,;]|\band\b/i)
    .map((thing) => thing.trim())
    .filter((thing) => thing !== '')
  if (things.length === 0) line.missing('COUNT THING')
  return things.map((thing) => kitLine(line, thing))
}

function kitLine(line: Line, thing: string): KitLine {
  const [, first = '', rest = ''] = /^(\S+?) ?[x×]? (.+)$/.exec(thing) ?? []
  const number = readWhole(first)
  const name = number === undefined ? thing : rest
  const count = number ?? 1
  const isShort = (account: Parameters<typeof shortageOf>[1]) => shortageOf(line.state, account).short > 0
  const pieces = findPieces(name, line.state, ({ should }) => should > 0, isShort)
  const kinds = new Set(pieces.map((piece) => line.account(piece)?.piece.name))
  // Two things that go by one name are two homes, and the kit does not say which.
  if (kinds.size > 1) line.which(name, pieces)
  return { pieces, name, count }
}
