import type { OutingId } from '../../plan/waiting/waiting-facts.ts'
import { say } from '../cures.ts'

/** What answers what a shop took out of something that is back. */
export function tookOutWords(id: OutingId): string {
  return `${say(`took out ${id}: nothing`)} or ${say(`took out ${id}: ...`)}`
}
