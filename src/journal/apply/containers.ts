import { LAST_CONTAINER } from '../../label/code.ts'
import { noteDealt } from '../dealt.ts'
import type { Container, EntryOf } from '../entry.ts'
import type { State } from '../state.ts'
import type { AppliersOf } from './appliers.ts'

/** Containers and their labels. */
export const containerAppliers: AppliersOf<
  'container-opened' | 'container-put' | 'container-voided' | 'labels-voided'
> = {
  'container-opened': (state, { container }) => {
    openContainer(state, container)
    takeInHand(state, container.no)
  },
  'container-put': (state, { container, inside }) => {
    const stood = containerState(state, container)
    // No command makes a circle, but two copies that are merged could make one together.
    for (let outer = inside; outer !== null; outer = containerState(state, outer).inside)
      if (outer === container) throw new Error(`container ${container} would stand in itself`)
    stood.inside = inside
  },
  'container-voided': (state, { container, insteadOf, reason }) => {
    const blank = state.blanks.get(container)
    if (blank) {
      blank.voided = { reason, insteadOf }
      return
    }
    const gone = containerState(state, container)
    gone.voided = { reason, insteadOf }
    // Bags that stood in it stand where it stood: a void label answers for nothing.
    for (const other of state.containers.values()) if (other.inside === container) other.inside = gone.inside
    if (state.hand === container) state.hand = null
  },
  'labels-voided': (state, { labels, reason }) => {
    for (const label of labels) blankOf(state, label).voided = { reason }
  },
}

/** Numbers go to paper: from now on they are labels without a container. */
export function dealLabels(state: State, entry: EntryOf<'labels-dealt'>): void {
  const { n, from, to } = entry
  if (from <= state.dealt.container) throw new Error(`number ${from} was dealt already`)
  if (to < from || to > LAST_CONTAINER) throw new Error(`there are no labels ${from} to ${to}`)
  noteDealt(state.dealt, entry)
  for (let no = from; no <= to; no += 1) state.blanks.set(no, { run: n, voided: null })
}

/** An unused label becomes a container; any other container has a number of its own. */
export function openContainer(state: State, container: Container): void {
  const { no } = container
  const blank = state.blanks.get(no)
  if (blank?.voided) throw new Error(`label ${no} is void`)
  if (state.containers.has(no)) throw new Error(`there is a container ${no} already`)
  if (container.inside !== null) containerState(state, container.inside)
  state.blanks.delete(no)
  state.containers.set(no, { ...container, voided: null, ...(blank && { run: blank.run }) })
}

/** What pieces go into from now on. Nothing more goes onto a tag that hangs on its piece, nor loose onto a shelf. */
export function takeInHand(state: State, no: number | null): void {
  const kind = no === null ? undefined : containerState(state, no).kind
  if (kind !== undefined && kind !== 'tag' && kind !== 'shelf') state.hand = no
}

/** The container of that number. Throws where there is none. */
export function containerState(state: State, no: number) {
  const container = state.containers.get(no)
  if (!container) throw new Error(`no container ${no}`)
  return container
}

function blankOf(state: State, no: number) {
  const blank = state.blanks.get(no)
  if (!blank) throw new Error(`no unused label ${no}`)
  return blank
}
