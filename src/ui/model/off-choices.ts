import { containerName } from '../../words/places.ts'
import { type Choice, goTo } from '../page.ts'
import { drawingOf } from './draw-choice.ts'
import { perVersion, type Scene, type State } from './scene.ts'

/**
 * What can be chosen while things come off: from 1 on the words said before, and what is always there by a number that
 * never changes.
 */
export function offChoices(
  scene: Scene,
  { again, container }: { again: readonly string[]; container: number | null },
): Map<number, Choice> {
  const { state } = scene.session
  const choices = new Map<number, Choice>()
  for (const [index, words] of again.entries())
    choices.set(index + 1, { says: words, act: { do: 'write', before: '', after: ` ${words}` } })
  const { strip } = state
  if (strip !== null) {
    for (const [no, choice] of orderChoices(state, strip)) choices.set(no, choice)
    choices.set(7, {
      says: `all of it is off: end step ${strip}`,
      act: { do: 'send', commands: [{ do: 'end-strip' }] },
    })
  }
  if (container !== null) {
    choices.set(
      8,
      goTo(`label of ${containerName(state, container)}`, { at: 'qr', container, invert: false }),
    )
  }
  choices.set(9, {
    says: 'name the next step',
    act: { do: 'write', before: 'begin ', asks: 'Type what comes off next, as: valve cover off' },
  })
  const drawing = lastSet(scene)
  if (drawing) choices.set(10, drawing)
  choices.set(11, TRAY)
  choices.set(12, BENCH)
  return choices
}

/** A bag is Enter; a tray needs its slots, and what is too big for a bag goes onto the bench. */
const TRAY: Choice = {
  says: 'a new tray',
  act: { do: 'write', before: 'tray ', after: ' slots', asks: 'Type how many slots it has, as: 12' },
}
const BENCH: Choice = {
  says: 'onto the bench',
  act: {
    do: 'write',
    before: '',
    after: ' onto the bench',
    asks: 'Type what is too big for a bag, as: cylinder head',
  },
}

/** What had to be off before the step: the one before, unless a key says otherwise. */
function orderChoices(state: State, strip: number): [number, Choice][] {
  const after = state.steps.get(strip)?.after ?? []
  const hang: Choice = {
    says: 'it had to wait for other steps',
    act: {
      do: 'write',
      before: `step ${strip} after `,
      asks: `Type the numbers of the steps that had to be off before step ${strip}, as: 1,2`,
    },
  }
  if (after.length === 0) return state.steps.size > 1 ? [[6, hang]] : []
  const free: Choice = {
    says: `nothing had to be off before step ${strip}`,
    act: { do: 'send', commands: [{ do: 'change-step', step: strip, after: [] }] },
  }
  return [
    [5, free],
    [6, hang],
  ]
}

/** The drawing of what came off last in this step, where it has positions. */
function lastSet({ session }: Scene): Choice | null {
  return perVersion(session, 'last set', () => {
    const { ledger, strip } = session.state
    const last = [...ledger.accounts.values()].findLast(({ piece }) => piece.step === strip)
    return last ? drawingOf(session.state, last.piece.id) : null
  })
}
