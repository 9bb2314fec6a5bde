import type { Entry } from '../../../src/journal/entry.ts'
import type { Act, Doing } from '../job/act.ts'
import type { Known } from '../job/known.ts'
import { act } from '../job/strip-acts.ts'
import type { Made, MistakeClass } from './classes.ts'
import { subjectsOf } from './leavings.ts'
import type { Defect } from './mistake.ts'

/** Work broke off, and 60 days later somebody else takes it up, with a slip: those who come back repeat more often than they skip. */
export const BROKEN_OFF: readonly MistakeClass[] = [
  slip('broken off: the last thing done once more', 4, (acts, place) => {
    const last = acts[place - 1]
    return last && REPEATED.has(last.doing) && last.step === acts[place]?.step ? last : null
  }),
  slip('broken off: one ahead of the next', 2, (acts, place) => {
    const [next, ahead] = acts.slice(place)
    const isAlike = next?.doing === ahead?.doing && next?.step === ahead?.step
    return next && ahead && isAlike && AHEAD.has(next.doing) && next.doing !== 'turn' ? ahead : null
  }),
  slip('broken off: on in the middle of a torque pass', 2, (acts, place) => {
    const next = acts[place]
    return next?.doing === 'turn' && next.at !== '0' && kindOf(next) === 'torque' ? next : null
  }),
  slip('broken off: one ahead in a pass', 1, (acts, place) => {
    const [next, ahead] = acts.slice(place)
    const isInPass = next?.thing === ahead?.thing && next?.pass === ahead?.pass
    return next?.doing === 'turn' && ahead?.doing === 'turn' && isInPass ? ahead : null
  }),
  slip('broken off: an angle once more', 2, (acts, place) => {
    const [last, next] = acts.slice(Math.max(0, place - 1))
    const isInPass = last?.thing === next?.thing && last?.pass === next?.pass
    return last?.doing === 'turn' && next?.doing === 'turn' && isInPass && kindOf(next) === 'angle'
      ? next
      : null
  }),
]

const REPEATED: ReadonlySet<Doing> = new Set(['off', 'fit', 'confirm', 'put on', 'fill', 'take', 'look'])
const AHEAD: ReadonlySet<Doing> = new Set(['fit', 'confirm', 'put on'])

function kindOf({ thing, pass }: Act): 'torque' | 'angle' | 'mark' | undefined {
  return thing?.kind === 'lot' ? thing.passes?.kinds[pass ?? 0] : undefined
}

/** The shares of what is broken off are a choice of this program, and come on top of the 100: nobody counted them. */
function slip(
  name: string,
  weight: number,
  wrong: (acts: readonly Act[], place: number) => Act | null,
): MistakeClass {
  return {
    name,
    group: 'other',
    weight,
    from: 'a choice of this program: who comes back repeats more often than skips (interruption studies)',
    going: 'broken off',
    at(acts, place): Made | null {
      const next = acts[place]
      const said = next && wrong(acts, place)
      if (!next || !said) return null
      const isAhead = said === acts[place + 1]
      return {
        // What was done one ahead is done.
        acts: isAhead ? 2 : 1,
        says: (known: Known) => [said.say(known)],
        cure: isAhead ? [next] : [],
        subjects: (known) => subjectsOf(next, known),
        isDoneAnyway: !isAhead,
        wasTurned: kindOf(next) === 'angle' && said === next,
        about: said.thing,
        taken: (entries, defect) => (isAhead ? defect : saidTwice(entries, defect)),
      }
    },
  }
}

/** What was said once more, and taken: the record has more of it than there is. */
function saidTwice(entries: readonly Entry[], defect: Defect): Defect {
  const [entry] = entries
  const correct = (line: string) => act('correct', defect.step, () => line)
  switch (entry?.type) {
    case 'came-off':
      return {
        ...defect,
        subjects: () => entry.pieces.map(({ id }) => id),
        cure: entry.pieces.flatMap(({ id, should }) => [
          correct(`leave off ${should} ${id} because it was said twice`),
          correct(`scrap ${id}`),
        ]),
      }
    case 'put-in':
      return {
        ...defect,
        subjects: () => entry.pieces.map(({ id }) => id),
        cure: entry.pieces.map(({ id }) => correct(`take out ${id}`)),
      }
    case 'drained':
      return {
        ...defect,
        subjects: () => [entry.fluid.id],
        isVoided: true,
        cure: [correct(`override ${entry.fluid.id} because it was said twice`)],
      }
    default:
      // Of look-alikes one more is said to be home than is: the last one of them goes on without a word.
      return { ...defect, cure: [], settles: (each) => each.doing === 'fit' && each.thing === defect.about }
  }
}
