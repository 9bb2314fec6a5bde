import type { Command } from '../command.ts'
import { type EntryBodyOf, isMeasurement } from '../entry.ts'
import type { State } from '../state.ts'
import { given, knownPiece, knownStep, refuse } from './refuse.ts'

type Of<Name extends Command['do']> = Extract<Command, { do: Name }>

/** Readings are kept as they were taken; what they come to is worked out each time anew. */
export function measure(
  state: State,
  { name, piece, step, measurement }: Of<'measure'>,
): EntryBodyOf<'measured'> {
  const own = piece === undefined ? undefined : knownPiece(state, piece).piece.step
  const no = step ?? state.build ?? own ?? state.strip
  if (no !== null) knownStep(state, no)
  const { readings, limits } = measurement
  if (readings.length === 0) refuse({ code: 'measurement-wrong', why: 'no-reading' })
  const { leastMm = Number.NEGATIVE_INFINITY, mostMm = Number.POSITIVE_INFINITY } = limits ?? {}
  if (leastMm > mostMm) refuse({ code: 'measurement-wrong', why: 'limits' })
  if (!isMeasurement(measurement)) refuse({ code: 'measurement-wrong', why: 'value' })
  return {
    type: 'measured',
    measure: {
      id: `q${state.dealt.measure + 1}`,
      name: given(name, 'name'),
      ...(piece !== undefined && { piece }),
      step: no,
      measurement,
    },
  }
}

/** Pieces get another size: what is marked on a shim, or what was read wrongly from a bolt. */
export function size(state: State, { sizes }: Of<'size'>): EntryBodyOf<'sized'> {
  if (sizes.length === 0) refuse({ code: 'text-missing', what: 'text' })
  return {
    type: 'sized',
    sizes: sizes.map(({ piece, size: words }) => {
      knownPiece(state, piece)
      return { piece, size: given(words, 'text') }
    }),
  }
}
