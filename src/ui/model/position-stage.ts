import { type TighteningStage, tighteningStage } from '../../session/tightening-stage.ts'
import { cut, type Line, line, plain, type Span, strong, textOf, wrap } from '../text/line.ts'
import { positionRows } from './position-rows.ts'
import { indented } from './rows.ts'
import type { State } from './scene.ts'
import { tighteningGrid } from './tightening-grid.ts'

type Joint = Parameters<typeof tighteningStage>[1]

export interface StageRows {
  rows: Line[]
  /** Whether all of it has room, in no less than a drawing or the grid of passes. */
  fits: boolean
  /** The row with the next fastener, where it may be out of sight. */
  nextAt: number | null
}

/**
 * How far a tightening has come: its fasteners where they lie with their stage in the pass at hand, and the passes in
 * brief. Where nobody drew them and their names tell of no rows, the grid of pass by fastener says more.
 */
export function stageRows(
  state: State,
  joint: Joint,
  { width, height }: { width: number; height: number },
): StageRows {
  const stage = tighteningStage(state, joint)
  const { layout, written, cells } = stage
  const grid = layout ? null : tighteningGrid(joint, stage.next, width)
  if (grid && grid.length <= height) return { rows: grid, fits: true, nextAt: null }
  const passes = passRows(joint, stage, width)
  const after = orderRows(stage, width)
  const proposed = proposedRows(joint, stage, width)
  const draw = (told: readonly Line[]) => {
    const room = { width, height: height - told.length }
    const { rows, note, form, markedAt } = positionRows(layout ?? written, cells, room)
    const isSmall = rows.length + note.length <= room.height
    return {
      rows: [...rows, ...told, ...note],
      fits: isSmall && (form !== 'listed' || layout === null),
      nextAt: isSmall ? null : markedAt,
      left: room.height - rows.length - note.length,
    }
  }
  const whole = draw([...passes, ...after, ...proposed])
  // Short of all that goes with it, the drawing itself may fit.
  const isHopeless = whole.left < -(after.length + proposed.length)
  if (whole.fits || isHopeless) return whole
  const brief = draw([...passes, ...proposed])
  return brief.fits ? brief : draw(passes)
}

/** Every pass with its sign, its value and how many are through it: `✓ 20 Nm   > 40 Nm 3/8   · 90 deg`. */
function passRows({ passes, done, order }: Joint, { pass, next }: TighteningStage, width: number): Line[] {
  const spans = passes.flatMap(({ typed }, index): Span[] => {
    const through = done[index]?.size ?? 0
    const isAtHand = next !== null && index === pass
    const sign = through === order.length ? '✓' : isAtHand ? '>' : '·'
    const count = through > 0 && through < order.length ? ` ${through}/${order.length}` : ''
    const text = textOf(cut([plain(`${sign} ${index + 1}: ${typed}${count}`)], 30))
    // Each stays whole where the row ends.
    const whole = text.replaceAll(' ', '\u00a0')
    return [isAtHand ? strong(whole) : plain(whole), plain('   ')]
  })
  return wrap(line('     ', spans), width, 5).map(withSpaces)
}

function withSpaces(row: Line): Line {
  return row.map(({ text, tone }) => ({ text: text.replaceAll('\u00a0', ' '), tone }))
}

/** Those that come after the next one, as many as fit on a row. */
function orderRows({ after, next }: TighteningStage, width: number): Line[] {
  if (!next || after.length === 0) return []
  return [cut(line(`     then ${after.join(' ')}`), width)]
}

function proposedRows(joint: Joint, { isProposed, layout }: TighteningStage, width: number): Line[] {
  if (!isProposed) return []
  const text = layout ? 'Proposed from the names alone' : 'Nobody drew how they lie: a list, in order'
  return indented(`${text}${'piece' in joint ? '; a number below draws them' : ''}.`, width)
}
