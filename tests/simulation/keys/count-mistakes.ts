import type { Said } from '../measure/costs.ts'
import { ALL_MISTAKES } from '../mistakes/all-mistakes.ts'
import { runJob } from '../run-job.ts'
import { machineOf } from './count-keys.ts'
import { allKeys } from './kinds.ts'
import { type Done, Typist } from './typist.ts'

/** What mistakes cost in one job at the screens, in plain JSON. */
export interface MistakeKeys {
  shape: string
  seed: number
  mistakes: number
  /** Lines of the job that came to something else at the screens than on the command line. */
  otherwise: string[]
  /** Of each refusal: its code, and the keys of what was refused and of what put it right. */
  refusals: { code: string; refused: number; cure: number }[]
}

/** A job with mistakes, said again at the screens; work that breaks off is left away, for opening the program notes it. */
export function countMistakes(seed: number, mistakes: number, machine = machineOf(seed)): MistakeKeys {
  const classes = ALL_MISTAKES.filter(({ going }) => going !== 'broken off')
  const { said } = runJob(machine, seed, classes, mistakes)
  const typist = new Typist(machine)
  const done = said.map((each) => sayAgain(typist, each))
  return {
    shape: machine.shape,
    seed,
    mistakes,
    otherwise: said.flatMap((each, at) => (isTheSame(each, done[at]) ? [] : [toldOf(each)])),
    refusals: refusalsOf(said, done),
  }
}

function sayAgain(typist: Typist, { line, result }: Said): Done {
  const [entry] = result.entries ?? []
  typist.handOver(entry?.by ?? (line.startsWith('seen ') ? 'Boris' : 'Anna'))
  if (entry) typist.wait(Date.parse(entry.at))
  return typist.do(line)
}

/** What was recorded by lines was recorded at the screens, and what was refused was not. A question records nothing. */
function isTheSame({ result }: Said, done: Done | undefined): boolean {
  return done?.isTaken === (result.ok && (result.entries?.length ?? 0) > 0)
}

function toldOf({ line, result }: Said): string {
  return `${line}: ${result.ok ? 'taken' : result.code} by lines`
}

/** From what was refused to where the same is said again, and taken. */
function refusalsOf(said: readonly Said[], done: readonly Done[]): MistakeKeys['refusals'] {
  const refusals: MistakeKeys['refusals'] = []
  const keysOf = (from: number, to: number) =>
    done.slice(from, to).reduce((sum, { keys }) => sum + allKeys(keys), 0)
  for (let at = 0; at < said.length; at += 1) {
    const { line, result } = said[at] as Said
    if (result.ok) continue
    const again = said.findIndex((each, later) => later > at && each.line === line && each.result.ok)
    // What is wrong from the ground up is never said again: nothing has to be put right.
    const end = again < 0 || again - at > MOST_LINES ? at + 1 : again
    refusals.push({ code: result.code, refused: keysOf(at, at + 1), cure: keysOf(at + 1, end) })
    at = end - 1
  }
  return refusals
}

/** Further on, the same words are said of something else. */
const MOST_LINES = 200
