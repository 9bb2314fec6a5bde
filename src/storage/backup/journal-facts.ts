import { type Entry, parseEntry } from '../../journal/entry.ts'
import { fold, UnlawfulEntry } from '../../journal/fold.ts'
import { readLines } from '../line.ts'
import type { HurtLine, JobInArchive } from './manifest.ts'

/** What a journal tells of its job, and the first line that is not right: read as it is always read, the laws included. */
export function factsOfJournal(bytes: Uint8Array): { job: JobInArchive; pictures: Map<string, string> } {
  const { entries, problem } = readLines(bytes, parseEntry)
  const { name, unlawful } = folded(entries)
  const [first] = entries
  const opened = first?.type === 'opened' ? first.job : null
  const hurt: HurtLine | null =
    unlawful ?? (problem && { line: problem.line, why: 'why' in problem ? problem.why : problem.kind })
  return {
    job: {
      no: opened?.no ?? null,
      name: name ?? opened?.name ?? null,
      id: first?.id ?? null,
      entries: entries.length,
      hurt,
    },
    pictures: new Map(entries.flatMap(picturesIn)),
  }
}

function folded(entries: readonly Entry[]): { name: string | null; unlawful: HurtLine | null } {
  try {
    return { name: entries.length === 0 ? null : fold(entries).job.name, unlawful: null }
  } catch (error) {
    if (!(error instanceof UnlawfulEntry)) throw error
    return { name: null, unlawful: { line: error.n, why: 'law' } }
  }
}

/** The names of pictures with the sums that the record has of them; of entries taken back as well, for undo is an entry. */
function picturesIn(entry: Entry): [string, string][] {
  return entry.type === 'pictures-added' ? entry.pictures.map(({ file, sha256 }) => [file, sha256]) : []
}
