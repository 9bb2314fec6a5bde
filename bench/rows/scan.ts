import { codeOf, scan } from '../../src/session/scan.ts'
import { madeUpEntries, openSession, writtenJob } from '../jobs.ts'
import { figure, median, type Printer, ratio, timeEach } from '../measure.ts'

/** The answer to a scan, in a job of 10,000 pieces and in one of 100. */
export async function run({ print }: Printer): Promise<void> {
  const large = scanIn(10_000 / 4)
  const small = scanIn(100 / 4)
  print(`100 pieces      ${figure(small * 1000, 'µs')}`)
  print(`10,000 pieces   ${figure(large * 1000, 'µs')}, ${ratio(large, small)}`)
}

function scanIn(lots: number): number {
  const job = writtenJob(madeUpEntries(Math.ceil((lots * 20) / 19) + 1))
  const session = openSession(job.path)
  const codes = [...session.state.containers.keys()].map((no) => codeOf(session.state, no))
  scan(session, codes[0] ?? '')
  const taken = timeEach(1000, (index) => {
    const answer = scan(session, codes[index % codes.length] ?? '')
    if (answer.kind !== 'container') throw new Error(answer.kind)
  })
  job.remove()
  return median(taken)
}
