import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, expect, test } from 'vitest'

// Biome answers an unknown rule or a change of a nursery rule with silence, so each rule that would cost an entry
// or a case when it went missing is shown a fault.
const faults: Record<string, string> = {
  noFloatingPromises:
    "import type { Store } from './store.ts'\nexport function f(s: Store) {\n  s.append('x')\n}\n",
  noMisusedPromises:
    "import type { Store } from './store.ts'\nexport function f(s: Store) {\n  if (s.append('x')) return 1\n  return 2\n}\n",
  useExhaustiveSwitchCases:
    "import type { Kind } from './store.ts'\nexport function f(k: Kind) {\n  switch (k) {\n    case 'a':\n      return 1\n  }\n  return 2\n}\n",
  noImportCycles: "import { b } from './cycle.ts'\nexport const a = () => b\n",
  noUndeclaredDependencies: "import { a } from 'not-declared'\nexport const b = a\n",
  useImportExtensions: "import { a } from './store'\nexport const b = a\n",
  useNodejsImportProtocol: "import { join } from 'path'\nexport const b = join\n",
  noConsole: "export function f() {\n  console.log('x')\n}\n",
  noExplicitAny: 'export const b = (a: any) => a\n',
}

const folder = mkdtempSync(join(tmpdir(), 'putback-lint-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test.each(Object.entries(faults))('%s finds its fault', (rule, text) => {
  expect(lint(rule, { 'fault.ts': text })).toContain(`/${rule}`)
})

test('useFilenamingConvention finds its fault', () => {
  expect(lint('useFilenamingConvention', { 'camelCase.ts': 'export const b = 1\n' })).toContain(
    '/useFilenamingConvention',
  )
})

test('sound code passes all of them', () => {
  const text =
    "import type { Store } from './store.ts'\nexport async function f(s: Store) {\n  await s.append('x')\n}\n"
  expect(lint('sound', { 'fault.ts': text })).toContain('No fixes applied')
})

function lint(name: string, files: Record<string, string>): string {
  const project = join(folder, name)
  mkdirSync(join(project, 'src'), { recursive: true })
  for (const kept of ['biome.jsonc', 'package.json', '.gitignore', 'tsconfig.json'])
    cpSync(kept, join(project, kept))
  const context = {
    'store.ts':
      "export type Kind = 'a' | 'b'\nexport interface Store {\n  append(line: string): Promise<void>\n}\nexport const a = 1\n",
    'cycle.ts': "import { a } from './fault.ts'\nexport const b = () => a\n",
  }
  for (const [file, text] of Object.entries({ ...context, ...files }))
    writeFileSync(join(project, 'src', file), text)

  const home = dirname(createRequire(import.meta.url).resolve('@biomejs/biome/package.json'))
  const { stdout, stderr } = spawnSync(process.execPath, [join(home, 'bin', 'biome'), 'lint', 'src'], {
    cwd: project,
    encoding: 'utf8',
  })
  return stdout + stderr
}
