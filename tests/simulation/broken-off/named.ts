import type { Card, NextThing, Todo } from '../../../src/session/views.ts'
import type { Command } from '../../../src/ui/act.ts'

/** What the program names as next, by the ids of the record. */
export type Named =
  | { does: 'strip'; step: number; bolt?: string; of?: string }
  | { does: 'take' | 'look' | 'close' | 'blocked'; step: number }
  | { does: 'fit'; piece: string; position?: string | undefined; count?: number | undefined }
  | { does: 'take-out'; piece: string }
  | { does: 'apply' | 'confirm' | 'fill'; id: string }
  | { does: 'turn'; of: string; bolt: string; pass?: number; doubt: boolean }
  | { does: 'leftovers'; pieces: readonly string[] }
  | { does: 'begin' | 'clear' | 'other'; what: string }

/** What the card names, by its facts. */
export function namedByCard({ next }: Card): Named {
  return namedThing(next)
}

function namedThing(next: NextThing): Named {
  switch (next.kind) {
    case 'strip':
      return next.ease
        ? { does: 'strip', step: next.step, bolt: next.ease.next.fastener, of: next.ease.loosening.id }
        : { does: 'strip', step: next.step }
    case 'todo':
      return namedTodo(next.todo)
    case 'take':
    case 'look':
    case 'close':
    case 'blocked':
      return { does: next.kind, step: next.step }
    case 'leftovers':
      return {
        does: 'leftovers',
        pieces: next.leftovers.flatMap((left) => ('piece' in left && left.piece ? [left.piece] : [])),
      }
    case 'clear':
    case 'begin':
      return { does: next.kind, what: '' }
    default:
      return { does: 'other', what: next.kind }
  }
}

function namedTodo(todo: Todo): Named {
  switch (todo.kind) {
    case 'take-out':
      return { does: 'take-out', piece: todo.account.piece.id }
    case 'fit': {
      const { piece, home } = todo.account
      return { does: 'fit', piece: piece.id, position: home.position, count: todo.owed }
    }
    case 'confirm':
      return { does: 'confirm', id: todo.mark.id }
    case 'turn': {
      const { tightening, next } = todo
      const { fastener: bolt, pass, suspect: doubt } = next
      return { does: 'turn', of: tightening.id, bolt, pass, doubt }
    }
    case 'fill':
      return { does: 'fill', id: todo.fluid.id }
    case 'apply':
      return { does: 'apply', id: todo.consumable.id }
    default:
      return { does: 'other', what: todo.kind }
  }
}

/** What a key on the screens would record. */
export function namedByCommand(command: Command): Named {
  switch (command.do) {
    case 'begin-build':
      return { does: 'take', step: command.step }
    case 'look':
      return { does: 'look', step: command.step }
    case 'close-step':
      return command.step === undefined
        ? { does: 'other', what: command.do }
        : { does: 'close', step: command.step }
    case 'fit': {
      const [fitting] = command.fittings
      return { does: 'fit', piece: fitting?.piece ?? '', position: fitting?.position }
    }
    case 'move':
      return { does: 'take-out', piece: command.piece }
    case 'confirm':
      return { does: 'confirm', id: command.mark }
    case 'apply':
      return { does: 'apply', id: command.consumable }
    case 'tighten': {
      const { tightening: of = '', fastener: bolt = '' } = command
      return of.startsWith('l')
        ? { does: 'strip', step: 0, bolt, of }
        : { does: 'turn', of, bolt, doubt: false }
    }
    case 'clear':
      return { does: 'clear', what: '' }
    default:
      return { does: 'other', what: command.do }
  }
}
