import type { Leftover } from '../../src/plan/leftovers.ts'

/**
 * The trial balance in the words of the naive model, which does not tell a piece that is owed at home from one
 * too many: both lie where they should not.
 */
export function leftoverLines(leftovers: readonly Leftover[]): string[] {
  const lying = new Map<string, number>()
  const lines: string[] = []
  for (const leftover of leftovers) {
    if ('place' in leftover) {
      const key = `${leftover.piece} lies ${leftover.place}`
      lying.set(key, (lying.get(key) ?? 0) + leftover.count)
    } else lines.push(line(leftover))
  }
  return [...lines, ...[...lying].map(([key, count]) => `${key} ${count}`)].sort()
}

function line(leftover: Exclude<Leftover, { place: string }>): string {
  switch (leftover.code) {
    case 'piece-short':
      return `${leftover.piece} short ${leftover.count}`
    case 'piece-lost':
      return `${leftover.piece} lost ${leftover.count}`
    case 'piece-left-in':
      return `${leftover.piece} too many at home ${leftover.count}`
    case 'fluid-open':
      return `${leftover.fluid} empty`
    case 'mark-open':
      return `${leftover.mark} not seen`
    case 'tighten-open':
      return `${leftover.tightening} not through`
    case 'eased-on':
      return `${leftover.loosening} eased and on`
    case 'fault-open':
      return `${leftover.fault} not put right`
    case 'count-open':
      return `${leftover.difference} not explained`
    case 'left-out-open':
      return `${leftover.leftOut} not settled`
    case 'step-open':
      return `step ${leftover.step} not done`
    case 'piece-judged':
      return `${leftover.piece} judged ${leftover.verdict}`
    case 'compare-due':
      return `${leftover.piece} beside ${leftover.old} due`
    case 'compare-wrong':
      return `${leftover.piece} beside ${leftover.old} wrong`
    case 'check-due':
      return `${leftover.check} not seen to`
    case 'out-unanswered':
      return `${leftover.outing} back and not looked into`
    case 'consumable-due':
      return `${leftover.consumable} not put on`
    case 'worked-late':
      return `${leftover.consumable} together ${leftover.late} min late`
    case 'curing':
      return `${leftover.consumable} still soft`
    case 'second-due':
      return `step ${leftover.step} ${leftover.line} seen once only`
  }
}
