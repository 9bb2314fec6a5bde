import type { Entry, EntryOf } from '../../journal/entry.ts'
import type { State } from '../../journal/state.ts'
import type { Conflict, CopyPlan } from '../../session/merge.ts'
import { leftOutWords, say } from '../cures.ts'
import { entryText } from '../entries.ts'
import { counted, isAre } from '../grammar.ts'
import type { LabelCode } from '../leftovers.ts'
import { containerName } from '../places.ts'
import { type Trouble, troubleText } from '../storage-troubles.ts'
import { type Told, told } from '../told.ts'

/** What a merge is told with. */
export interface MergeTelling {
  /** The record here, and that of the copy by itself. */
  here: State
  there: State
  /** The path of the copy as it was typed. */
  path: string
  /** An entry's time as it is shown. */
  when: (at: string) => string
  code: LabelCode
}

/** What is to be seen before a merge: both sides of what does not fit, and the bags that get another number. */
export function toDecideText(telling: MergeTelling, plan: CopyPlan): Told {
  const { fits, conflicts, renumbered, onlyHere, isAhead } = plan
  const take = say(`merge ${telling.path} take`)
  return told(
    `nothing is merged yet: ${newText(fits.length + conflicts.length)}${misfitText(conflicts.length)}${numbersText(renumbered.length)}`,
    isAhead
      ? `put the folder of the copy in the place of this one and go on with that; ${take} would number bags once more`
      : `${take} records ${fits.length === 0 ? 'none of it' : fits.length === 1 ? 'the one that fits' : `the ${fits.length} that fit`}${conflicts.length === 0 ? '' : ' and keeps the rest to be settled'}`,
    [
      isAhead
        ? 'the copy was merged with this record already, and has all that is here'
        : `${counted(onlyHere, 'entry', 'entries')} of this record ${isAre(onlyHere)} not in the copy; nothing of that changes`,
      ...conflicts.flatMap((conflict, index) => conflictLines(telling, conflict, index + 1)),
      ...renumbered.map((pair) => renumberedText(telling, pair)),
    ],
  )
}

function newText(count: number): string {
  return `${counted(count, 'entry', 'entries')} of the copy ${isAre(count)} new here`
}

function misfitText(count: number): string {
  return count === 0 ? ', and all fits' : `, ${count} ${count === 1 ? 'does' : 'do'} not fit`
}

function numbersText(count: number): string {
  if (count === 0) return ''
  return count === 1 ? ', 1 bag has a number that is taken' : `, ${count} bags have numbers that are taken`
}

/** What a merge recorded, line by line. */
export function mergedText(
  telling: MergeTelling,
  entries: readonly Entry[],
  { renumbered }: Pick<CopyPlan, 'renumbered'>,
): string[] {
  const { here } = telling
  const taken = entries.filter(({ type }) => type !== 'merged')
  const merges = entries.filter((entry) => entry.type === 'merged')
  const shown = taken.length > MOST_SHOWN ? taken.slice(0, MOST_SHOWN - 1) : taken
  const more = taken.length - shown.length
  const isClean = renumbered.length === 0 && merges.every(({ leftOut }) => leftOut.length === 0)
  return [
    ...merges.map((entry) => `${entry.n}  ${entryText(here, entry)}`),
    ...shown.map((entry) => `    ${signed(telling, entry)}  ${entryText(here, entry)}`),
    ...(more > 0 ? [`    and ${more} more`] : []),
    ...renumbered.map((pair) => `    ${renumberedText(telling, pair)}`),
    ...leftOutLines(merges.flatMap(({ leftOut }) => leftOut)),
    `    ${say(`log ${entries.length}`)} shows all of it; nothing of the copy was changed`,
    `    ${isClean ? 'merge this record there as well, and both have the same' : 'go on here only: on the other computer, put this folder in the place of the copy'}`,
  ]
}

function leftOutLines(leftOut: EntryOf<'merged'>['leftOut']): string[] {
  const [first] = leftOut
  if (!first) return []
  const shown = leftOut.slice(0, MOST_SHOWN)
  const more = leftOut.length - shown.length
  return [
    ...shown.map(({ id, says }) => `    ${id} left out: ${says}`),
    ...(more > 0 ? [`    and ${more} more: ${say('left')}`] : []),
    `    ${leftOutWords(first.id)}`,
  ]
}

