// Tells whether dist/ was built from the sources as they are now: by content, since git checkouts move file times.
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './workspace-root.mjs'

const stampFile = join(root, 'dist', '.stamp')
const inputs = ['package.json', 'package-lock.json', 'scripts/build.mjs']

/** Whether dist/ is there and stems from the present sources. */
export function isBuilt() {
  return (
    existsSync(join(root, 'dist', 'putback.js')) &&
    existsSync(stampFile) &&
    readFileSync(stampFile, 'utf8') === sourcesHash()
  )
}

/** Notes in dist/ the hash of the sources it was built from. */
export function writeSourcesStamp(hash) {
  writeFileSync(stampFile, hash)
}

/** One hash over every file that goes into the bundle, its name and its content. */
export function sourcesHash() {
  const hash = createHash('sha256')
  const sources = readdirSync(join(root, 'src'), { recursive: true }).map((name) => join('src', name))
  for (const name of [...inputs, ...sources.sort()]) {
    const path = join(root, name)
    if (statSync(path).isFile()) hash.update(`${name}\0`).update(readFileSync(path)).update('\0')
  }
  return hash.digest('hex')
}
