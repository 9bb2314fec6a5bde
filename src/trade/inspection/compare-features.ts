import { featuresByKind } from './features-table.ts'
import { partKinds } from './part-kind.ts'

const anyPart = ['ports', 'holes', 'threads', 'lengths', 'connectors']

/**
 * What to compare between an old part and the new one that is to take its place, by the words of its name; for a name that
 * is not known, what any part has. The variant comes last: left or right, and the number on the part.
 */
export function featuresFor(name: string): string[] {
  const known = partKinds(name).flatMap((kind) => featuresByKind[kind] ?? [])
  return [...new Set([...(known.length > 0 ? known : anyPart), 'variant'])]
}
