import { once } from 'node:events'
import { availableParallelism } from 'node:os'
import { isMainThread, parentPort, Worker } from 'node:worker_threads'
import { damages } from '../tests/support/damage/damages.ts'
import type { Print } from '../tests/support/damage/printed-label.ts'
import { survey, type Tally, together } from '../tests/support/damage/survey.ts'

export type DamageName = keyof typeof damages

export interface DamagePool {
  /** For each print a tally for each damage. */
  table(prints: Print[], names: DamageName[], options: { labels: number; jsqr: boolean }): Promise<Tally[][]>
  close(): Promise<void>
}

/** Threads of the bundle that this stands in, one a core, each with its own decoder. */
export function openDamagePool(): DamagePool {
  const workers = Array.from({ length: availableParallelism() }, () => new Worker(new URL(import.meta.url)))
  return {
    async table(prints, names, { labels, jsqr }) {
      const tasks = names.flatMap((name) => tasksOf({ prints, name, jsqr }, labels))
      const waiting = [...tasks]
      const done = new Map<Task, Tally[]>()
      const work = async (worker: Worker) => {
        for (let task = waiting.shift(); task; task = waiting.shift()) done.set(task, await ask(worker, task))
      }
      await Promise.all(workers.map(work))
      return prints.map((_, way) =>
        names.map((name) =>
          together(tasks.filter((task) => task.name === name).flatMap((task) => done.get(task)?.[way] ?? [])),
        ),
      )
    },
    async close() {
      await Promise.all(workers.map((worker) => worker.terminate()))
    },
  }
}

interface Task {
  prints: Print[]
  name: DamageName
  jsqr: boolean
  from: number
  labels: number
}

const fewLabels = 10

function tasksOf(task: Omit<Task, 'from' | 'labels'>, labels: number): Task[] {
  return Array.from({ length: Math.ceil(labels / fewLabels) }, (_, at) => {
    const from = at * fewLabels
    return { ...task, from, labels: Math.min(fewLabels, labels - from) }
  })
}

async function ask(worker: Worker, task: Task): Promise<Tally[]> {
  worker.postMessage(task)
  const [tallies] = await once(worker, 'message')
  return tallies
}

if (!isMainThread) {
  parentPort?.on('message', async ({ prints, name, ...options }: Task) => {
    parentPort?.postMessage(await survey(prints, damages[name], options))
  })
}
