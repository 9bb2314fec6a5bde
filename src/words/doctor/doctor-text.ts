import type { Entry } from '../../journal/entry.ts'
import type { Concern, Examination, Mending } from '../../session/health.ts'
import { counted } from '../grammar.ts'
import { copiesText } from '../merging/copies-text.ts'
import { type Told, told } from '../told.ts'
import { behindText } from './behind-text.ts'
import { concernsText } from './concerns-text.ts'
import { findingText } from './findings-text.ts'

/** What a sentence of the doctor needs to know of where it is read. */
export interface DoctorTelling {
  /** The file that is examined. */
  path: string
  /** Words of the doctor to type, in quotes, as they are typed here: `mend` gives `"putback doctor 17 mend"`. */
  ask(words: string): string
  /** An entry's time in the time of this machine. */
  when(at: string): string
}

/** What was found around a journal: in its folder, and among the jobs beside it. */
export interface Around {
  concerns: readonly Concern[]
  /** The folders of other copies of the same job. */
  copies: readonly string[]
}

/** All that was found, line by line. */
export function foundText(found: Examination<Entry>, around: Around, { when }: DoctorTelling): string[] {
  const findings = found.findings.map(findingText)
  // What a newer program wrote is there, and whoever said it again would have done it twice.
  const unheard = found.verdict === 'newer' ? [] : found.behind
  const behind = unheard.map((each) => `  ${behindText(each, when)}`)
  return [
    ...some(findings, MOST_FINDINGS),
    ...(behind.length > 0 ? [behindHead(found), ...some(behind, MOST_BEHIND)] : []),
    ...concernsText(around.concerns),
    ...copiesText(around.copies),
  ]
}

/** A journal with nothing wrong in it. */
export function soundText({ entries }: Examination<Entry>): string {
  return `the record is whole: ${counted(entries.length, 'entry', 'entries')}, each in its place and as it was written`
}

/** A journal without a byte in it: nothing tells whether it ever had any. */
export function emptyText({ path, ask }: DoctorTelling): Told {
  return told(
    `${path} holds nothing: the job was made and never opened, or something emptied the file`,
    `${ask('from PATH')} takes what it held from a copy of the job or a back-up; else make the job again`,
  )
}

/** A journal with something wrong in it: how much stands, and what can be done. */
export function hurtText(
  { verdict, entries, findings }: Examination<Entry>,
  { path, ask }: DoctorTelling,
): Told {
  const isOnlyShort = findings.every(({ kind }) => kind === 'brought')
  const places = counted(findings.length, 'place')
  const damage = isOnlyShort ? `${path} lacks what another file has` : `${path} is damaged in ${places}`
  const stands = `${counted(entries.length, 'entry', 'entries')} from the first on`
  if (verdict === 'newer')
    return told(
      'a newer putback went on with this job, and only that one can tell what is right in it',
      'open it with the newest putback, and leave the file as it is',
    )
  if (verdict === 'certain')
    return told(
      `${damage}, and all of it can be put right with nothing lost`,
      `${ask('mend')} does that, and keeps a copy of the file as it is`,
    )
  const from = `${ask('from PATH')} takes what is missing from a copy of the job or a back-up`
  return entries.length === 0
    ? told(`${damage}, and not even its first entry stands`, `${from}; else leave the file as it is`)
    : told(
        `${damage}; ${stands} can be kept`,
        `${from}; ${ask('cut')} keeps what stands, the rest in a file of its own, so that it can be said again`,
      )
}

/** What was done about it. */
export function mendedText(
  { found, copy, rest }: Extract<Mending<Entry>, { done: true }>,
  { path }: DoctorTelling,
): string[] {
  const stands = counted(found.entries.length, 'entry', 'entries')
  return [
    rest === null && found.verdict === 'certain'
      ? `${path} is put right: ${stands}, nothing lost`
      : `${path} is cut: ${stands} stand, and what came after them is not recorded any more`,
    `as it was: ${copy}`,
    ...(rest === null ? [] : [`what was cut off: ${rest}`]),
    ...(rest !== null && found.behind.some(opensOne) ? [IN_ORDER] : []),
  ]
}

/** Whether an entry that is cut off gave a container its number. */
function opensOne({ entry }: Examination<Entry>['behind'][number]): boolean {
  return (
    entry?.type === 'container-opened' || (entry !== null && 'opened' in entry && entry.opened !== undefined)
  )
}

const IN_ORDER =
  'bags that were opened in it have their numbers on them: say it again in the same order, and each gets its own number again'

/** Why nothing was done, where something was asked for. */
export function notMendedText(
  why: Extract<Mending<Entry>, { done: false }>['why'],
  how: 'mend' | 'cut' | 'from',
  found: Examination<Entry>,
  telling: DoctorTelling,
): Told {
  const { what, cure } = hurtText(found, telling)
  if (why === 'not-certain' && how === 'from')
    return told('the copy does not have what is missing, so nothing was changed', cure, [what])
  if (why === 'not-certain')
    return told('it is not certain what is right, so nothing was changed', cure, [what])
  if (why === 'nothing-stands')
    return told('nothing would be left of the job, so nothing was changed', cure, [what])
  return told(what, cure)
}

const MOST_FINDINGS = 40
const MOST_BEHIND = 500

function behindHead({ behind }: Examination<Entry>): string {
  const unproved = behind.filter(({ isProved }) => !isProved).length
  const doubt = unproved === 0 ? '' : ', those with ? not proved'
  return `behind the damage, to be said again (${counted(behind.length, 'entry', 'entries')}${doubt}):`
}

function some(lines: readonly string[], most: number): string[] {
  const more = lines.length - most
  return more > 0 ? [...lines.slice(0, most), `and ${more} more, all of them with "--json"`] : [...lines]
}
