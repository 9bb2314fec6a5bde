import type { Found } from '../lines/read-found.ts'
import { type FoundHome, foundHomes } from '../plan/found-homes.ts'
import type { Session } from './session.ts'

/** Something that turned up, and the homes that it may belong to, the likeliest first. */
export interface FoundView extends Found {
  homes: FoundHome[]
}

/** Looks for the homes of something that turned up. */
export function foundView(session: Session, found: Found): FoundView {
  return { ...found, homes: foundHomes(session.gates(), found.piece) }
}
