import { readFileSync } from 'node:fs'
import { posix } from 'node:path'
import { describe, expect, test } from 'vitest'
import { type Import, importsOf, lineAt, readSources, type Source, source } from './support/source-scan.ts'

type Table = Map<string, Map<string, string>>

const pureFolders = ['ledger', 'trade', 'label', 'plan', 'journal', 'words', 'lines']
const documentedFolders = ['ledger', 'plan', 'journal', 'label', 'trade', 'storage', 'session']
const impure =
  /\bnode:\w+|\bDate\.now\b|\bnew Date\b(?!\s*\(\s*[^)\s])|\bMath\.random\b|\b(?:process|performance)\??\.\w|\b(?:process|performance)\s*\[|=\s*(?:process|performance)\b/g

const house = readTable(readFileSync('DEVELOPERS.md', 'utf8'))
const sources = readSources('src')

describe('the house, as DEVELOPERS.md tells it', () => {
  test('every import is one that the table allows', () => {
    expect(sources.flatMap((file) => forbiddenImports(file, house))).toEqual([])
  })

  test('pure folders know no clock, chance, environment or built-in module', () => {
    expect(sources.flatMap(impurities)).toEqual([])
  })

  test('every exported function of the core has its doc comment', () => {
    expect(sources.flatMap(undocumented)).toEqual([])
  })
})

describe('a planted fault is caught', () => {
  const table = readTable(
    '## The house\n| folder | may import |\n| --- | --- |\n| ledger | |\n| plan | ledger, zod |\n| words | plan (types) |\n| cli | words, ui (lazy), node |\n| ui | |\n',
  )

  test.each([
    [
      'src/ledger/a.ts',
      "import { x } from '../plan/x.ts'",
      'src/ledger/a.ts:1 imports plan (../plan/x.ts); ledger may import: nothing',
    ],
    ['src/ledger/a.ts', "\nexport * from '../plan/x.ts'", 'src/ledger/a.ts:2 imports plan'],
    ['src/ledger/a.ts', "import {\n  a,\n  b,\n} from '../plan/x.ts'", 'src/ledger/a.ts:1 imports plan'],
    ['src/ledger/a.ts', "import type { X } from '../plan/x.ts'", 'src/ledger/a.ts:1 imports plan'],
    ['src/ledger/a.ts', "import 'node:fs'", 'src/ledger/a.ts:1 imports node:fs'],
    [
      'src/ledger/a.ts',
      "/* one\ntwo */ export const a = await import('zod/v4')",
      'src/ledger/a.ts:2 imports zod',
    ],
    ['src/plan/a.ts', "import z, { type A } from '@scope/zod/mini'", 'src/plan/a.ts:1 imports @scope/zod'],
    ['src/plan/deep/a.ts', "export { x } from '../../words/x.ts'", 'src/plan/deep/a.ts:1 imports words'],
    ['src/words/a.ts', "import { x } from '../plan/x.ts'", 'words may import: plan (types)'],
    ['src/cli/a.ts', "import { x } from '../ui/x.tsx'", 'cli may import: words, ui (lazy), node'],
    ['src/cli/a.ts', 'const x = await import(name)', 'src/cli/a.ts:1 imports name'],
    ['src/attic/a.ts', 'export const a = 1', 'src/attic/a.ts: the table has no folder "attic"'],
    ['src/a.ts', 'export const a = 1', 'src/a.ts: the table has no folder "a.ts"'],
  ])('%s: %j', (path, text, message) => {
    expect(forbiddenImports(source(path, text), table)).toEqual([expect.stringContaining(message)])
  })

  test.each([
    [
      'src/ledger/a.ts',
      "import { x } from './b.ts'\n// import { y } from '../plan/y.ts'\n/* import '../plan/y.ts' */",
    ],
    ['src/plan/a.ts', "import { z } from 'zod/v4'\nimport { x } from '../ledger/x.ts'"],
    ['src/words/a.ts', "import type { X } from '../plan/x.ts'\nexport type { Y } from '../plan/y.ts'"],
    ['src/cli/a.ts', "import { readFile } from 'node:fs/promises'\nconst ui = await import('../ui/x.tsx')"],
  ])('but not what is allowed: %s %j', (path, text) => {
    expect(forbiddenImports(source(path, text), table)).toEqual([])
  })

  test.each([
    "import fs from 'node:fs'",
    'const now = Date.now()',
    'const now = new Date()',
    'const now = new Date',
    'const roll = Math.random()',
    'const home = process.env',
    'const { env } = process',
    'const t = performance.now()',
  ])('impure: %s', (text) => {
    expect(impurities(source('src/ledger/a.ts', text))).toEqual([
      expect.stringMatching(/^src\/ledger\/a\.ts:1 /),
    ])
    expect(impurities(source('src/session/a.ts', text))).toEqual([])
  })

  test('a sentence about a process, or a date from a text, is pure', () => {
    const text =
      "const a = 'a cleaning process. Then measure.'\nconst b = new Date(text)\n// Date.now() is told to us"
    expect(impurities(source('src/words/a.ts', text))).toEqual([])
  })

  test('an exported function without a doc comment', () => {
    const text =
      '/** Adds. */\nexport function add() {}\n\nexport const sub = (a: number) => a\nexport async function mul() {}\nexport const n = 3\nexport const o: O = { f: () => 1 }\n'
    expect(undocumented(source('src/trade/a.ts', text))).toEqual([
      'src/trade/a.ts:4 exports sub without a doc comment right above it',
      'src/trade/a.ts:5 exports mul without a doc comment right above it',
    ])
  })

  test('a DEVELOPERS.md without its table', () => {
    expect(() => readTable('# Developing\n')).toThrow('no import table')
  })
})

/** folder -> what it may import -> how: '', 'types' or 'lazy'. */
function readTable(markdown: string): Table {
  const section = markdown.split(/^## /m).find((part) => part.startsWith('The house')) ?? ''
  const [, rows = ''] = section.split(/^\| *folder *\| *may import *\|\n\|[ -]+\|[ -]+\|\n/m)
  const table = new Map(
    [...rows.matchAll(/^\| *([\w-]+) *\|(.*)\|$/gm)].map(([, folder = '', allowed = '']) => [
      folder,
      itemsOf(allowed),
    ]),
  )
  if (table.size === 0) throw new Error('DEVELOPERS.md has no import table under "## The house"')
  return table
}

function itemsOf(cell: string): Map<string, string> {
  return new Map(
    [...cell.matchAll(/([^\s,()]+)(?: \((types|lazy)\))?/g)].map(([, name = '', how = '']) => [name, how]),
  )
}

function forbiddenImports(file: Source, table: Table): string[] {
  const folder = file.path.split('/')[1] ?? ''
  const allowed = table.get(folder)
  if (!allowed) return [`${file.path}: the table has no folder "${folder}"`]
  return importsOf(file).flatMap((found) => {
    const target = targetOf(file.path, found.specifier)
    if (target === folder || isAllowed(found, target, allowed)) return []
    const list = [...allowed].map(([name, how]) => (how ? `${name} (${how})` : name)).join(', ') || 'nothing'
    return [
      `${file.path}:${found.line} imports ${target} (${found.specifier}); ${folder} may import: ${list}`,
    ]
  })
}

/** The folder of src, the package, the built-in or the file of the repository that a specifier leads to. */
function targetOf(path: string, specifier: string): string {
  if (!specifier.startsWith('.')) return specifier.match(/^(node:.+|@[^/]+\/[^/]+|[^/]+)/)?.[0] ?? specifier
  const file = posix.join(posix.dirname(path), specifier)
  return file.startsWith('src/') ? (file.split('/')[1] ?? file) : file
}

function isAllowed({ kind }: Import, target: string, allowed: Map<string, string>): boolean {
  const how = allowed.get(target) ?? (target.startsWith('node:') ? allowed.get('node') : undefined)
  return how === '' || (how !== undefined && (kind === 'types' || kind === how))
}

function impurities({ path, text }: Source): string[] {
  if (!pureFolders.includes(path.split('/')[1] ?? '')) return []
  return [...text.matchAll(impure)].map(
    (m) => `${path}:${lineAt(text, m.index)} is in a pure folder but uses ${m[0]}`,
  )
}

function undocumented({ path, raw }: Source): string[] {
  if (!documentedFolders.includes(path.split('/')[1] ?? '')) return []
  const lines = raw.split('\n')
  return lines.flatMap((line, at) => {
    const name =
      line.match(/^export (?:async )?function\*? ?(\w+)/)?.[1] ??
      line.match(/^export const (\w+)\b[^=]*= (?:async )?(?:\(|\w+ =>|function)/)?.[1]
    const above = lines[at - 1] ?? ''
    const overload = name !== undefined && above.includes(`function ${name}(`)
    if (name === undefined || overload || above.trimEnd().endsWith('*/')) return []
    return [`${path}:${at + 1} exports ${name} without a doc comment right above it`]
  })
}
