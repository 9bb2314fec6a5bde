import { join } from 'node:path'
import type { FileSystem } from './files/file-system.ts'
import { readSmallFile } from './files/read-small-file.ts'
import { replaceFile } from './files/replace-file.ts'

const NAME = '.settings.json'
const MOST_BYTES = 10_000

interface Settings {
  sound?: unknown
}

/** Whether the user wants to hear the bell in this home: yes, unless they said no. What is not legible says nothing. */
export function soundWanted(home: string): boolean {
  return settingsIn(home).sound !== false
}

/** Remembers it for all jobs of the home, beside what else is set. Throws the system's error. */
export function wantSound(home: string, sound: boolean, fs?: FileSystem): void {
  const settings = JSON.stringify({ ...settingsIn(home), sound }, null, 2)
  replaceFile(join(home, NAME), Buffer.from(`${settings}\n`), fs)
}

/** What is set, where it is legible. */
function settingsIn(home: string): Settings {
  try {
    const data: unknown = JSON.parse(readSmallFile(join(home, NAME), MOST_BYTES))
    return typeof data === 'object' && data !== null && !Array.isArray(data) ? data : {}
  } catch {
    return {}
  }
}
