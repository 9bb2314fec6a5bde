export type PieceId = `p${number}`

export type PieceKind = 'part' | 'fastener' | 'connection' | 'aid' | 'tool'

/** Where a piece belongs on the machine. For an aid: where in the machine it was put. */
export interface Home {
  /** What it belongs to, such as `valve cover`. */
  at: string
  /** The one position of a matched piece: `I3`, the port of a hose end, the hole of the long bolt. */
  position?: string | undefined
  /** The positions that common pieces share, where these were written down. */
  alikeAt?: string[] | undefined
}

/** One line of the account of pieces: a matched piece, or a number of common ones. */
export interface Piece {
  id: PieceId
  kind: PieceKind
  name: string
  home: Home
  /** How many belong at home: as specified, not as found. 0 for aids and tools. */
  should: number
  /** The name that mates share: a set of cam caps, the two ends of a hose. */
  set?: string | undefined
  /** Thread, length and drive as the trade writes them, such as `M6x25 hex 10`. */
  size?: string | undefined
  singleUse?: boolean | undefined
  /** The piece whose home this one takes over. */
  replaces?: PieceId | undefined
  /** The step in which it came off, or was put in. */
  step: number
}

/** Whether the piece has a home of its own, which no other piece may take. */
export function isMatched(piece: Piece): boolean {
  return piece.home.position !== undefined
}

/** Aids and tools belong in the toolbox; every other piece belongs on the machine. */
export function belongsInToolbox(piece: Piece): boolean {
  return piece.kind === 'aid' || piece.kind === 'tool'
}
