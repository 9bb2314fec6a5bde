import { readdirSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { nodeFileSystem, removeQuietly, withFile, writeAll } from '../files/file-system.ts'
import { type Holder, holderHere, isHolderAlive, readLock } from './lock-holder.ts'

/** A program that has a job open for work, as other programs on this machine see it. */
export interface Presence {
  /** Whether another living program on this machine has the job open as well. */
  othersHere(): boolean
  /** Whether a program that had the job open died without leaving it, since this was last asked. */
  othersDied(): boolean
  /** No longer here. */
  leave(): void
}

/**
 * Makes it known that this process works in a job. Needed to tell work that somebody else is doing right now from work
 * that broke off without a word. Where nothing can be written, the process is not seen, and sees the others all the same.
 */
export function enterJob(folder: string): Presence {
  const own = `${PREFIX}${process.pid}`
  try {
    // Whatever lies there is no living program's: this process has the number.
    removeQuietly(nodeFileSystem, join(folder, own))
    withFile(nodeFileSystem, join(folder, own), 'wx', (fd) =>
      writeAll(nodeFileSystem, fd, Buffer.from(JSON.stringify(holderHere(own)))),
    )
  } catch {
    // A read-only folder: nobody can work in it, so nobody has to see this one.
  }
  let hasDied = false
  const othersHere = () => present(folder, () => (hasDied = true)).some((name) => name !== own)
  return {
    othersHere,
    othersDied() {
      othersHere()
      const was = hasDied
      hasDied = false
      return was
    },
    leave: () => removeQuietly(nodeFileSystem, join(folder, own)),
  }
}

/** Whether a living program on this machine has the job open for work. For those who do not stay. */
export function somebodyHere(folder: string): boolean {
  return present(folder).length > 0
}

const PREFIX = 'journal.open-'

/** The signs of living programs; those of dead ones on this machine are cleared away. */
function present(folder: string, onDead: () => void = () => {}): string[] {
  return names(folder).filter((name) => {
    const path = join(folder, name)
    const holder = holderIn(path)
    // A sign from another machine came with a copied folder.
    if (!holder || holder.host !== hostname()) return false
    if (isHolderAlive(holder)) return true
    onDead()
    removeQuietly(nodeFileSystem, path)
    return false
  })
}

/** Who a sign stands for; one that cannot be read stands for nobody. */
function holderIn(path: string): Holder | null {
  try {
    return readLock(path, nodeFileSystem)?.holder ?? null
  } catch {
    return null
  }
}

function names(folder: string): string[] {
  try {
    return readdirSync(folder).filter((name) => name.startsWith(PREFIX))
  } catch {
    return []
  }
}
