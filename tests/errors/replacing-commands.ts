import type { Command } from '../../src/journal/command.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import type { ComparedFeature } from '../../src/plan/judging/judging-facts.ts'

// Short forms of what is said of an old piece and the one that takes its place.

/** A new piece was held beside the old one, and is right. */
export function alike(piece: PieceId, keep?: true): Command {
  return { do: 'compare', piece, features: [], rest: 'alike', keep }
}

export function found(piece: PieceId, ...features: ComparedFeature[]): Command {
  return { do: 'compare', piece, features }
}

/** Fasteners that sit on a piece. */
export function on(carrier: PieceId, count: number, name: string, size?: string): Command {
  return { do: 'carry', on: carrier, items: [{ kind: 'fastener', name, count, size }] }
}

export function over(from: PieceId, to: PieceId, ...pieces: PieceId[]): Command {
  return { do: 'move-over', from, to, ...(pieces.length > 0 && { pieces }) }
}
