import { parentPort } from 'node:worker_threads'
import { lookAtFile } from './look-at-file.ts'

// A thread of its own: decoding takes a third of a second a picture, and the screens must not wait for it.
parentPort?.on('message', (path: string) => {
  lookAtFile(path).then(
    (look) => parentPort?.postMessage(look),
    (error: unknown) => {
      throw error
    },
  )
})
