import { say } from '../cures.ts'

/** Copies of one and the same job lie beside each other: what brings each together with the one that is told of. */
export function copiesText(folders: readonly string[]): string[] {
  return folders.map((folder) => `${folder} is a copy of it: ${say(`merge ${folder}`)} brings both together`)
}
