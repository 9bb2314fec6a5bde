import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** One source file: its path below the repository with forward slashes, its text without comments. */
export interface Source {
  path: string
  text: string
  /** The text as it stands in the file, comments and all. */
  raw: string
}

/** One import as written; `types` is erased by the compiler, `lazy` is a dynamic import(). */
export interface Import {
  specifier: string
  kind: 'value' | 'types' | 'lazy'
  line: number
}

const clause = String.raw`(?:[\w$]+\s*,\s*)?(?:\*(?:\s*as\s+[\w$]+)?|\{[^}]*\}|[\w$]+)`
const statement = new RegExp(
  String.raw`^[ \t]*(?:import|export)\s+(type\s+)?(?:${clause}\s*from\s*)?(['"])([^'"]+)\2`,
  'gm',
)
const bareImport = /^[ \t]*import(['"])([^'"]+)\1/gm
const dynamic = /\bimport\s*\(\s*([^)\s]*)/g

/** Every TypeScript source below a folder of the repository. */
export function readSources(folder: string): Source[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => source(join(folder, name).replaceAll('\\', '/'), readFileSync(join(folder, name), 'utf8')))
}

/** A source from its text; comments become blank, line numbers stay. */
export function source(path: string, raw: string): Source {
  const blank = (comment: string) => comment.replace(/[^\n]/g, '')
  return { path, raw, text: raw.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*|(?<=\s)\/\/ .*/gm, blank) }
}

/** Every static, re-exporting and dynamic import. A computed dynamic import comes back as it is written. */
export function importsOf({ text }: Source): Import[] {
  return [
    ...[...text.matchAll(statement)].map((m) => found(m, m[3], m[1] ? 'types' : 'value')),
    ...[...text.matchAll(bareImport)].map((m) => found(m, m[2], 'value')),
    ...[...text.matchAll(dynamic)].map((m) => found(m, m[1]?.replace(/^(['"])(.*)\1,?$/, '$2'), 'lazy')),
  ]

  function found(match: RegExpExecArray, specifier = '', kind: Import['kind']): Import {
    return { specifier, kind, line: lineAt(text, match.index) }
  }
}

/** The 1-based line of an offset. */
export function lineAt(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length
}
