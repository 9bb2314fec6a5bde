import { readFileSync } from 'node:fs'

/** The codes of a union of objects, read out of its source: each `key: 'a' | 'b'` up to the end of the type. */
export function codesOf(file: string, type: string, key = 'code'): string[] {
  const source = readFileSync(file, 'utf8')
  const [, union = ''] = new RegExp(`export type ${type} =\\n((?:  .*\\n)+)`).exec(source) ?? []
  const members = union.matchAll(new RegExp(`\\{\\s*${key}: ((?:'[a-z-]+'(?: \\| )?)+)`, 'g'))
  return [...members]
    .flatMap(([, names = '']) => [...names.matchAll(/[a-z-]+/g)].map(([name]) => name))
    .sort()
}
