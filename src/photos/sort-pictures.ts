import type { Belongs } from '../journal/entry.ts'
import { MACHINE_NUMBER, readCode, stepOf } from '../label/code.ts'
import { secondsOf, type Taken } from './capture-time.ts'
import { byName } from './list-folder.ts'

/** What is known of a picture before it is sorted. */
export interface SeenPicture {
  name: string
  taken: Taken | null
  /** The label codes that it shows, each once. */
  codes: readonly string[]
  /** It shows no label that could be read, but a symbol that could not. */
  unreadable: boolean
}

/** The labels of a job. */
export interface KnownLabels {
  job: number
  /** Containers, and unused labels, by their numbers; for one that is void, what took its place. */
  containers: ReadonlyMap<number, 'valid' | { voidFor: number | null }>
  steps: ReadonlySet<number>
}

/** What a picture belongs to: a container, a step, or (`none`) the job as a whole. */
export type Owner = Belongs | 'none'

/** A picture with what it belongs to; where that is not certain, `owner` is null and `doubt` says why. */
export type Sorted<P> =
  | { picture: P; owner: Owner; code: string; doubt: null }
  | { picture: P; owner: null; code: null; doubt: Doubt }

/** Why it is not certain what a picture belongs to. */
export type Doubt =
  | { why: 'no-time'; codes: readonly string[] }
  /** Its clock does not say its time zone, and the others are of several. */
  | { why: 'no-zone'; codes: readonly string[] }
  | { why: 'before-first-label' }
  | { why: 'several-labels'; codes: readonly string[] }
  | { why: 'other-job'; job: number; code: string }
  | { why: 'not-dealt'; code: string }
  | { why: 'void'; code: string; voidFor: number | null }
  | { why: 'unreadable-label' }
  /** The label before it is in a picture that is itself in doubt. */
  | { why: 'after-doubtful'; label: string }
  | { why: 'long-after'; label: string; code: string; hours: number }
  /** Taken in the same second as a picture of a label, and no clock says which came first. */
  | { why: 'same-moment'; label: string }

/** After so many hours a label is no longer taken to be what the next picture shows. */
const HOURS = 12

/**
 * Sorts pictures by the labels between them. In the order of their capture time, one that shows a label of the job
 * opens what it labels, and those after it belong there up to the next label. Times are compared as moments where the
 * pictures have several offsets, and those without one are in doubt then; else by the clock of the camera. Answers
 * every picture once: those whose time is known in their order, then the others by name.
 */
export function sortPictures<P extends SeenPicture>(
  pictures: readonly P[],
  labels: KnownLabels,
  hours = HOURS,
): Sorted<P>[] {
  const byOffset = offsetsOf(pictures).size > 1
  const isTimed = ({ taken }: P) => taken !== null && !(byOffset && taken.offset === null)
  const timed = inOrder(pictures.filter(isTimed), byOffset)
  const shown = timed.map(({ picture }) => (showsLabel(picture) ? labelPicture(picture, labels) : null))
  const openAt: Open[] = []
  let open: Open = null
  const sorted = timed.map((one, index): Sorted<P> => {
    openAt[index] = open
    const label = shown[index]
    if (!label) return afterLabel(one, open, hours)
    // Of several labels in one moment nobody knows which was the last.
    const isAlone = labelsInMoment(timed, index).every((at) => shown[at]?.code === label.code)
    open = { at: one, owner: isAlone ? label.owner : null, code: isAlone ? label.code : null }
    return label
  })
  const untimed = pictures.filter((one) => !isTimed(one)).sort((a, b) => byName(a.name, b.name))
  return [
    ...sorted.map(withSameMoment),
    ...untimed.map((picture) =>
      doubtful(picture, { why: picture.taken === null ? 'no-time' : 'no-zone', codes: picture.codes }),
    ),
  ]

  /** Whichever way round the pictures of one moment are, the answer must be the same: else it is only a guess. */
  function withSameMoment(one: Sorted<P>, index: number): Sorted<P> {
    if (one.doubt !== null || showsLabel(one.picture)) return one
    const [first, ...others] = labelsInMoment(timed, index)
    if (first === undefined) return one
    // Before them all it would follow the label that was open, or be too long after it.
    const atFirst = afterLabel(timed[index] as Timed<P>, openAt[first] ?? null, hours).code
    const ways = [atFirst, ...[first, ...others].map((at) => sorted[at]?.code ?? null)]
    if (ways.every((code) => code === one.code)) return one
    return doubtful(one.picture, { why: 'same-moment', label: timed[first]?.picture.name ?? '' })
  }
}

