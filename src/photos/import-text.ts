import type { State } from '../journal/state.ts'
import { groupedCode } from '../label/code.ts'
import { plainText } from '../label/plain-text.ts'
import { say } from '../words/cures.ts'
import { counted, isAre, joined } from '../words/grammar.ts'
import { ownerName } from '../words/pictures.ts'
import { containerName } from '../words/places.ts'
import type { FolderListed } from './list-folder.ts'
import type { ImportedPicture, LeftOut } from './record-pictures.ts'
import type { Doubt, Owner } from './sort-pictures.ts'

/** What came of an import. */
export interface ImportFacts {
  folder: string
  /** The folder that the copies lie in. */
  copies: string
  listed: FolderListed
  heif: number
  /** Files of other kinds. */
  others: number
  /** Files with the content of an earlier one. */
  twice: { name: string; same: string }[]
  leftOut: LeftOut[]
  pictures: ImportedPicture[]
  /** Copies that were missing and are there again. */
  restored: string[]
}

/** An import in words: what was sorted where, what is still to be said, what was left out and why. */
export function importText(state: State, facts: ImportFacts): string[] {
  const { pictures, twice, leftOut, restored, copies, folder } = facts
  const fresh = pictures.filter(({ standing }) => standing === 'new')
  const asked = fresh.filter(({ owner }) => owner === null)
  const known = pictures.length - fresh.length
  const knownAsked = pictures.filter(({ standing, owner }) => standing === 'known' && owner === null)
  return [
    `${counted(fresh.length, 'new picture')} from ${plainText(folder)}${fresh.length > 0 ? `, copied to ${plainText(copies)}` : ''}.`,
    ...byOwner(
      state,
      pictures.filter(({ standing, owner }) => standing !== 'known' && owner !== null),
    ),
    ...(known > 0 ? [`${counted(known, 'picture')} in the record already.`] : []),
    ...restored.map((file) => `${file} was missing among the copies and is there again.`),
    ...(asked.length > 0
      ? [`Not sorted, since it is not certain what ${asked.length === 1 ? 'it shows' : 'they show'}:`]
      : []),
    ...asked.map((picture) => `  ${askedText(state, picture)}`),
    ...(knownAsked.length > 0 ? ['In the record, and still not sorted:'] : []),
    ...knownAsked.map((picture) => `  ${askedText(state, picture)}`),
    ...sayWords([...asked, ...knownAsked]),
    ...twice.map(({ name, same }) => `${shownName(name)} is the same picture as ${shownName(same)}.`),
    ...leftOut.map((one) => `${shownName(one.name)} left out: ${leftOutText(one)}.`),
    ...passedBy(facts),
  ]
}

/** The name of a file as it may be shown. */
export function shownName(name: string): string {
  return plainText(name) || 'a file without a legible name'
}

/** Why it is not certain what a picture shows, to be said after its name. */
function doubtText(state: State, doubt: Doubt): string {
  switch (doubt.why) {
    case 'no-time':
      return doubt.codes.length === 0
        ? 'has no capture time in it'
        : `has no capture time in it, so the label that it shows opens nothing: ${codes(doubt.codes)}`
    case 'no-zone':
      return `was taken by a clock that does not say its time zone, and the others are of several${doubt.codes.length === 0 ? '' : `, so the label that it shows opens nothing: ${codes(doubt.codes)}`}`
    case 'before-first-label':
      return 'was taken before the first picture of a label'
    case 'several-labels':
      return `shows several labels: ${codes(doubt.codes)}`
    case 'other-job':
      return `shows a label of job ${doubt.job}: ${groupedCode(doubt.code)}`
    case 'not-dealt':
      return `shows the label ${groupedCode(doubt.code)}, and this job has none of that number`
    case 'void':
      return `shows the label ${groupedCode(doubt.code)}, which is void${doubt.voidFor === null ? '' : `: ${containerName(state, doubt.voidFor)} took its place`}`
    case 'unreadable-label':
      return 'shows a symbol that could not be read'
    case 'after-doubtful':
      return `comes after the label in ${shownName(doubt.label)}, and what that opens is in doubt`
    case 'long-after':
      return `was taken more than ${doubt.hours} hours after the label in ${shownName(doubt.label)} (${groupedCode(doubt.code)})`
    case 'same-moment':
      return `was taken in the same second as the label in ${shownName(doubt.label)}`
    default:
      return doubt satisfies never
  }
}

function byOwner(state: State, pictures: readonly ImportedPicture[]): string[] {
  const owners = new Map<string, { owner: Owner; count: number }>()
  for (const { owner } of pictures) {
    if (owner === null) continue
    const key = JSON.stringify(owner)
    owners.set(key, { owner, count: (owners.get(key)?.count ?? 0) + 1 })
  }
  return [...owners.values()].map(({ owner, count }) => `  ${count} ${ownerName(state, owner)}`)
}

function askedText(state: State, { id, name, doubt }: ImportedPicture): string {
  return `${id}  ${shownName(name)}${doubt ? ` ${doubtText(state, doubt)}` : ''}`
}

function sayWords([first]: readonly ImportedPicture[]): string[] {
  return first ? [`Say what each shows: ${say(`photo ${first.id} to bag N`)}, to step N, or to job.`] : []
}

function leftOutText({ why, errno }: LeftOut): string {
  switch (why) {
    case 'cut-short':
      return 'it is cut short; copy it from the phone again'
    case 'damaged':
      return 'its bytes are damaged; copy it from the phone again'
    case 'too-many-pixels':
      return 'it has more pixels than can be decoded; save it smaller'
    case 'too-large':
      return 'it is larger than 100 MB'
    case 'no-picture':
      return 'it is no JPEG or PNG picture, whatever its name says'
    case 'unreadable':
      return `the system does not let it be read (${errno ?? 'no reason given'})`
    case 'undecodable':
      return 'it cannot be decoded; copy it from the phone again'
    case 'changed':
      return 'it changed while it was copied; import the folder again'
    default:
      return why satisfies never
  }
}

function passedBy({ listed, heif, others }: ImportFacts): string[] {
  const { folders, links } = listed
  const outside = [
    ...(folders > 0 ? [counted(folders, 'subfolder')] : []),
    ...(links > 0 ? [counted(links, 'link')] : []),
  ]
  return [
    ...(heif > 0
      ? [
          `${counted(heif, 'file')} in the HEIF format left out: let the phone save JPEG, or convert them first.`,
        ]
      : []),
    ...(others > 0 ? [`${counted(others, 'file')} ${isAre(others)} neither JPEG nor PNG.`] : []),
    ...(outside.length > 0 ? [`Not looked into: ${joined(outside)}.`] : []),
  ]
}

function codes(all: readonly string[]): string {
  return joined(all.map(groupedCode))
}
