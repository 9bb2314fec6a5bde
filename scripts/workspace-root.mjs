import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folder that holds package.json. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)))
