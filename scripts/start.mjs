// `npm start`: prepares what is missing, then becomes putback. Same process, so terminal and signals are putback's own.
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { prepareWorkspace } from './prepare-workspace.mjs'
import { root } from './workspace-root.mjs'

try {
  await prepareWorkspace()
} catch (error) {
  console.error(error.message)
  process.exit(1)
}

const program = join(root, 'dist', 'putback.js')
process.argv[1] = program
await import(pathToFileURL(program).href)
