/** One entry as it was parsed from its line, nothing about it checked yet. */
type Raw = Readonly<{ v?: unknown; type?: unknown }>

/**
 * From each version of the entry shapes to the next, the first from 1 to 2. A new version adds one at the end and
 * changes none that is there: what was ever written is read through all that came after it.
 */
const UPGRADES: readonly ((raw: Raw) => Raw)[] = [
  // Version 2 has entries about merging besides; what version 1 could say it says in the same shapes.
  (raw) => raw,
]

/** The version of the entry shapes written by this program. */
export const ENTRY_VERSION = UPGRADES.length + 1

/** An entry of a version that a later program writes: it may mean what this one does not know. */
export class NewerEntry extends Error {
  override readonly name = 'NewerEntry'
  readonly version: number
  /** The newest version that is known here. */
  readonly known = ENTRY_VERSION

  constructor(version: number) {
    super(`an entry of version ${version}; the newest known is ${ENTRY_VERSION}`)
    this.version = version
  }
}

/**
 * An entry of any version so far in the shape of the newest, with that version on it. What has no version that was
 * ever written comes back as it is, for the schema to refuse. Throws NewerEntry.
 */
export function upgraded(raw: Raw): Raw {
  const { v } = raw
  if (typeof v !== 'number' || !Number.isSafeInteger(v) || v < 1) return raw
  if (v > ENTRY_VERSION) throw new NewerEntry(v)
  if (v === ENTRY_VERSION) return raw
  return { ...UPGRADES.slice(v - 1).reduce((entry, upgrade) => upgrade(entry), raw), v: ENTRY_VERSION }
}
