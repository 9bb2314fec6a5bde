import type { Result } from '../../../src/cli/result.ts'
import type { Chance } from '../../support/damage/chance.ts'
import type { Act } from '../job/act.ts'
import type { Defect } from '../mistakes/mistake.ts'
import type { Planned } from '../mistakes/plan-mistakes.ts'
import type { Mechanic } from './mechanic.ts'

/** Makes a mistake in place of some acts. Answers false where the job cannot go on, which is a false block. */
export function makeMistake(
  mechanic: Mechanic,
  planned: Planned,
  acts: readonly Act[],
  chance: Chance,
): boolean {
  const { going } = planned.mistake
  switch (going) {
    case 'left out':
      return leaveOut(mechanic, planned, acts, chance)
    case 'ticked':
      if (!acts.every((act) => mechanic.perform(act))) return false
      mechanic.make(defectOf(planned, acts))
      return true
    case 'wrong':
      return doWrong(mechanic, planned, acts, chance)
    case 'never written':
      mechanic.make({
        ...defectOf(planned, acts),
        keepsOut: (thing) => acts.some((act) => act.thing === thing),
      })
      mechanic.keepSilent(planned.made.silences ?? (() => false))
      return true
    case 'broken off':
      return breakOff(mechanic, planned, acts, chance)
    default:
      return going satisfies never
  }
}

function defectOf({ mistake, made }: Planned, acts: readonly Act[]): Defect {
  const { name, going } = mistake
  const { subjects, cure, lies, shows, about, askedBy } = made
  return { mistake: name, going, step: acts[0]?.step ?? 0, subjects, cure, lies, shows, about, askedBy }
}

/** Less is done than should be; what is said of that is true. */
function leaveOut(mechanic: Mechanic, planned: Planned, acts: readonly Act[], chance: Chance): boolean {
  const [first] = acts
  for (const line of planned.made.says(mechanic.known, chance)) {
    if (first && !mechanic.perform({ ...first, say: () => line })) return false
  }
  mechanic.make(defectOf(planned, acts))
  return true
}

/** A wrong thing is said, and done where nothing stops it. */
function doWrong(mechanic: Mechanic, planned: Planned, acts: readonly Act[], chance: Chance): boolean {
  const { made } = planned
  const { stops = refusal, isDoneAnyway = false } = made
  const defect = defectOf(planned, acts)
  const [first] = acts
  for (const line of made.says(mechanic.known, chance)) {
    const code = first
      ? stops(mechanic.sayWrong(line, made.about ? { ...first, thing: made.about } : first))
      : null
    if (code === null) continue
    mechanic.make(defect)
    mechanic.find(defect, 'at once', code)
    return acts.every((act) => mechanic.perform(act))
  }
  // It was taken: whoever said it believes that it is done.
  mechanic.make(defect)
  return !isDoneAnyway || acts.every((act) => mechanic.perform(act))
}

/** Work stops; who takes it up two months later makes a slip, and then does what the program names. */
function breakOff(mechanic: Mechanic, planned: Planned, acts: readonly Act[], chance: Chance): boolean {
  const { made } = planned
  const [first] = acts
  if (!first) return true
  mechanic.breakOff(chance.whole(0, 1) === 1 ? 'the phone rang' : null)
  const defect = defectOf(planned, acts)
  const [line = ''] = made.says(mechanic.known, chance)
  const result = mechanic.sayWrong(line, { ...first, thing: undefined })
  mechanic.make(result.ok ? (made.taken?.(result.entries ?? [], defect) ?? defect) : defect)
  if (!result.ok) mechanic.find(defect, 'at once', result.code)
  else if (made.isDoneAnyway !== true) return true
  const isDone = mechanic.takeUp(first, made.wasTurned === true)
  return (isDone ? acts.slice(1) : acts).every((act) => mechanic.perform(act))
}

function refusal(result: Result): string | null {
  return result.ok ? null : result.code
}
