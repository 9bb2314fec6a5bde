import { join } from 'node:path'
import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Command, NewPicture } from '../journal/command.ts'
import { decide } from '../journal/decide/decide.ts'
import type { PictureId } from '../journal/entry.ts'
import type { PictureFacts } from '../journal/state.ts'
import type { Session } from '../session/session.ts'
import type { Entry } from '../session/stored-entry.ts'
import { type PhotoFiles, SourceChanged } from '../storage/photo-files.ts'
import { takenText, timeStamp } from './capture-time.ts'
import { type Failed, failedByError, failedByRefusal } from './failed.ts'
import { shownName } from './import-text.ts'
import type { BrokenWhy, Look } from './look-at-file.ts'
import type { Doubt, Owner, SeenPicture, Sorted } from './sort-pictures.ts'

/** A picture of the folder, as it was looked at. */
export interface SeenFile extends SeenPicture {
  path: string
  look: Extract<Look, { kind: 'picture' }>
}

/** A file that is no picture of the job now, and why. */
export interface LeftOut {
  name: string
  why: BrokenWhy | 'changed'
  errno?: string | undefined
}

/** A picture of the folder that is in the record now. */
export interface ImportedPicture {
  id: PictureId
  /** Its name in the folder, and the name of its copy. */
  name: string
  file: string
  /** `sorted`: it was in the record and not sorted, and now it is. */
  standing: 'new' | 'sorted' | 'known'
  /** As the record has it now. */
  owner: Owner | null
  doubt: Doubt | null
}

type SortedFile = Sorted<SeenFile>
type Copied = { one: SortedFile; file: string }

/** Copies sorted pictures into a job and records them: first the copies on the disk, then the entry that names them. */
export class PictureRecorder {
  readonly entries: Entry[] = []
  readonly leftOut: LeftOut[] = []
  /** The names of copies that were missing and are there again. */
  readonly restored: string[] = []
  readonly #session: Session
  readonly #files: PhotoFiles
  readonly #tell: (progress: string) => void
  readonly #batch: number
  readonly #added = new Set<string>()
  readonly #sortedNow = new Set<PictureId>()
  #sorted: readonly SortedFile[] = []

  constructor(session: Session, files: PhotoFiles, tell: (progress: string) => void, batch: number) {
    this.#session = session
    this.#files = files
    this.#tell = tell
    this.#batch = batch
  }

