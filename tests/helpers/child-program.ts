import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { type BuildOptions, build } from 'esbuild'

/** A TypeScript program made fit for plain Node, in a folder of its own. */
export interface ChildProgram {
  path: string
  remove(): void
}

/** One run of it, with what it has said so far on its standard output. */
export interface Running {
  pid: number
  /** The whole lines said so far. */
  lines(): string[]
  /** Resolves once that many lines were said; rejects when the program ends before. */
  said(count: number): Promise<string[]>
  kill(): void
  ended: Promise<{ code: number | null; signal: NodeJS.Signals | null; stderr: string }>
}

export async function buildProgram(source: string): Promise<ChildProgram> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-program-'))
  const path = join(folder, 'program.mjs')
  await build({ entryPoints: [source], outfile: path, bundle: true, platform: 'node', format: 'esm' })
  return { path, remove: () => rmSync(folder, { recursive: true, force: true }) }
}

/**
 * The same with its packages left where they are: for programs that have some that do not bundle. For whoever is at home in
 * the root of the sources. Rejects when it cannot be built.
 */
export async function buildBesidePackages(
  source: string,
  options: Pick<BuildOptions, 'banner' | 'plugins'> = {},
): Promise<ChildProgram> {
  // Node looks for packages from the program upwards.
  const cache = resolve('node_modules/.cache')
  mkdirSync(cache, { recursive: true })
  const folder = mkdtempSync(join(cache, 'putback-program-'))
  const remove = () => rmSync(folder, { recursive: true, force: true })
  try {
    const path = join(folder, 'program.mjs')
    await build({
      ...options,
      entryPoints: [resolve(source)],
      outfile: path,
      bundle: true,
      packages: 'external',
      platform: 'node',
      format: 'esm',
      logLevel: 'silent',
    })
    return { path, remove }
  } catch (error) {
    remove()
    throw error
  }
}

export function startProgram(program: ChildProgram, ...args: (string | number)[]): Running {
  const child = spawn(process.execPath, [program.path, ...args.map(String)], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let output = ''
  let stderr = ''
  let hasEnded = false
  const waiting = new Set<() => void>()
  const wake = () => {
    for (const look of waiting) look()
  }
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    output += text
    wake()
  })
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text
  })
  const lines = () => output.split('\n').slice(0, -1)
  const ended: Running['ended'] = new Promise((resolve) => {
    child.on('close', (code, signal) => {
      hasEnded = true
      wake()
      resolve({ code, signal, stderr })
    })
  })
  const said = (count: number) =>
    new Promise<string[]>((resolve, reject) => {
      const look = () => {
        if (lines().length >= count) resolve(lines())
        else if (hasEnded) reject(new Error(`ended after ${lines().length} of ${count} lines: ${stderr}`))
        else return
        waiting.delete(look)
      }
      waiting.add(look)
      look()
    })
  return { pid: child.pid ?? 0, lines, said, kill: () => child.kill('SIGKILL'), ended }
}
