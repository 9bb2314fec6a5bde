import { homedir } from 'node:os'
import { join } from 'node:path'

/** A path as it is typed, or as a terminal writes one that was dropped on it: quoted, or from the user's own folder. */
export function pathNamed(text: string): string {
  const bare = /^(['"])(.+)\1$/.exec(text.trim())?.[2] ?? text.trim()
  return /^~(?=$|[/\\])/.test(bare) ? join(homedir(), bare.slice(1)) : bare
}