  /** Records what is new, so many in one entry. Answers the failure that ended it, or null. */
  async record(sorted: readonly SortedFile[]): Promise<Failed | null> {
    this.#sorted = sorted
    try {
      const known = this.#knownBySum()
      const fresh = sorted.filter(({ picture }) => !known.has(picture.look.sha256))
      for (let from = 0; from < fresh.length; from += this.#batch) {
        const failed = await this.#recordBatch(fresh, from)
        if (failed) return failed
      }
      this.#restoreMissing()
      return this.#sortKnown()
    } catch (error) {
      return failedByError(error, this.#files.path, this.entries)
    }
  }

  /** Every picture of the folder that is in the record, in the order in which they were sorted. */
  pictures(): ImportedPicture[] {
    const known = this.#knownBySum()
    return this.#sorted.flatMap(({ picture, doubt }) => {
      const facts = known.get(picture.look.sha256)
      if (!facts) return []
      const { id, file, belongs } = facts
      const isNew = this.#added.has(picture.look.sha256)
      const standing = isNew ? 'new' : this.#sortedNow.has(id) ? 'sorted' : 'known'
      return [
        { id, name: picture.name, file, standing, owner: belongs, doubt: belongs === null ? doubt : null },
      ]
    })
  }

  async #recordBatch(all: readonly SortedFile[], from: number): Promise<Failed | null> {
    // Another program may be recording the same folder: what it has recorded by now is not copied as well.
    this.#session.refresh()
    const known = this.#knownBySum()
    const batch = all.slice(from, from + this.#batch).filter(({ picture }) => !known.has(picture.look.sha256))
    if (batch.length === 0) return null
    // Before anything is copied: a job that takes no pictures gets none.
    const refused = this.#refusalOf(batch[0])
    if (refused) return refused
    const copied: Copied[] = []
    for (const [index, one] of batch.entries()) {
      this.#tell(`copying ${from + index + 1} of ${all.length}: ${shownName(one.picture.name)}`)
      const file = this.#copy(one)
      if (file !== null) copied.push({ one, file })
      await nextTurn()
    }
    this.#files.flush()
    return this.#send(copied)
  }

  #refusalOf(one: SortedFile | undefined): Failed | null {
    if (!one) return null
    const probe = newPicture({ one, file: `${stemOf(one)}.${extensionOf(one)}` })
    const decision = decide(this.#session.state, { do: 'add-pictures', pictures: [probe] })
    if (decision.ok || decision.refusal.code.startsWith('picture-')) return null
    return failedByRefusal(this.#session.state, decision.refusal, this.entries)
  }

  #copy(one: SortedFile): string | null {
    const { path, look } = one.picture
    return this.#unlessChanged(one, () =>
      this.#files.copyIn({
        source: path,
        sha256: look.sha256,
        stem: stemOf(one),
        extension: extensionOf(one),
      }),
    )
  }

  #unlessChanged<T>({ picture }: SortedFile, work: () => T): T | null {
    try {
      return work()
    } catch (error) {
      if (!(error instanceof SourceChanged)) throw error
      const { errno } = error
      const { name } = picture
      this.leftOut.push(errno === null ? { name, why: 'changed' } : { name, why: 'unreadable', errno })
      return null
    }
  }

  #send(copied: Copied[]): Failed | null {
    let rest = copied
    while (rest.length > 0) {
      const outcome = this.#session.send({ do: 'add-pictures', pictures: rest.map(newPicture) })
      if (outcome.kind === 'recorded') {
        this.entries.push(outcome.entry)
        for (const { one } of rest) this.#added.add(one.picture.look.sha256)
        return null
      }
      if (outcome.kind === 'not-recorded') throw outcome.error
      if (outcome.refusal.code !== 'picture-known')
        return failedByRefusal(this.#session.state, outcome.refusal, this.entries)
      // Another program was recording the same pictures. Its entries may name the very copies that are here.
      const known = this.#knownBySum()
      const left = rest.filter(({ one }) => !known.has(one.picture.look.sha256))
      if (left.length === rest.length)
        return failedByRefusal(this.#session.state, outcome.refusal, this.entries)
      const named = new Set([...known.values()].map(({ file }) => file))
      for (const { one, file } of rest)
        if (known.has(one.picture.look.sha256) && !named.has(file)) this.#files.remove(file)
      rest = left
    }
    return null
  }

  #restoreMissing(): void {
    const known = this.#knownBySum()
    for (const one of this.#sorted) {
      const { path, look } = one.picture
      const file = known.get(look.sha256)?.file
      if (file === undefined || this.#files.has(file)) continue
      if (this.#unlessChanged(one, () => this.#files.restore(file, path, look.sha256)))
        this.restored.push(file)
    }
    if (this.restored.length > 0) this.#files.flush()
  }

  /**
   * A picture of the job as a whole enters not sorted and is sorted after; so is one that an earlier import left open
   * and whose label is there now. What a person has sorted stays.
   */
  #sortKnown(): Failed | null {
    const known = this.#knownBySum()
    for (const { picture, owner } of this.#sorted) {
      const facts = known.get(picture.look.sha256)
      if (!facts || facts.belongs !== null || owner === null) continue
      const command: Command = { do: 'sort-picture', picture: facts.id, belongs: owner }
      const outcome = this.#session.send(command)
      if (outcome.kind === 'not-recorded') throw outcome.error
      if (outcome.kind === 'refused')
        return failedByRefusal(this.#session.state, outcome.refusal, this.entries)
      this.entries.push(outcome.entry)
      this.#sortedNow.add(facts.id)
    }
    return null
  }

  #knownBySum(): Map<string, PictureFacts> {
    return new Map([...this.#session.state.pictures.values()].map((facts) => [facts.sha256, facts]))
  }
}

function newPicture({ one: { picture, owner }, file }: Copied): NewPicture {
  return {
    file,
    sha256: picture.look.sha256,
    taken: picture.taken ? takenText(picture.taken) : null,
    belongs: owner === 'none' ? null : owner,
  }
}

/** `20261125-101112-001000368`; without a capture time the time of the file, marked as that. */
function stemOf({ picture, code }: SortedFile): string {
  const stamp = picture.taken ? timeStamp(picture.taken.local) : `${timeStamp(picture.look.written)}-filetime`
  return code === null ? stamp : `${stamp}-${code}`
}

function extensionOf({ picture }: SortedFile): string {
  return picture.look.format === 'jpeg' ? 'jpg' : 'png'
}

/** Files of the folder as they were looked at, apart: pictures by their content, and what is none. */
export function apart(
  folder: string,
  looks: readonly { name: string; look: Look }[],
): { seen: SeenFile[]; twice: { name: string; same: string }[]; leftOut: LeftOut[] } {
  const seen: SeenFile[] = []
  const twice: { name: string; same: string }[] = []
  const leftOut: LeftOut[] = []
  const firstOf = new Map<string, string>()
  for (const { name, look } of looks) {
    if (look.kind === 'broken') leftOut.push({ name, why: look.why, errno: look.errno })
    if (look.kind !== 'picture') continue
    const same = firstOf.get(look.sha256)
    if (same !== undefined) {
      twice.push({ name, same })
      continue
    }
    firstOf.set(look.sha256, name)
    const { taken, codes, unreadable } = look
    seen.push({ name, path: join(folder, name), taken, codes, unreadable, look })
  }
  return { seen, twice, leftOut }
}