/** What became of the pictures of a copy. */
export function broughtText({
  copied,
  restored,
  missing,
}: {
  copied: number
  restored: number
  missing: readonly string[]
}): string[] {
  return [
    ...(copied > 0 ? [`    ${counted(copied, 'picture')} copied from there`] : []),
    ...(restored > 0
      ? [
          `    ${counted(restored, 'picture')} of this job that ${restored === 1 ? 'was' : 'were'} missing here came from there`,
        ]
      : []),
    ...(missing.length > 0
      ? [
          `    ${counted(missing.length, 'picture')} ${isAre(missing.length)} not there as recorded: ${missing.slice(0, MOST_NAMED).join(', ')}${missing.length > MOST_NAMED ? ' ...' : ''}`,
        ]
      : []),
  ]
}

/** It is no copy of this job. */
export function otherJobText({ here, there, path }: MergeTelling): Told {
  return told(
    `${path} is another job, ${there.job.name}, and no copy of job ${here.job.no}, ${here.job.name}`,
    `${say('jobs')} lists the jobs of this computer; only a copy of one and the same job is merged`,
  )
}

/** All of it is here already. */
export function nothingNewText(path: string): string {
  return `Nothing to merge: all that ${path} has is here already`
}

/** What fits by itself does not read back as one record. Nothing was written. */
export function unlawfulText(path: string, n: number): Told {
  return told(
    `${path} cannot be merged: entry ${n} would tell what cannot be, which is a fault of this program`,
    'keep both copies as they are, and report the fault; nothing was written',
  )
}

/** There is no copy to look at. */
export function noCopyText(code: 'nothing-there' | 'no-journal' | 'itself', path: string): Told {
  switch (code) {
    case 'nothing-there':
      return told(
        `there is nothing at ${path}`,
        'plug the stick in or look how the folder is called, then say its path',
      )
    case 'no-journal':
      return told(
        `the folder ${path} has no journal in it, so it is no job`,
        'name the folder of the job itself, the one that has journal.log in it, or a back-up of it',
      )
    case 'itself':
      return told(`${path} is this job itself`, 'name the other copy')
    default:
      return code satisfies never
  }
}

/** A copy that is not sound is not taken from: what its bad lines said nobody can tell. */
export function badCopyText(trouble: Trouble, path: string): Told {
  const { what, lines, cure } = troubleText(trouble)
  if (trouble.kind === 'not-recorded')
    return told(
      `the last line of the copy ${path} has no end: it may be in the middle of being written`,
      `nothing is merged; say it again when nobody writes there, and if it stays, ${say(`putback doctor ${path}`)}`,
    )
  if (trouble.kind === 'newer') return { what, lines: [...lines, 'Nothing is merged.'], cure }
  return told(what, `nothing is merged; ${say(`putback doctor ${path}`)} says what of the copy can be saved`)
}

const MOST_SHOWN = 10
const MOST_NAMED = 3
const MOST_AGAINST = 3

function conflictLines(telling: MergeTelling, { entry, against, why }: Conflict, no: number): string[] {
  const shown = against.slice(0, MOST_AGAINST)
  const more = against.length - shown.length
  return [
    `${no}. there, ${signed(telling, entry)}: ${entryText(telling.there, entry)}`,
    ...shown.map(
      (each) => `   here, entry ${each.n}, ${signed(telling, each)}: ${entryText(telling.here, each)}`,
    ),
    ...(more > 0 ? [`   here, ${counted(more, 'entry', 'entries')} more about the same`] : []),
    ...(against.length === 0 ? [`   ${WHY[why]}`] : []),
  ]
}

const WHY: Record<Conflict['why'], string> = {
  'same-thing': 'this record tells something else of the same',
  'label-taken': 'its label numbers are on paper here for something else',
  law: 'as things stand here it cannot have happened: a piece would be in two places, or in none',
  follows: 'it goes on from something that does not fit',
}

/** When an entry was written, and by whom. */
function signed({ when }: MergeTelling, { at, by }: Entry): string {
  return by === undefined ? when(at) : `${when(at)}, ${by}`
}

function renumberedText({ there, code }: MergeTelling, pair: { there: number; here: number }): string {
  const kind = there.containers.get(pair.there)?.kind ?? 'label'
  return `${containerName(there, pair.there)} there becomes ${kind} ${pair.here}: write ${pair.here} on it, label ${code(pair.here)}`
}
