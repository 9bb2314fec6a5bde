import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import { type Look, lookAtFile } from './look-at-file.ts'

/** Those who look at files, as many at once as there are. */
export interface Lookers {
  readonly count: number
  look(path: string): Promise<Look>
  close(): Promise<void>
}

/**
 * Threads of the built program, one fewer than the machine has cores, so that the screens keep theirs. The sources,
 * which no plain thread can load, look in the thread that calls.
 */
export function openLookers(script: URL = BUILT): Lookers {
  if (!existsSync(fileURLToPath(script))) return { count: 1, look: lookAtFile, close: async () => {} }
  return new Threads(script, Math.max(1, Math.min(MOST_THREADS, availableParallelism() - 1)))
}

/** Beside the chunk that this file becomes a part of. */
const BUILT = new URL('./decode-worker.js', import.meta.url)
/** Each holds a whole picture as pixels. */
const MOST_THREADS = 4
/** No picture that can be decoded at all takes so long, on the slowest machine. */
const LIMIT_MS = 300_000

class Threads implements Lookers {
  readonly count: number
  readonly #script: URL
  readonly #idle: Worker[] = []
  readonly #all = new Set<Worker>()
  readonly #waiting: (() => void)[] = []
  #started = 0

  constructor(script: URL, count: number) {
    this.#script = script
    this.count = count
  }

  async look(path: string): Promise<Look> {
    const worker = await this.#take()
    const look = await answerOf(worker, path)
    if (look) this.#idle.push(worker)
    else this.#drop(worker)
    this.#waiting.shift()?.()
    return look ?? { kind: 'broken', why: 'undecodable' }
  }

  async close(): Promise<void> {
    await Promise.all([...this.#all].map((worker) => worker.terminate()))
    this.#all.clear()
  }

  async #take(): Promise<Worker> {
    for (;;) {
      const worker = this.#idle.pop()
      if (worker) return worker
      if (this.#started < this.count) return this.#start()
      await new Promise<void>((resolve) => this.#waiting.push(resolve))
    }
  }

  #start(): Worker {
    this.#started += 1
    const worker = new Worker(this.#script)
    // An error that comes when nobody waits for it must not end the program.
    worker.on('error', () => {})
    this.#all.add(worker)
    return worker
  }

  /** A thread that died on a picture is replaced by the next that is needed. */
  #drop(worker: Worker): void {
    this.#started -= 1
    this.#all.delete(worker)
    worker.terminate().catch(() => {})
  }
}

/** What the thread answers; null when it ends, or does not answer at all. */
function answerOf(worker: Worker, path: string): Promise<Look | null> {
  return new Promise((resolve) => {
    const settle = (look: Look | null) => {
      clearTimeout(timer)
      worker.off('message', settle).off('error', lost).off('exit', lost)
      resolve(look)
    }
    const lost = () => settle(null)
    const timer = setTimeout(lost, LIMIT_MS)
    worker.on('message', settle).on('error', lost).on('exit', lost)
    worker.postMessage(path)
  })
}
