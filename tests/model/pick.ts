import type { Into } from '../../src/journal/command.ts'
import type { State } from '../../src/journal/state.ts'
import type { PieceId } from '../../src/ledger/piece.ts'
import { NAMED_PLACES } from '../../src/ledger/place.ts'

/** Particulars of a command, picked by chance out of what a job holds. */
export class Pick {
  readonly state: State
  readonly a: number
  readonly b: number
  readonly c: number

  constructor(state: State, a: number, b: number, c: number) {
    this.state = state
    this.a = a
    this.b = b
    this.c = c
  }

  /** A step that is there, or rarely the one after the last. */
  step(by: number): number {
    return 1 + (by % (this.state.dealt.step + (by % 7 === 0 ? 1 : 0) || 1))
  }
  piece(by: number): PieceId {
    return `p${1 + (by % (this.state.dealt.piece + (by % 7 === 0 ? 1 : 0) || 1))}`
  }
  container(by: number): number {
    const label = this.blank(by >> 1)
    if (by % 5 === 0 && label !== undefined) return label
    return 1 + (by % (this.state.dealt.container + (by % 7 === 0 ? 1 : 0) || 1))
  }
  /** An unused label, a void one among them; undefined where none is on paper. */
  blank(by: number): number | undefined {
    const labels = [...this.state.blanks.keys()]
    return labels[by % (labels.length || 1)]
  }
  /** Rarely a number that is on no unused label. */
  label(by: number): number | undefined {
    return by % 7 === 0 ? this.container(by) : this.blank(by)
  }
  numbered<Letter extends string>(letter: Letter, dealt: number, by: number): `${Letter}${number}` {
    return `${letter}${1 + (by % (dealt || 1))}`
  }
  /** A tightening of a step under way, where there is one. */
  tightening(by: number): `t${number}` {
    const open = [...this.state.tightenings.values()].find(
      ({ step }) => this.state.steps.get(step)?.built === 'underway',
    )
    return by % 4 > 0 && open ? open.id : this.numbered('t', this.state.dealt.tightening, by)
  }
  /** A difference that is not settled, where there is one. */
  difference(by: number): `d${number}` {
    const open = [...this.state.differences.values()].find(({ settled }) => settled === null)
    return by % 4 > 0 && open ? open.id : this.numbered('d', this.state.dealt.difference, by)
  }
  /** A reason, and now and then none. */
  reason(by: number): string {
    return by % 9 === 0 ? ' ' : 'because it is so'
  }
  some<T>(list: readonly T[], by: number): T {
    return list[by % list.length] as T
  }
  into(by: number): Into {
    const slot = this.some(['1', '2', '3', '01', '1.5', ''], by >> 2)
    return this.some<Into>(
      [
        { kind: 'hand' },
        { kind: 'container', no: this.container(by >> 2) },
        { kind: 'container', no: this.container(by >> 3), slot },
        { kind: 'new', container: 'bag' },
        { kind: 'new', container: 'tray', slots: 4 },
        { kind: 'place', place: 'bench' },
        { kind: 'hand' },
        { kind: 'place', place: this.some(NAMED_PLACES, by >> 2) },
        {
          kind: 'container',
          no: this.label(by >> 3) ?? 1,
          as: this.some([undefined, 'tag', 'tray', 'bin'] as const, by >> 1),
        },
        { kind: 'new', container: 'tray', slots: 3, no: this.label(by >> 3) },
      ],
      by,
    )
  }
  position(by: number): string | undefined {
    return this.some([undefined, 'I1', 'I2', 'I3', '4', this.ownPosition(by), this.ownPosition(by)], by)
  }
  ownPosition(by: number): string | undefined {
    return this.state.ledger.accounts.get(this.piece(by))?.home.position
  }
}
