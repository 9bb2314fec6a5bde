import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build, type Metafile } from 'esbuild'

/** The program as it is shipped: an entry and the chunks that it loads when needed. */
export interface BuiltProgram {
  /** What each chunk holds and loads. */
  metafile: Metafile
  run(
    args: readonly string[],
    options?: { input?: string; env?: Record<string, string>; stdout?: number; stderr?: number },
  ): Run
  remove(): void
}

export interface Run {
  status: number | null
  stdout: string
  stderr: string
}

export async function buildPutback(): Promise<BuiltProgram> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-built-'))
  const { metafile } = await build({
    entryPoints: { putback: 'src/cli/main.ts' },
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    metafile: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    jsx: 'automatic',
    // Ink reaches for it only when it is being developed.
    external: ['react-devtools-core'],
    banner: {
      js: "import { createRequire as createRequireHere } from 'node:module'; const require = createRequireHere(import.meta.url);",
    },
    logLevel: 'error',
  })
  const program = join(folder, 'putback.mjs')
  return {
    metafile,
    run(args, { input = '', env = {}, ...streams } = {}) {
      const { PUTBACK_HOME: _, NO_COLOR: __, ...inherited } = process.env
      const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
        input,
        stdio: ['pipe', streams.stdout ?? 'pipe', streams.stderr ?? 'pipe'],
        encoding: 'utf8',
        cwd: folder,
        env: { ...inherited, ...env },
      })
      return { status, stdout, stderr }
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  }
}
