import type { State } from '../journal/state.ts'
import type { Place } from '../ledger/place.ts'
import type { LayoutView } from '../session/layout-view.ts'
import type { LayoutDrawing } from '../trade/position-drawing/drawing.ts'
import { say } from './cures.ts'
import { placeName } from './places.ts'

/** A place in a few letters: `✓` for the machine, `bag 4`, `tray 3/5`, `bench`. */
export function placeInBrief(state: State, place: Place): string {
  return place === 'machine'
    ? '✓'
    : placeName(state, place)
        .replace(/^the |^a /, '')
        .replace(', slot ', '/')
}

/** What has to be said of how a drawing is drawn; nothing of one that shows each where it lies. */
export function formNote(form: LayoutDrawing['form']): string | null {
  switch (form) {
    case 'whole':
      return null
    case 'wrapped':
      return 'Too wide for one picture: two dots stand where it goes on.'
    case 'listed':
      return 'Too many for a picture: a list, in order.'
    default:
      return form satisfies never
  }
}

/** A size that all positions share: `all M6x25 hex 10`. */
function sharedSize({ sizes, positions }: LayoutView): string | null {
  const [size, ...others] = new Set(sizes.values())
  return size !== undefined && others.length === 0 && sizes.size === positions.length ? `all ${size}` : null
}

/** A pattern by the name of its pieces: `8 head bolts, all M10x120 E14`, `4 cam caps`. */
export function patternName(state: State, view: LayoutView): string {
  const counts = new Map<string, number>()
  for (const { piece } of view.positions) {
    const name = state.ledger.accounts.get(piece)?.piece.name ?? ''
    counts.set(name, (counts.get(name) ?? 0) + 1)
  }
  // One long bolt among short ones is called a bolt, all of them go by the name of the others.
  const [[name] = ['']] = [...counts].toSorted(([, a], [, b]) => b - a)
  const size = sharedSize(view)
  return `${view.positions.length} ${name}${size === null ? '' : `, ${size}`}`
}

/** How positions are drawn otherwise, in words to type. */
export function layoutForms({ piece, positions }: LayoutView): string {
  const form = (typed: string) => say(`layout ${piece}: ${typed}`)
  return `${form(`2x${Math.ceil(positions.length / 2)}`)}, ${form('row')}, ${form('circle')} or row by row, ${form('1 2 / . 3')}, draws them otherwise.`
}
