import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import type { Plugin } from 'esbuild'
import { buildBesidePackages, type ChildProgram } from '../../helpers/child-program.ts'
import { type GateSwitch, OFF, withSwitches } from './gate-switch.ts'

/** A program with the product's gates as switches, for plain Node. Rejects where a switch does not find its place. */
export function buildWithSwitches(source: string, switches: readonly GateSwitch[]): Promise<ChildProgram> {
  return buildBesidePackages(source, {
    // Some of them are asked while the program is read.
    banner: { js: `globalThis.${OFF} = new Set()` },
    plugins: [switching(switches)],
  })
}

function switching(switches: readonly GateSwitch[]): Plugin {
  const files = new Set(switches.map(({ file }) => file))
  const byFile = new Map(
    [...files].map((name) => [resolve('src', name), switches.filter(({ file }) => file === name)]),
  )
  return {
    name: 'gates as switches',
    setup({ onLoad, onEnd }) {
      const loaded = new Set<string>()
      onLoad({ filter: /\.ts$/ }, async ({ path }) => {
        const own = byFile.get(path)
        if (!own) return
        loaded.add(path)
        return { contents: withSwitches(await readFile(path, 'utf8'), own), loader: 'ts' }
      })
      onEnd(({ errors }) => {
        if (errors.length > 0) return
        const never = [...byFile.keys()].filter((path) => !loaded.has(path))
        if (never.length > 0) throw new Error(`no part of the program: ${never.join(', ')}`)
      })
    },
  }
}
