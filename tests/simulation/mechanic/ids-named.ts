import type { Result } from '../../../src/cli/result.ts'

/** Every id that a refusal names in its facts, and `step 7` for the steps. The same as `--json` gives to a program. */
export function namedIn({ facts }: Extract<Result, { ok: false }>): Set<string> {
  return idsIn(facts)
}

/** Every id in the facts of an answer. */
export function idsIn(facts: unknown): Set<string> {
  const named = new Set<string>()
  collect(facts, named)
  return named
}

/** The codes of what it is refused for that name one of these ids; the code of the refusal where it gives no reasons. */
export function reasonsNaming(
  { code, facts }: Extract<Result, { ok: false }>,
  ids: readonly string[],
): string {
  const codes = new Set(codesNaming(facts, ids))
  return codes.size === 0 ? code : [...codes].sort().join(' and ')
}

/** Reasons lie within the refusal: the innermost that name it are what it is about. */
function codesNaming(value: unknown, ids: readonly string[]): string[] {
  if (typeof value !== 'object' || value === null) return []
  const within = Object.values(value).flatMap((each) => codesNaming(each, ids))
  if (within.length > 0 || !('code' in value) || typeof value.code !== 'string') return within
  const named = idsIn(value)
  return ids.some((id) => named.has(id)) ? [value.code] : []
}

function collect(value: unknown, named: Set<string>, key = ''): void {
  if (typeof value === 'string') {
    // Where a choice is offered the name stands behind the id: `f2 oil`.
    const [id] = /^[a-z][1-9]\d*(?= |$)/.exec(value) ?? []
    if (id !== undefined) named.add(id)
    const [, step] = /^(?:start|finish|look|check) (\d+)$/.exec(value) ?? []
    if (step !== undefined) named.add(`step ${step}`)
  } else if (typeof value === 'number') {
    if (key === 'step' || key === 'steps') named.add(`step ${value}`)
    if (key === 'container') named.add(`bag ${value}`)
  } else if (Array.isArray(value)) {
    for (const item of value) collect(item, named, key)
  } else if (typeof value === 'object' && value !== null) {
    const items = value instanceof Map ? value.entries() : Object.entries(value)
    for (const [name, item] of items) collect(item, named, String(name))
  }
}
