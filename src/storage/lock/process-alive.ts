import { errnoOf } from '../files/file-system.ts'

/** Whether a process of this machine is there. One that belongs to somebody else counts as there. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return errnoOf(error) !== 'ESRCH'
  }
}
