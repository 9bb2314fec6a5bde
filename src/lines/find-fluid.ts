import type { State } from '../journal/state.ts'
import type { FluidId } from '../plan/facts.ts'
import { misread } from './stopped.ts'

/** The fluid that words name: its id (`f1`) or its name, where several are alike the one still to be filled. */
export function findFluid(words: string, state: State): FluidId {
  const name = words.trim().toLowerCase()
  const fluids = [...state.fluids.values()]
  const exact = fluids.filter((fluid) => fluid.id === name || fluid.name.toLowerCase() === name)
  const named = exact.length > 0 ? exact : fluids.filter((fluid) => fluid.name.toLowerCase().includes(name))
  const open = named.filter(({ id, filledLitres }) => filledLitres === null && !state.overrides.has(id))
  const inHand = open.filter(({ step }) => step === state.build)
  const found = [inHand, open, named].find(({ length }) => length === 1)?.[0]
  if (found && name !== '') return found.id
  const known = (named.length > 0 ? named : fluids).map((fluid) => `${fluid.id} ${fluid.name}`)
  misread({ code: 'no-such-fluid', part: words.trim(), known })
}
