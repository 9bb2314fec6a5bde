import type { Arrow } from '../../plan/facts.ts'
import { layoutOf, patternOf } from '../../plan/pattern.ts'
import { MOST_POSITIONS } from '../../trade/position-layout/position-layout.ts'
import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { knownPiece, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** The positions of a pattern are drawn: each once, no two in one place. A later drawing takes the place of this one. */
export function layOut(state: State, { piece, layout, arrow }: Of<'lay-out'>): EntryBodyOf<'laid-out'> {
  knownPiece(state, piece)
  const pattern = patternOf(state, piece)
  if ('code' in pattern) refuse({ code: 'no-pattern', fault: pattern })
  const names = pattern.places.map(({ position }) => position)
  if (names.length > MOST_POSITIONS) refuse({ code: 'count-wrong', count: names.length })
  const drawn = layout.places.map(({ position }) => position)
  const spots = layout.places.map(({ x, y }) => `${x},${y}`)
  const missing = names.filter((name) => !drawn.includes(name))
  const unknown = drawn.filter((name) => !names.includes(name))
  const twice = drawn.filter((name, index) => drawn.indexOf(name) !== index)
  const together = drawn.filter((_, index) => spots.indexOf(spots[index] ?? '') !== index)
  if (missing.length + unknown.length + twice.length + together.length > 0)
    refuse({ code: 'layout-wrong', missing, unknown, twice, together })
  const known = arrow === undefined ? arrowsOf(state, piece) : new Map<string, Arrow>()
  return {
    type: 'laid-out',
    of: [...new Set(pattern.places.map((place) => place.piece))],
    shape: layout.shape,
    places: layout.places.map(({ position, x, y }) => {
      const points = arrow ?? known.get(position)
      return { position, x, y, ...(points && { arrow: points }) }
    }),
  }
}

/** The arrows of some positions point another way than the rest. */
export function point(state: State, { piece, positions, arrow }: Of<'point'>): EntryBodyOf<'laid-out'> {
  knownPiece(state, piece)
  const layout = layoutOf(state, piece) ?? refuse({ code: 'not-laid-out', piece })
  const names = layout.places.map(({ position }) => position)
  for (const position of positions)
    if (!names.includes(position)) refuse({ code: 'no-such-position', position, known: names })
  return {
    type: 'laid-out',
    of: [...layout.pieces],
    shape: layout.shape,
    places: layout.places.map((place) => ({
      ...place,
      ...(positions.includes(place.position) && { arrow }),
    })),
  }
}

/** Drawn anew, the arrows stay as they were. */
function arrowsOf(state: State, piece: Of<'lay-out'>['piece']): Map<string, Arrow> {
  const places = layoutOf(state, piece)?.places ?? []
  return new Map(places.flatMap(({ position, arrow }) => (arrow ? [[position, arrow] as const] : [])))
}
