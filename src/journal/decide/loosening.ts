import type { Command } from '../command.ts'
import type { EntryBodyOf } from '../entry.ts'
import type { State } from '../state.ts'
import { given, refuse } from './refuse.ts'
import { stripFor } from './steps.ts'

/**
 * Fasteners are to be eased in steps, in an order: those of the step that comes off now. It is there for the hands, and
 * nothing waits for it.
 */
export function setLoosening(
  state: State,
  { name, passes, order, layout }: Extract<Command, { do: 'set-loosening' }>,
): EntryBodyOf<'loosening-set'> {
  const drawn = layout?.places.map(({ position }) => position) ?? order
  const missing = drawn.filter((each) => !order.includes(each))
  const unknown = order.filter((each) => !drawn.includes(each))
  const twice = order.filter((each, index) => order.indexOf(each) !== index)
  if (missing.length + unknown.length + twice.length > 0)
    refuse({ code: 'order-wrong', missing, unknown, twice })
  if (passes.length === 0 || order.length === 0) refuse({ code: 'text-missing', what: 'text' })
  if (passes.length > 20 || order.length > 200)
    refuse({ code: 'count-wrong', count: Math.max(passes.length, order.length) })
  for (const pass of passes) {
    if (pass.kind !== 'back-off') refuse({ code: 'passes-wrong', why: 'not-loosening' })
    const { degrees = 1 } = pass
    if (!(degrees > 0 && degrees < Number.POSITIVE_INFINITY)) refuse({ code: 'count-wrong', count: degrees })
  }
  const words = given(name, 'name')
  const { no: step, began } = stripFor(state, words)
  return {
    type: 'loosening-set',
    loosening: {
      id: `l${state.dealt.loosening + 1}`,
      name: words,
      step,
      passes,
      order,
      ...(layout && { layout: { shape: layout.shape, places: placesOnly(layout.places) } }),
    },
    ...(began && { began }),
  }
}

function placesOnly(places: readonly { position: string; x: number; y: number }[]) {
  return places.map(({ position, x, y }) => ({ position, x, y }))
}
