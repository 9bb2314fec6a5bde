import type { Command } from '../../src/journal/command.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import { bench } from './commands.ts'

type Lines = Extract<Command, { do: 'line-orders' }>['lines']
type Order = Extract<Command, { do: 'change-order' }>['order']

// Short forms of what is bought, so that a story reads as what was done.

export function ordered(...lines: Lines): Command {
  return { do: 'line-orders', lines, ordered: true }
}

export function wanted(...lines: Lines): Command {
  return { do: 'line-orders', lines, ordered: false }
}

export function changed(order: Order, more: Partial<Extract<Command, { do: 'change-order' }>>): Command {
  return { do: 'change-order', order, ...more }
}

export function cancelled(order: Order): Command {
  return changed(order, { cancelled: 'the old ones will do' })
}

export function arrived(order: Order, count?: number, spare?: number): Command {
  return { do: 'receive', order, count, spare, into: bench }
}

export function sentBack(order: Order, count?: number): Command {
  return { do: 'return-order', order, count, reason: 'too short' }
}

export function kit(name: string, ...lines: [PieceId[], string, number][]): Command {
  return {
    do: 'count-in',
    name,
    lines: lines.map(([pieces, thing, count]) => ({ pieces, name: thing, count })),
    into: bench,
  }
}