/** The picture of a label that was met last, and what it opened: null where that is in doubt. */
type Open = { at: Timed<SeenPicture>; owner: Owner | null; code: string | null } | null

interface Timed<P> {
  picture: P
  seconds: number
  fraction: string
}

/** The offsets from UTC that occur, as when the clocks change in the middle of a job. */
function offsetsOf(pictures: readonly SeenPicture[]): Set<string> {
  return new Set(pictures.flatMap(({ taken }) => taken?.offset ?? []))
}

function inOrder<P extends SeenPicture>(pictures: readonly P[], byOffset: boolean): Timed<P>[] {
  const timed = pictures.flatMap((picture) => (picture.taken ? [{ picture, taken: picture.taken }] : []))
  return timed
    .map(({ picture, taken }) => ({
      picture,
      seconds: secondsOf(taken, byOffset),
      fraction: taken.fraction.padEnd(9, '0'),
    }))
    .sort(
      (a, b) =>
        a.seconds - b.seconds ||
        Number(a.fraction) - Number(b.fraction) ||
        byName(a.picture.name, b.picture.name),
    )
}

function isSameMoment(one: Timed<SeenPicture>, two: Timed<SeenPicture>): boolean {
  const isKnown = one.picture.taken?.fraction !== '' && two.picture.taken?.fraction !== ''
  return one.seconds === two.seconds && !(isKnown && one.fraction !== two.fraction)
}

/** Where in the order the labels are that were taken in one moment with a picture. */
function labelsInMoment<P extends SeenPicture>(timed: readonly Timed<P>[], index: number): number[] {
  const one = timed[index] as Timed<P>
  let from = index
  while (timed[from - 1]?.seconds === one.seconds) from -= 1
  const found: number[] = []
  for (let at = from; timed[at]?.seconds === one.seconds; at += 1) {
    const other = timed[at] as Timed<P>
    if (showsLabel(other.picture) && isSameMoment(other, one)) found.push(at)
  }
  return found
}

/** A symbol that could not be read may well be the next label. */
function showsLabel({ codes, unreadable }: SeenPicture): boolean {
  return codes.length > 0 || unreadable
}

function labelPicture<P extends SeenPicture>(picture: P, labels: KnownLabels): Sorted<P> {
  const [code, ...others] = picture.codes
  if (code === undefined) return doubtful(picture, { why: 'unreadable-label' })
  if (others.length > 0) return doubtful(picture, { why: 'several-labels', codes: picture.codes })
  const meaning = meaningOf(code, labels)
  return 'owner' in meaning
    ? { picture, owner: meaning.owner, code, doubt: null }
    : doubtful(picture, meaning)
}

function meaningOf(code: string, { job, containers, steps }: KnownLabels): { owner: Owner } | Doubt {
  const reading = readCode(code)
  if (reading.kind !== 'code') return { why: 'not-dealt', code }
  if (reading.job !== job) return { why: 'other-job', job: reading.job, code }
  const number = reading.container
  if (number === MACHINE_NUMBER) return { owner: 'none' }
  const step = stepOf(number)
  if (step !== null) return steps.has(step) ? { owner: { step } } : { why: 'not-dealt', code }
  const standing = containers.get(number)
  if (standing === undefined) return { why: 'not-dealt', code }
  return standing === 'valid'
    ? { owner: { container: number } }
    : { why: 'void', code, voidFor: standing.voidFor }
}

function afterLabel<P extends SeenPicture>(
  { picture, seconds }: Timed<P>,
  open: Open,
  hours: number,
): Sorted<P> {
  if (open === null) return doubtful(picture, { why: 'before-first-label' })
  const { at, owner, code } = open
  const label = at.picture.name
  if (owner === null || code === null) return doubtful(picture, { why: 'after-doubtful', label })
  const since = (seconds - at.seconds) / 3600
  if (since > hours) return doubtful(picture, { why: 'long-after', label, code, hours: Math.floor(since) })
  return { picture, owner, code, doubt: null }
}

function doubtful<P>(picture: P, doubt: Doubt): Sorted<P> {
  return { picture, owner: null, code: null, doubt }
}
