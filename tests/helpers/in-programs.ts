import { availableParallelism } from 'node:os'
import { buildBesidePackages, type Running, startProgram } from './child-program.ts'

type Argument = string | number

/**
 * Runs a TypeScript program once for each list of arguments, one a core at a time, and answers what each said in one line of
 * JSON, in the order of the lists, whichever ended first. Rejects when one ends without a word. For whoever is at home in the
 * root of the sources.
 */
export async function inPrograms<Report>(
  source: string,
  lists: readonly (readonly Argument[])[],
): Promise<Report[]> {
  const program = await buildBesidePackages(source)
  const atWork = new Set<Running>()
  try {
    const reports: Report[] = []
    const waiting = [...lists.entries()]
    const lane = async () => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        const [place, list] = next
        const running = startProgram(program, ...list)
        atWork.add(running)
        const [report = ''] = await running.said(1)
        await running.ended
        atWork.delete(running)
        reports[place] = JSON.parse(report)
      }
    }
    await Promise.all(Array.from({ length: availableParallelism() }, lane))
    return reports
  } finally {
    // Where one failed, the others are not waited for.
    for (const running of atWork) running.kill()
    program.remove()
  }
}
