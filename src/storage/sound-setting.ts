import { join } from 'node:path'
import { LowSync } from 'lowdb'
import { JSONFileSync } from 'lowdb/node'

const NAME = '.settings.json'

interface Settings {
  sound?: unknown
}

/** Whether the user wants to hear the bell in this home: yes, unless they said no. What is not legible says nothing. */
export function soundWanted(home: string): boolean {
  try {
    return settingsIn(home).data.sound !== false
  } catch {
    return true
  }
}

/** Remembers it for all jobs of the home. Throws the system's error. */
export function wantSound(home: string, sound: boolean): void {
  const path = join(home, NAME)
  const db = new LowSync<Settings>(new JSONFileSync(path), {})
  db.data = { ...readable(home), sound }
  try {
    db.write()
  } catch (error) {
    // It would name the draft that was to take its place.
    throw error instanceof Error ? Object.assign(error, { path }) : error
  }
}

/** What else is set, where it is legible. */
function readable(home: string): Settings {
  try {
    const { data } = settingsIn(home)
    return typeof data === 'object' ? data : {}
  } catch {
    return {}
  }
}

function settingsIn(home: string): LowSync<Settings> {
  const db = new LowSync<Settings>(new JSONFileSync(join(home, NAME)), {})
  db.read()
  return db
}
