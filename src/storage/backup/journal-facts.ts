import { parseEntry } from '../../journal/entry.ts'
import { lawfulPart } from '../../journal/lawful-part.ts'
import { picturesIn } from '../../journal/recorded-pictures.ts'
import { readLines } from '../journal/line.ts'
import type { HurtLine, JobInArchive } from './manifest.ts'

/**
 * What a journal tells of its job, and the first line that is not right: read as it is always read, the laws included. Its
 * pictures are told by their names, each with the sum that the record has of it.
 */
export function factsOfJournal(bytes: Uint8Array): { job: JobInArchive; pictures: Map<string, string> } {
  const { entries, problem } = readLines(bytes, parseEntry)
  const { state, unlawful } = lawfulPart(entries)
  const [first] = entries
  const opened = first?.type === 'opened' ? first.job : null
  const hurt: HurtLine | null = unlawful
    ? { line: unlawful.n, why: 'law' }
    : problem && { line: problem.line, why: 'why' in problem ? problem.why : problem.kind }
  return {
    job: {
      no: opened?.no ?? null,
      name: opened && (state.job.name || opened.name),
      id: first?.id ?? null,
      entries: entries.length,
      hurt,
    },
    pictures: new Map(picturesIn(entries).map(({ file, sha256 }) => [file, sha256])),
  }
}
