import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { JOURNAL_NAME } from '../../src/storage/journal/journal-file.ts'
import { madeUpEntries, openSession, writtenJob } from '../jobs.ts'
import { alternate, figure, type Printer, ratio, timeEach } from '../measure.ts'

/** Opening and folding 100,000 entries, checksums and schemas and all, against JSON.parse of the same bytes. */
export async function run({ print }: Printer): Promise<void> {
  const job = writtenJob(madeUpEntries(100_000))
  const text = readFileSync(join(job.path, JOURNAL_NAME), 'utf8')
  const [ours = 0, parse = 0] = await alternate(5, [
    () => timeEach(1, () => openSession(job.path))[0] ?? 0,
    () => timeEach(1, () => parseEach(text))[0] ?? 0,
  ])
  print(`open and fold   ${figure(ours)}`)
  print(`JSON.parse      ${figure(parse)}; opening is ${ratio(ours, parse)}`)
  job.remove()
}

function parseEach(text: string): void {
  for (const line of text.split('\n')) if (line !== '') JSON.parse(line.slice(9))
}
