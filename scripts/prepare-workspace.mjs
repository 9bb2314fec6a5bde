// Brings a fresh clone to a state in which putback runs, and does nothing when it already is.
// Only built-in modules here: packages may not be installed yet. Notices go to stderr, the output stays the program's.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { root } from './workspace-root.mjs'

/** Installs packages and builds dist/ where missing or out of date. Throws an Error with one clear line. */
export async function prepareWorkspace() {
  requireNode()
  if (!isInstalled()) install()
  const { isBuilt } = await import('./sources-stamp.mjs')
  if (isBuilt()) return
  console.error('building (sources changed)...')
  const { build } = await import('./build.mjs')
  await build()
}

function requireNode() {
  const wanted = readJson('package.json').engines.node.replace('>=', '')
  const [major, minor] = wanted.split('.').map(Number)
  const [ownMajor, ownMinor] = process.versions.node.split('.').map(Number)
  if (ownMajor > major || (ownMajor === major && ownMinor >= minor)) return
  throw new Error(
    `putback needs Node ${wanted} or newer, this is Node ${process.versions.node}. Install a newer Node.`,
  )
}

/** Compares the lockfile with npm's own note of what it installed, so a plain `npm install` counts too. */
function isInstalled() {
  if (!existsSync(join(root, 'node_modules', '.package-lock.json'))) return false
  const installed = readJson('node_modules/.package-lock.json').packages
  return Object.entries(readJson('package-lock.json').packages).every(([path, wanted]) => {
    // Optional packages are those for other platforms.
    if (path === '' || (wanted.optional && !installed[path])) return true
    return installed[path]?.version === wanted.version && existsSync(join(root, path))
  })
}

function install() {
  console.error('installing packages (once)...')
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--no-progress', '--loglevel=error']
  const npmScript = process.env.npm_execpath ?? ''
  // npm tells its scripts where it lies; without it, Windows finds npm.cmd only through a shell.
  const [command, ...rest] =
    basename(npmScript) === 'npm-cli.js' ? [process.execPath, npmScript, ...args] : ['npm', ...args]
  const shell = command === 'npm' && process.platform === 'win32'
  const { status, error } = spawnSync(command, rest, { cwd: root, shell, stdio: ['ignore', 2, 2] })
  if (error || status !== 0) {
    throw new Error(
      `npm ci failed (${error?.message ?? `exit code ${status}`}). The first run needs the network: try again online.`,
    )
  }
}

function readJson(name) {
  return JSON.parse(readFileSync(join(root, name), 'utf8'))
}
