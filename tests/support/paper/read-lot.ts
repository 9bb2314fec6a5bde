/** What a line of a label or of the printed plan says of some pieces. */
export interface ReadLot {
  count: number
  /** Name and size in one, as printed. */
  name: string
  /** Positions with the slots they lie in; empty for pieces that have none of their own. */
  positions: { position: string; slot: string | null }[]
  /** Positions that alike pieces share. */
  alikeAt: string[]
  /** `step 4`, where each lot has its own; with the home where that is said as well. */
  goes: { home: string | null; step: number } | null
  status: string | null
}

const STATUS = /^(USED, DO NOT FIT|OLD, DO NOT FIT|TO DECIDE|NEW|TOOL): (?=\d+ ×)/

/** Reads `USED, DO NOT FIT: 2 × bolts M10x45 hex 17 @L1,L2 → step 5` as a person would; null when it is no lot. */
export function readLot(line: string): ReadLot | null {
  const status = STATUS.exec(line)?.[1] ?? null
  const [, count, whole = ''] = /^(\d+) × (.+)$/.exec(line.replace(STATUS, '')) ?? []
  if (count === undefined) return null
  const [, told = whole, home, step] =
    /^(.*?) → (?:(.+), )?step (\d+)(?: \([^)]*\))?$/.exec(whole) ??
    /^(.+), put in()? during step (\d+)$/.exec(whole) ??
    []
  const goes = step === undefined ? null : { home: home ?? null, step: Number(step) }
  const base = { count: Number(count), alikeAt: [], positions: [], goes, status }
  const what = told.replace(/ \(of \d+, others [^)]*\)$/, '')
  const ends = /^(.+), ends at (.+) and (.+)$/.exec(what)
  if (ends) {
    const positions = [...(ends[2] ?? '').split(', '), ends[3] ?? '']
    return {
      ...base,
      name: ends[1] ?? '',
      positions: positions.map((position) => ({ position, slot: null })),
    }
  }
  const shared = /^(.+) @(\S+)$/.exec(what)
  if (shared) {
    return {
      ...base,
      name: shared[1] ?? '',
      alikeAt: slotted(shared[2] ?? '').map(({ position }) => position),
    }
  }
  const own =
    /^(.+?)(?: end)? at (.+)$/.exec(what) ??
    /^(.+?) (\p{Lu}{1,4}\d{1,3}(?:[–,.]| in slots? | without |$).*)$/u.exec(what)
  if (own) return { ...base, name: own[1] ?? '', positions: slotted(own[2] ?? '') }
  return { ...base, name: what }
}

/** `I1–I4 in slots 1–4, E1 in slot 9`, `I1–I4 without I3`, `1..3,5,6`. */
function slotted(text: string): { position: string; slot: string | null }[] {
  const [told = '', without = ''] = text.split(/,? without /)
  const missing = new Set(listed(without))
  const found: { position: string; slot: string | null }[] = []
  // A list of runs, each perhaps with its slots: what stands before `in` belongs to the slots after it.
  const runs = told.split(/(?<=in slots? [^,]+), /)
  for (const run of runs) {
    const [, before = run, slots] = /^(.+?) in slots? (.+)$/.exec(run) ?? []
    const positions = listed(before)
    const names = slots === undefined ? [] : listed(slots.replace(' and ', ', '))
    // Positions listed before a run with slots lie loose in the same container.
    const loose = slots === undefined ? positions.length : positions.length - names.length
    for (const [index, position] of positions.entries()) {
      if (!missing.has(position))
        found.push({ position, slot: index < loose ? null : (names[index - loose] ?? null) })
    }
  }
  return found
}

/** `I1–I4, E2` and `1..3,5` name by name. */
function listed(text: string): string[] {
  return text
    .split(/,\s*/)
    .filter((part) => part !== '')
    .flatMap((part) => {
      const [, letters, from, , to] = /^(\D*)(\d+)(?:–|\.\.)(\D*)(\d+)$/.exec(part) ?? []
      if (from === undefined) return [part]
      const names: string[] = []
      for (let n = Number(from); n <= Number(to); n++) names.push(`${letters}${n}`)
      return names
    })
}
